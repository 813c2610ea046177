import { closest } from './dropClosest';
import type { Plan, PlanInstance, PlanResult } from './dropInstance';
import { answerOf } from './dropJudge';
import { refusalOfAsk, refusalOfLimits } from './dropRefusal';
import { smallestError, type Found } from './dropSearch';
import { prepare, type Counted, type Problem } from './dropTerms';

/**
 * The best whole-drop plan: smallest worst error; among equals the fewest drops; among these the smallest sum of
 * |relative error|. Units and shapes: dropInstance. Our own; the optimum is proved, not sought: dropSearch holds the proof.
 * What cannot be planned is answered with the line at fault and a remedy, never thrown.
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
  const found = smallestError(problem, problem.cap);
  return found && closest(problem, found);
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
