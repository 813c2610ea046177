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
 * more, with nothing changed, is told once. Where the first version wrote no words down, they are found from the events before.
 */
export function storyOf(task: Task, events: readonly RunEvent[]): StoryLine[] {
  const told = new Map<string, StoryLine>();
  let state = startOf(task, events);
  for (const event of events) {
    if (event.type === 'go' && event.text) {
      const line = event.told ?? replayed(task, state, event.text);
      const same = JSON.stringify([event.text, line]);
      if (line && !told.has(same)) told.set(same, { ...line, at: event.at });
    }
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
