import type { ReadonlySignal } from '@preact/signals';
import type { VNode } from 'preact';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Done } from '../../records/kind/record';
import type { RunEvent } from '../../records/kind/run';
import type { Option } from '../../ui/controls/field';
import type { Result } from '../../ui/controls/result';
import type { Field } from './fields';
import type { RunState } from './fold';
import type { Happening } from './log';

/** Counting on the tap pad: which counter, how many are asked for, and what the count means, in a few words. */
export interface Pad {
  readonly counter: string;
  readonly target: number | null;
  readonly live: (drops: number) => string;
  /** The vial or bottle that the drops come from: its label can be scanned, and a wrong one is stopped. */
  readonly expects?: { readonly id: string; readonly tag: string };
}

/** A second way out of a step: types something, goes to another step, or hands over to another task with fields filled in. */
export interface Offer<Key extends string = never> {
  readonly words: string;
  readonly type?: Readonly<Record<string, string>>;
  /** Where it is drawn: behind ⋯, for what is rarely wanted; or in the row of the main button, asleep while nothing is counted. Else on the page. */
  readonly place?: 'more' | 'row';
  /** After typing, leaves the step as the main button would. With `start` too, that begins once the run has ended, in place of its record's page. */
  readonly leave?: true;
  /** Key of the step that it goes to. */
  readonly go?: Key;
  readonly start?: { readonly task: string; readonly typed: Readonly<Record<string, string>> };
  /** With `start` alone: this run was a mistake, and is discarded for it. */
  readonly instead?: true;
  /** Opens a sheet of that title, which the task draws. */
  readonly sheet?: { readonly title: string; readonly draw: (walk: Walk) => VNode };
}

/**
 * A step that shows all it asks at once: a sentence whose amounts and names are slots, a picture, the answer, and the next movement of the
 * hand on the main button.
 */
export interface Card<Key extends string = string> {
  /** In { } the names of fields in `ask`: 'Dilute {bottle} to {strength} in {solvent}.' */
  readonly sentence: string;
  /** Where one sentence is too much: several, each with what it comes to, drawn in place of `sentence`. */
  readonly sections?: readonly Section[];
  /** The same as it is read aloud and told in the Book, where slots that may stay empty are left out. */
  readonly said?: string;
  /** What a field's slot is more than the field. */
  readonly slots?: Readonly<Record<string, SlotFacts>>;
  readonly picture?: (walk: Walk) => VNode | null;
  readonly answer?: CardAnswer;
  /** Names of fields in `ask` that are not in the sentence: a chip each opens its sheet, '+ price'. */
  readonly chips?: readonly string[];
  /** What is drawn under the answer: where it stands, what it is made of. */
  readonly under?: (walk: Walk) => VNode | null;
  /** One piece of advice, with one thing to do about it. */
  readonly advice?: { readonly words: string; readonly offer?: Offer<Key> };
}

/** A part of a card that asks for much: a sentence with slots, and what follows from it. */
export interface Section {
  readonly title: string;
  /** As that of a card. */
  readonly sentence: string;
  /** What it comes to, one line each; amounts in ‹ ›. */
  readonly lines: readonly string[];
  /** What is folded away under its first line. */
  readonly folded?: readonly string[];
  /** What can hurt someone, a sentence each: always in sight. */
  readonly dangers?: readonly string[];
  /** Names of its optional fields: what is empty is a chip, '+ best before', and no part of the sentence. */
  readonly chips?: readonly string[];
  readonly picture?: () => VNode | null;
}

/** The answer under the sentence: the largest first. */
export interface CardAnswer {
  /** What the hand does or the eye reads: '6 drops'. */
  readonly big: string;
  readonly lines: readonly string[];
  /** Whether it may be drunk, in words; `barred` where not. */
  readonly grade?: { readonly words: string; readonly barred: boolean };
  /** The result of the step whose page tells how it was worked out. */
  readonly how?: number;
}

/** What the slot of a field shows and its sheet offers, beside what the field itself says. */
export interface SlotFacts {
  /** What is in the slot, where that is not the option or the number with its unit. */
  readonly shows?: string;
  /** What an empty one says, and the main button with it: 'the solvent'. */
  readonly missing?: string;
  /** Usual values of a number, as chips; text as it is typed. */
  readonly usual?: readonly Option[];
  /** What one touch of − and + changes a number by. */
  readonly by?: number;
  /** Fields that are asked in the same sheet: the unit of a strength. */
  readonly beside?: readonly Field[];
  /** It may stay empty: the card can be left all the same. */
  readonly optional?: true;
  /** Its options stand in the sentence themselves, one tap each, instead of a sheet. */
  readonly pills?: true;
  /** What the main button says while it is empty, where that is not "Choose …": 'Say the grade'. */
  readonly asks?: string;
  /** What its sheet offers below the field; what it types closes the sheet. */
  readonly offer?: Offer;
  /** Typed with any answer that is given in its sheet. */
  readonly along?: Readonly<Record<string, string>>;
  /** The card works it out: shown dashed, and nothing is missing. */
  readonly sought?: true;
  /** It cannot be changed here. */
  readonly fixed?: true;
  /** One line under the sentence on why what is in it cannot be, and what mends it. */
  readonly wrong?: string;
  readonly mend?: Offer;
}

/** One screen of a run: one instruction. Amounts in `say` are in ‹ ›; `Key` is the union of the task's step names. */
export interface Step<Key extends string = string> {
  readonly key: Key;
  readonly say: string;
  /** All questions at once, as slots of a sentence; `say` is then what a screen reader begins with. */
  readonly card?: Card<Key>;
  readonly more?: readonly string[];
  readonly cautions?: readonly string[];
  readonly ask?: readonly Field[];
  /** Fields that `draw` shows and may be empty when the step is left: rows of a list that grows. */
  readonly rows?: readonly Field[];
  /** Names of fields in `ask` that `draw` shows itself. */
  readonly drawn?: readonly string[];
  readonly pad?: Pad;
  /** Drops that a card counts, where there is no pad: keys count them too, and they are told aloud. */
  readonly counting?: Pick<Pad, 'counter' | 'target'>;
  readonly draw?: (walk: Walk) => VNode;
  /** What `draw` asks beside `ask`, and its answer, for the Book. */
  readonly told?: readonly (readonly [title: string, text: string])[];
  readonly results?: readonly Result[];
  readonly offers?: readonly Offer<Key>[];
  /** Words on the main button. */
  readonly done?: string;
  /** What `draw` shows first is the next tap: the main button is only another way. */
  readonly drawnFirst?: boolean;
  /** Drawn in the place of the main button, marked `way-on`: a touch of it is the only way on. */
  readonly foot?: (walk: Walk) => VNode;
  /** Typed when the step is left as done: what the screen shows becomes what was chosen. */
  readonly types?: Readonly<Record<string, string>>;
  /** What the main button does instead of going on by itself: what cannot be known before the tap. */
  readonly act?: (walk: Walk) => Promise<unknown>;
  /** One sentence on why this step cannot be left yet. */
  readonly problem?: string;
  /** Key of the step that the main button leads to, where that is not the following one. */
  readonly next?: Key;
}

/** What drops are counted at a step. */
export function countingOf({ pad, counting }: Step): Step['counting'] {
  return pad ?? counting;
}

/** Something of a paused run that wants doing at a moment, ms since 1970. */
export interface Due {
  readonly at: number;
  readonly words: string;
}

/**
 * A bench task. `steps` and `keep` are functions of the run so far (and of the shelf, whose signals they may read);
 * they draw nothing, write nothing, and keep nothing to themselves.
 */
export interface Task<Key extends string = string> {
  readonly id: string;
  /** False for a task that leaves no run and no record behind. */
  readonly recorded: boolean;
  title(run: RunState): string;
  /** What its first card would be filled with now, in a few words for the Bench; undefined while there is nothing to fill it with. */
  opening?(): string | undefined;
  steps(run: RunState): readonly Step<Key>[];
  /** What waits for its moment in a paused run, soonest first; shown on the Bench. */
  due?(run: RunState): readonly Due[];
  /** The records that the run ends in; the first is shown. Throws a Refusal with one sentence when it cannot end so. */
  keep(run: RunState): readonly AnyRecord[];
  /** The plan that was chosen and what did not go by it, for the first record that the run ends in; found from what happened. */
  done?(run: RunState, events: readonly RunEvent[]): Pick<Done, 'plan' | 'slips'>;
  /** The same of each record, by its place among those kept, for a task that makes several at once. */
  doneOf?(run: RunState, at: number): Partial<Done>;
  /** Fields whose answers its first record keeps, so that the next run begins with them (`engine/lastTime.ts`). */
  readonly remembers?: readonly string[];
  /** Fields whose answers a repeat of the run begins with, by name; one that ends with a point is all that begin so. None is measured. */
  readonly repeats?: readonly string[];
  /** What a repeat begins with beside them, or in place of them. */
  repeat?(then: Then): Readonly<Record<string, string>>;
}

/** A run that is to be repeated: its answers and counts, the records that it ended in, and the thing that is used today for one of then, by id. */
export interface Then {
  readonly answers: Readonly<Record<string, string>>;
  readonly counted: Readonly<Record<string, number>>;
  readonly kept: readonly AnyRecord[];
  /** The one of them that is wanted again, where the run ended in several. */
  readonly wanted?: AnyRecord;
  /** True for the same drops and grams; false where another version of the formula is taken, and planned for. */
  readonly exactly: boolean;
  todays(id: string): string;
}

/** One walk through a task. What the screens show is folded from events that are already on the disk. */
export interface Walk {
  readonly task: Task;
  readonly id: string;
  readonly state: ReadonlySignal<RunState>;
  readonly steps: ReadonlySignal<readonly Step[]>;
  /** What the task broke on, if it did: `steps` are then those from before, and none of them may be left. */
  readonly fault: ReadonlySignal<{ readonly error: unknown } | null>;
  readonly index: ReadonlySignal<number>;
  readonly step: ReadonlySignal<Step>;
  readonly title: ReadonlySignal<string>;
  /** One sentence when something could not be stored. */
  readonly trouble: ReadonlySignal<string>;
  /** Stores what happened, then shows it. False when it could not be stored; then nothing has changed. */
  readonly happen: (...happenings: Happening[]) => Promise<boolean>;
  /** Resolves when all that happened is stored: a screen that decides something waits for it. */
  readonly settled: () => Promise<unknown>;
  /** Goes to a step by its key; `done` marks the step left as done. */
  readonly goTo: (key: string, done?: boolean) => Promise<boolean>;
  /** Leaves the step as done, for the next one. After the last one stores the records that the run ends in and resolves to them, else to null. */
  readonly leave: () => Promise<readonly AnyRecord[] | null>;
}
