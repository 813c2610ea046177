import type { Field } from '../../engine/fields';
import type { Section, SlotFacts } from '../../engine/task';

/** A section of the recipe page with what it asks. */
export interface KeepPart {
  readonly section: Section;
  readonly ask: readonly Field[];
  readonly slots: Readonly<Record<string, SlotFacts>>;
}
