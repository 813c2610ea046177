import { problemOf } from './ask';
import type { PlanAnswer, PlanInstance, PlanRefusal } from './instance';
import { answered, refused } from './judge';
import type { Problem } from './problem';
import { noWorseThan, smallestError, type Found, type Met } from './search';

/** One step of the staircase: no plan with fewer drops is as near, none with as many is nearer. */
export interface TradePoint extends PlanAnswer {
  /** It cuts the error of the last worthwhile point by at least a quarter; the first and the last always count. */
  readonly worth: boolean;
  /** At most one: here chance in counting takes over from rounding. */
  readonly recommended: boolean;
}

export type TradeOff = { readonly ok: true; readonly points: readonly TradePoint[] } | PlanRefusal;

/** A step is worth its drops when it leaves at most this much of the error. Our choice: it leaves some seven points of thirty. */
export const WORTH = 0.75;

/**
 * The whole trade-off: smallest error for each number of drops up to the limit, fewest drops first.
 *
 * Our own, found downwards: the best plan under cap N, say of D drops, then the best under cap D − 1, until no plan is left;
 * one as near with fewer drops takes the place of the one before. The smallest error only grows as the cap falls, and each cap
 * passed over (D to N) has the error of D, so no step is missed.
 *
 * Recommended is the first worthwhile point whose worst rounding (largest |ρ/s − 1| of a line) is no larger than its
 * worst counting noise (largest one-sigma spread of a line's drops): rounding falls like 1/n, counting like 1/√n, so beyond
 * it more drops mend what chance undoes. Where no point gets there, it is the last: the smallest error.
 */
export function tradeOff(instance: PlanInstance): TradeOff {
  const problem = problemOf(instance);
  if (!problem.ok) return problem;
  const steps = staircase(problem);
  if (steps.length === 0) return refused(problem, problem.drawer.shortage(problem.cap));
  return { ok: true, points: marked(steps.map((step) => answered(problem, step))) };
}

function staircase(problem: Problem): Found[] {
  const met: Met = new Map();
  const steps: Found[] = [];
  for (let cap = problem.cap; ; cap = steps[0]!.drops - 1) {
    const found = smallestError(problem, cap, { met });
    if (!found) return steps;
    if (steps[0] && found.error <= noWorseThan(steps[0].error)) steps.shift(); // as near with fewer drops
    steps.unshift(found);
  }
}

function marked(answers: readonly PlanAnswer[]): TradePoint[] {
  let last = Infinity;
  const worth = answers.map(({ objective }, at) => {
    const counts = objective <= WORTH * last || at === answers.length - 1;
    if (counts) last = objective;
    return counts;
  });
  const balanced = answers.findIndex(({ lines }, at) => {
    const rounding = Math.max(...lines.map((line) => Math.abs(line.rounding)));
    return worth[at]! && rounding <= Math.max(...lines.map(({ counting }) => counting));
  });
  const recommended = balanced >= 0 ? balanced : answers.length - 1;
  return answers.map((answer, at) => ({ ...answer, worth: worth[at]!, recommended: at === recommended }));
}
