import type { Field } from '../engine/fields';
import type { Offer, Section, SlotFacts } from '../engine/task';

/** A section of the recipe page with what it asks, in the order of its sentence. */
export interface Part {
  readonly section: Section;
  readonly ask: readonly Field[];
  readonly slots: Readonly<Record<string, SlotFacts>>;
}

/** What is wrong with a slot, if anything. */
export function wrongIn(why: string | null | undefined, mend?: Offer): SlotFacts {
  return why ? { wrong: why, ...(mend ? { mend } : {}) } : {};
}

/** Puts a bottle on the Shelf that is missing. */
export const ADD_BOTTLE: Offer = { words: 'Add a bottle', start: { task: 'bottle', typed: {} } };
