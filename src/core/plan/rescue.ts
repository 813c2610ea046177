import { problemOf } from './ask';
import type { Plan, PlanInstance, PlanRefusal, PlanResult } from './instance';
import { answerOf, judgePlan, resultOf, type PlanJudgement } from './judge';
import { best, bestAbove } from './search';
import { WORTH } from './tradeOff';

/** How far the count has come. */
export interface Walk {
  /** Drops already in the trial vial, by stock; they cannot be taken out again. */
  readonly counted: Plan;
  /** Lines that get no more drops. */
  readonly finished: readonly string[];
  /** The plan in force. */
  readonly planned: Plan;
}

export type RescueWay = 'accept' | 'complete' | 'scaleUp';

export interface Rescue {
  readonly ok: true;
  /** Go on as planned, the slip stays. */
  readonly accept: PlanJudgement;
  /** The best plan within the limits that holds what is counted. */
  readonly complete: PlanResult;
  /** More drops than the limit allows, to undo the slip in proportion. */
  readonly scaleUp: PlanResult;
  readonly better: RescueWay;
}

const LARGEST_SCALE_UP = 2; // our choice: a trial of more than twice the drops is another trial

/**
 * Repairs a walk after a slip. What is counted is a lower bound for the open lines and fixed for the finished ones, so the same
 * exact search applies: each line starts from a base of mg, variance and drops, and lo and hi still rise with every drop.
 * What is counted is kept, even where the vial was thought to hold less.
 * A line already drawn from more vials than allowed (a wrong vial) goes on with those, at most two of them.
 *
 * - accept: every open line gets what was planned for it, or what is in already if that is more;
 * - complete: the best plan within the limits, counted drops kept;
 * - scaleUp: the limit of drops raised, as little as brings the error back to that of the plan in force, at most to double;
 *   where that never happens, the smallest error at double. The other limits hold: the vial does not grow.
 *
 * Better: accept while it keeps the limits, unless completing cuts the error by at least a quarter; that, unless scaling up cuts
 * it by a quarter more (a quarter as in the trade-off; our choice: under that a new plan in the middle of a walk costs more than it gives).
 */
export function rescuePlan(instance: PlanInstance, { counted, finished, planned }: Walk): Rescue | PlanRefusal {
  const closed = new Set(finished);
  const most = LARGEST_SCALE_UP * instance.limits.maxDrops;
  const problem = problemOf(instance, { drops: counted, finished: closed }, most);
  if (!problem.ok) return problem;
  const goesOn = instance.components.flatMap(({ id: line, stocks }) =>
    stocks.map(({ id }) => [id, Math.max(counted[id] ?? 0, closed.has(line) ? 0 : (planned[id] ?? 0))] as const),
  );
  const accept = judgePlan(instance, Object.fromEntries(goesOn));
  const before = answerOf(instance, planned);
  const within = best(problem);
  const above = bestAbove(problem, before.objective, most);
  const complete = resultOf(problem, within);
  const scaleUp = resultOf(problem, above);
  return { ok: true, accept, complete, scaleUp, better: better(accept, complete, scaleUp) };
}

function better(accept: PlanJudgement, complete: PlanResult, scaleUp: PlanResult): RescueWay {
  let way: RescueWay = 'accept';
  let error = accept.problems.length === 0 ? accept.objective : Infinity;
  for (const [name, result] of [
    ['complete', complete],
    ['scaleUp', scaleUp],
  ] as const)
    if (result.ok && (error === Infinity || result.objective <= WORTH * error)) [way, error] = [name, result.objective];
  return way;
}
