import { dayOfMoment, today } from '../../workshop/today';
import type { RunState } from './fold';

/**
 * The day on which a run was last led a step on, as YYYY-MM-DD: what it makes was made then, whenever it is looked at. With
 * beginnings of step names only these count. Today while no such step was left.
 */
export function dayOfRun({ done }: RunState, ...steps: readonly string[]): string {
  const moments = Object.entries(done).flatMap(([key, at]) =>
    steps.length === 0 || steps.some((step) => key.startsWith(step)) ? at : [],
  );
  const last = moments.sort().at(-1);
  return last === undefined ? today() : dayOfMoment(last);
}
