import type { RunState } from './fold';
import type { Step } from './task';

/**
 * Where a run is among its steps: at the step of its last move, or at the first one. Where that step is gone, since it has become part of
 * another: behind the last one that was left as done.
 */
export function placeOf(steps: readonly Step[], { at, done }: RunState): number {
  const here = steps.findIndex((step) => step.key === at);
  if (here >= 0 || at === '') return Math.max(0, here);
  const left = steps.findLastIndex(({ key }) => key in done);
  return Math.min(left + 1, steps.length - 1);
}
