import { asTyped } from './answers';
import { answerIn } from './fields';
import { fold, type RunState } from './fold';
import type { Happening } from './log';
import { placeOf } from './place';
import type { Step, Task } from './task';
import { toldOf } from './told';

/** The sentences that keep a step from being left: field name → sentence. */
export function problemsOf(step: Step, state: RunState): Record<string, string> {
  const answers = (step.ask ?? []).map((field) => [field.name, answerIn(state, field)] as const);
  return Object.fromEntries(answers.flatMap(([name, answer]) => (answer.ok ? [] : [[name, answer.why]])));
}

/** What is recorded when a step is left as done: what it types, and what is in the fields where nothing was typed. */
export function recordedOn(step: Step, state: RunState): Happening[] {
  return [...asTyped(step.types ?? {}), ...presetsOf(step, state)];
}

/** What is in the fields of a step where nothing was typed, those beside a slot too, as far as it is not recorded yet. */
function presetsOf({ ask = [], card }: Step, state: RunState): Happening[] {
  const beside = Object.values(card?.slots ?? {}).flatMap((slot) => slot.beside ?? []);
  const untouched = [...ask, ...beside].filter(({ name, preset }) => preset !== undefined && !(name in state.typed));
  return untouched
    .filter(({ name, preset }) => state.presets[name] !== preset)
    .map(({ name, preset }) => ({ type: 'preset', key: name, text: preset! }));
}

/** What is stored with a drop that falls on a card: what the card was filled with by itself from then on stays so, and the drop. */
export function dropped(step: Step, state: RunState, counter: string): Happening[] {
  return [...(step.card ? presetsOf(step, state) : []), { type: 'drop', key: counter }];
}

/**
 * What is stored when a step is left as done for another ('' at the end): what it types, what is in its fields, and how the Book
 * tells it. That is written down now, so that neither a later count nor a later version of Minim tells it differently.
 */
export function leaving(step: Step, state: RunState, next: string): Happening[] {
  const recorded = recordedOn(step, state);
  const told = toldOf(step, withHappenings(state, recorded));
  return [...recorded, { type: 'go', key: next, text: step.key, told }];
}

/** Key of the step that the main button leads to, with what leaving this one records; undefined at the end of the run. */
export function nextKey(task: Task, step: Step, state: RunState): string | undefined {
  if (step.next !== undefined) return step.next;
  const then = withHappenings(state, recordedOn(step, state));
  const steps = task.steps(then);
  return steps[placeOf(steps, then) + 1]?.key;
}

/**
 * A run as it reads, with what was in the fields of the steps that were left. Versions before did not record that: there it
 * is what is in them now, step by step, since a later step may depend on it.
 */
export function withPresets(task: Task, state: RunState): RunState {
  for (let now = state; ;) {
    const left = task.steps(now).filter(({ key }) => key in now.done);
    const missing = left.flatMap((step) =>
      recordedOn({ ...step, types: {} }, now).filter(({ key }) => !(key in now.presets)),
    );
    if (missing.length === 0) return now;
    now = withHappenings(now, missing);
  }
}

/** A run as it would be after some more has happened. */
export function withHappenings(state: RunState, happenings: readonly Happening[]): RunState {
  return fold(
    happenings.map((one, seq) => ({ run: '', seq, at: '', ...one })),
    state,
  );
}
