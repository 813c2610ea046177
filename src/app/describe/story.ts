import type { RunEvent } from '../../records/kind/run';
import { fold, freshRun, type RunState } from '../../tasks/engine/fold';
import { withPresets } from '../../tasks/engine/leaving';
import type { Task } from '../../tasks/engine/task';
import { toldOf, type Told } from '../../tasks/engine/told';

/** A step that was done: its instruction, what was answered or counted by then, and when it was left (ISO 8601, UTC). */
export interface StoryLine extends Told {
  readonly at: string;
}

/**
 * What was done in a run, in the order in which it was done, each step as it was when it was left. A step that was left once
 * more, with nothing changed, is told once. Where the first version wrote no words down, they are found from the events before; of a step that today's task has no more,
 * what was typed and counted there is told.
 */
export function storyOf(task: Task, events: readonly RunEvent[]): StoryLine[] {
  const told = new Map<string, StoryLine>();
  let state = startOf(task, events);
  let since: RunEvent[] = [];
  for (const event of events) {
    if (event.type === 'go' && event.text) {
      const line = event.told ?? replayed(task, state, event.text) ?? asTyped(task, state, since);
      const same = JSON.stringify([event.text, line]);
      if (line && !told.has(same)) told.set(same, { ...line, at: event.at });
    }
    since = event.type === 'go' ? [] : [...since, event];
    state = fold([event], state);
  }
  return [...told.values()];
}

/** The beginning of a run: that of the first version has in its fields what it did not record. */
function startOf(task: Task, events: readonly RunEvent[]): RunState {
  const start: RunState = { ...freshRun, told: true };
  if (events.every(({ type, text, told }) => type !== 'go' || !text || told)) return start;
  const recorded = new Set(events.flatMap(({ type, key }) => (type === 'preset' ? [key] : [])));
  const { presets } = withPresets(task, fold(events, start));
  return { ...start, presets: Object.fromEntries(Object.entries(presets).filter(([key]) => !recorded.has(key))) };
}

/** A step as the task had it in that state; null where it has none of that key any more. */
function replayed(task: Task, state: RunState, key: string): Told | null {
  const step = task.steps(state).find((one) => one.key === key);
  return step ? toldOf(step, state) : null;
}

/** What was typed and counted since the step before, under the titles that the task has for it today, else the names of then. */
function asTyped(task: Task, state: RunState, events: readonly RunEvent[]): Told {
  const fields = task.steps(state).flatMap(({ ask = [] }) => ask);
  const title = (key: string) => fields.find(({ name }) => name === key)?.title ?? key;
  const typed = new Set(events.flatMap(({ type, key }) => (type === 'typed' || type === 'preset' ? [key] : [])));
  const counted = new Set(events.flatMap(({ type, key }) => (type === 'drop' || type === 'count' ? [key] : [])));
  const answers = [...typed].map((key): [string, string] => [title(key), textOf(key)]);
  return {
    say: '',
    answers: [...answers, ...[...counted].map((key): [string, string] => ['Drops', String(state.drops[key] ?? 0)])],
  };

  function textOf(key: string): string {
    const text = state.typed[key] ?? state.presets[key] ?? '';
    const option = fields.find(({ name }) => name === key)?.options?.find(({ value }) => value === text);
    return option?.label ?? text;
  }
}
