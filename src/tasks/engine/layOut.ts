import type { RunEvent } from '../../records/kind/run';
import { fold, freshRun, type RunState } from './fold';
import type { Step, Task } from './task';

/** The steps of a run, and what the task broke on, if it did: the steps are then those from before. */
export interface LaidOut {
  readonly steps: readonly Step[];
  readonly fault: { readonly error: unknown } | null;
}

const WAYS_BACK = 40; // our choice: more answers back than that, it is another run

/**
 * What the work makes of a run (`state` is its events folded onto `from`). Where it breaks on an answer, what it makes of the run
 * before that answer, with the error.
 * @throws what the work breaks on, where it does so from the beginning
 */
export function lastSound<T>(
  work: (run: RunState) => T,
  events: readonly RunEvent[],
  state: RunState,
  from = freshRun,
) {
  try {
    return { made: work(state), fault: null };
  } catch (error) {
    const answers = events.flatMap(({ type }, i) => (type === 'typed' || type === 'preset' ? [i] : []));
    for (const i of [...answers.slice(-WAYS_BACK).reverse(), 0])
      try {
        return { made: work(fold(events.slice(0, i), from)), fault: { error } };
      } catch {
        // further back, then
      }
    throw error;
  }
}

/**
 * The steps of a run. Where the task breaks on an answer, its steps from before, so that the answer can be changed.
 * @throws what the task breaks on, where it does so from the beginning
 */
export function layOut(task: Task, events: readonly RunEvent[], state: RunState, from = freshRun): LaidOut {
  const { made, fault } = lastSound((run) => task.steps(run), events, state, from);
  return { steps: made, fault };
}

/** The title of a run, or the one that is given where the task breaks on it: the head of a run is there in any case. */
export function titleOf(task: Task, state: RunState, otherwise: string): string {
  try {
    return task.title(state);
  } catch {
    return otherwise; // the steps say what is wrong
  }
}
