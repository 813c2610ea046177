import type { RunEvent } from '../../records/kind/run';

/** What a run's events add up to. Text stays as typed; drops are whole; times are UTC, ISO 8601. */
export interface RunState {
  /** Key of the step shown, '' before the first move. */
  readonly at: string;
  readonly typed: Readonly<Record<string, string>>;
  /** What was in fields that were left as they were, by field. */
  readonly presets: Readonly<Record<string, string>>;
  readonly drops: Readonly<Record<string, number>>;
  readonly marks: Readonly<Record<string, string>>;
  /** Step key → when it was last left as done. */
  readonly done: Readonly<Record<string, string>>;
  /** Of a run that is told afterwards: its numbers are read as they were then, with one comma or point as decimal sign. */
  readonly told?: true;
}

export const freshRun: RunState = { at: '', typed: {}, presets: {}, drops: {}, marks: {}, done: {} };

/** The state after all events: undo, resume after a dead phone and the written record all come from this one list. */
export function fold(events: readonly RunEvent[], from: RunState = freshRun): RunState {
  return events.reduce(step, from);
}

function step(state: RunState, event: RunEvent): RunState {
  const { type, key, text = '', by = 1, at } = event;
  const drops = state.drops[key] ?? 0;
  switch (type) {
    case 'go':
      return { ...state, at: key, done: text === '' ? state.done : { ...state.done, [text]: at } };
    case 'typed':
      return { ...state, typed: { ...state.typed, [key]: text } };
    case 'preset':
      return { ...state, presets: { ...state.presets, [key]: text } };
    case 'drop':
      return { ...state, drops: { ...state.drops, [key]: drops + by } };
    case 'count':
      return { ...state, drops: { ...state.drops, [key]: by } };
    case 'undo':
      return { ...state, drops: { ...state.drops, [key]: Math.max(0, drops - 1) } };
    case 'mark':
      return { ...state, marks: { ...state.marks, [key]: at } };
    case 'unmark':
      return { ...state, marks: Object.fromEntries(Object.entries(state.marks).filter(([name]) => name !== key)) };
  }
}
