import { closest } from './dropClosest';
import type { Plan, PlanInstance, PlanResult } from './dropInstance';
import { answerOf } from './dropJudge';
import { refusalOfAsk, refusalOfLimits } from './dropRefusal';
import { noWorseThan, smallestError, type Found, type Start } from './dropSearch';
import { prepare, type Counted, type Problem } from './dropTerms';
import { smallestSum } from './dropWeighted';

/**
 * The best whole-drop plan: smallest objective; among equals the fewest drops; among these (worst error only) the smallest
 * sum of |relative error|. Units and shapes: dropInstance. Our own; the optimum is proved, not sought: dropSearch holds the
 * proof for the smallest worst error, dropWeighted that for the weighted sum. What cannot be planned is answered with the line
 * at fault and a remedy, never thrown.
 */
export function bestPlan(instance: PlanInstance): PlanResult {
  const refusal = refusalOfAsk(instance);
  if (refusal) return refusal;
  const problem = prepare(instance);
  const found = bestFound(problem);
  return found ? answerOf(instance, planOf(found)) : refusalOfLimits(problem)!;
}

/** The best plan of a prepared problem under its limits; null where they leave none. Our own, proof as for bestPlan. */
export function bestFound(problem: Problem): Found | null {
  const found = leastError(problem, problem.cap);
  if (!found) return null;
  if (problem.kind === 'minimax') return closest(problem, found);
  return problem.caps.length > 0 ? fewerDropsOfSum(problem, found) : found;
}

/** Under caps of mass: the plan of fewest drops among those of an equal weighted sum. */
function fewerDropsOfSum(problem: Problem, found: Found): Found {
  const fewer = smallestSum(problem, found.drops - 1, noWorseThan(found.error));
  return fewer ? fewerDropsOfSum(problem, fewer) : found;
}

/**
 * A plan of smallest objective with at most `cap` drops, other keys open; null where none keeps the limits (or beats `below`).
 * Our own, proof as for bestPlan.
 */
export function leastError(problem: Problem, cap: number, start: Start = {}): Found | null {
  return problem.kind === 'minimax' ? smallestError(problem, cap, start) : smallestSum(problem, cap, start.below);
}

/** Drops by stock id of a plan found, with those already counted. Arithmetic. */
export function planOf(found: Found, counted?: Counted): Plan {
  const plan: Record<string, number> = { ...counted?.drops };
  for (const { a, na, b, nb } of found.choices) {
    if (a && na > 0) plan[a.stockId] = (plan[a.stockId] ?? 0) + na;
    if (b && nb > 0) plan[b.stockId] = (plan[b.stockId] ?? 0) + nb;
  }
  return plan;
}
