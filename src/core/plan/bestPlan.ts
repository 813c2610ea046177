import { problemOf } from './ask';
import type { PlanInstance, PlanResult } from './instance';
import { resultOf } from './judge';
import { best } from './search';

/**
 * The best whole-drop plan: smallest worst error; among equals the fewest drops; among these the smallest sum of
 * |relative error|. Units and shapes: PlanInstance. Our own; the optimum is proved, not sought: search holds the proof.
 * What cannot be planned is resultOf with the line at fault and a remedy, never thrown.
 */
export function bestPlan(instance: PlanInstance): PlanResult {
  const problem = problemOf(instance);
  return problem.ok ? resultOf(problem, best(problem)) : problem;
}
