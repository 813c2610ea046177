import type { Plan, PlanInstance } from './dropInstance';

/** Placeholder until the search stands. */
export function bestWeighted(instance: PlanInstance, cap: number): Plan | null {
  void cap;
  throw new RangeError(`the weighted sum of ${instance.id} is not planned yet`);
}
