import type { RunState } from './fold';
import type { Step } from './task';

/** Where a run is among its steps: at the step of its last move, or at the first one. */
export function placeOf(steps: readonly Step[], state: RunState): number {
  return Math.max(
    0,
    steps.findIndex((step) => step.key === state.at),
  );
}
