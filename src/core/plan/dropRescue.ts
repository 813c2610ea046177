import { WORTH } from './dropFront';
import type { Plan, PlanInstance, PlanRefusal, PlanResult } from './dropInstance';
import { answerOf, judgePlan, type PlanJudgement } from './dropJudge';
import { bestFound, bestPlan, planOf } from './dropPlan';
import { refusalOfAsk, refusalOfLimits } from './dropRefusal';
import { noWorseThan, smallestError } from './dropSearch';
import { sentence } from '../text/refusal';
import { prepare, type Counted, type Problem } from './dropTerms';

/** Where the hand stands. */
export interface Walk {
  /** Drops already in the trial vial, by stock; they cannot be taken out again. */
  readonly counted: Plan;
  /** Lines that get no more drops. */
  readonly finished: readonly string[];
  /** The plan in force; the best plan of the instance where none is given. */
  readonly planned?: Plan;
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
 * What is counted stands, even where the vial was thought to hold less.
 * A line already drawn from more vials than allowed (a wrong vial) goes on with those, at most two of them.
 *
 * - accept: every open line gets what was planned for it, or what is in already if that is more;
 * - complete: the best plan within the limits, counted drops kept;
 * - scaleUp: the limit of drops raised, as little as brings the error back to that of the plan in force, at most to double;
 *   where that never happens, the smallest error at double. The other limits stand: the vial does not grow.
 *
 * Better: accept while it keeps the limits, unless completing cuts the error by at least a quarter; that, unless scaling up cuts
 * it by a quarter more (a quarter as in the trade-off; our choice: under that a new plan in the middle of a walk costs more than it gives).
 */
export function rescuePlan(instance: PlanInstance, walk: Walk): Rescue | PlanRefusal {
  const refusal = refusalOfAsk(instance);
  if (refusal) return refusal;
  const counted: Counted = { drops: walk.counted, finished: new Set(walk.finished) };
  const before = walk.planned ? answerOf(instance, walk.planned) : bestPlan(instance);
  if (!before.ok) return before;
  const accept = judgePlan(instance, accepted(instance, before.plan, counted));
  const complete = completed(instance, prepare(instance, counted), counted);
  const scaleUp = scaledUp(instance, counted, before.objective);
  return { ok: true, accept, complete, scaleUp, better: better(accept, complete, scaleUp) };
}

function accepted({ components }: PlanInstance, planned: Plan, { drops, finished }: Counted): Plan {
  return Object.fromEntries(
    components.flatMap(({ id: line, stocks }) =>
      stocks.map(({ id }) => [id, Math.max(drops[id] ?? 0, finished.has(line) ? 0 : (planned[id] ?? 0))]),
    ),
  );
}

function completed(instance: PlanInstance, problem: Problem, counted: Counted): PlanResult {
  const found = bestFound(problem);
  if (found) return answerOf(instance, planOf(found, counted));
  return refusalOfLimits(problem) ?? refusalOfEmptyLine(instance, counted);
}

/** What is left when the limits are not to blame: a line that was finished without a drop. */
function refusalOfEmptyLine({ components }: PlanInstance, { drops, finished }: Counted): PlanRefusal {
  const empty = components.find(({ id, stocks }) => finished.has(id) && stocks.every((stock) => !drops[stock.id]));
  const line = empty ? { id: empty.id, name: empty.name } : 'a line';
  return {
    ok: false,
    componentId: empty?.id ?? null,
    why: sentence('{line} is finished without a drop in it.', { line }),
    remedy: sentence('Open {line} again, or take it out of the formula.', { line }),
  };
}

/** The error falls as the cap rises, so the least cap that reaches the wished error is found by halving. */
function scaledUp(instance: PlanInstance, counted: Counted, wished: number): PlanResult {
  const under = (maxDrops: number) => ({ ...instance, limits: { ...instance.limits, maxDrops } });
  const whole = LARGEST_SCALE_UP * instance.limits.maxDrops;
  const largest = prepare(under(whole), counted);
  const reaches = (cap: number) => (smallestError(largest, cap)?.error ?? Infinity) <= noWorseThan(wished);
  let [low, high] = [instance.limits.maxDrops, whole]; // strictly above the limit: within it is `complete`
  if (reaches(high))
    while (high - low > 1) reaches((low + high) >> 1) ? (high = (low + high) >> 1) : (low = (low + high) >> 1);
  return completed(instance, { ...largest, cap: high }, counted);
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
