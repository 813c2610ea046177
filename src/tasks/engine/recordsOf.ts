import type { AnyRecord } from '../../records/kind/kinds';
import type { RunEvent } from '../../records/kind/run';
import type { RunState } from './fold';
import { askedIn } from './lastTime';
import type { Task } from './task';

/** A run that ends: its state, all that happened in it, and when it ended (ISO 8601, UTC). */
interface Ended {
  readonly state: RunState;
  readonly events: readonly RunEvent[];
  readonly endedAt: string;
}

/** The records that a run ends in, each with the run among what it came from and when it was made; the first one with how, unless the task says so of each. @throws Refusal when it cannot end so */
export function recordsOf(task: Task, run: string, { state, events, endedAt }: Ended): AnyRecord[] {
  const times = { from: events[0]?.at ?? endedAt, to: endedAt };
  const asked = task.remembers && askedIn(state, task.remembers);
  const how = { ...task.done?.(state, events), ...(asked ? { asked } : {}) };
  return task.keep(state).map((record, i) => ({
    ...record,
    from: [...record.from, run],
    done: { ...times, ...(task.doneOf ? task.doneOf(state, i) : i === 0 ? how : {}) },
  }));
}
