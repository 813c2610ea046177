import { cheapestPick, optionOf } from './dropCaps';
import { allOptions } from './dropOptions';
import type { Found } from './dropSearch';
import { tryPlan, type SumSearch } from './dropSum';
import type { Problem } from './dropTerms';
import { cheapestUnderCap, dualBound, type Dual, type Priced } from './dropDual';

/**
 * Smallest weighted sum of line errors; our own, proved by branch and bound on the scale.
 *
 * Lemma 4 (critical scales). For a fixed plan the sum Σ w (|ρ/s − 1| + z·sd/s) is convex and piecewise linear in 1/s, with
 * kinks at s = ρ of its lines; so it is least at some ρ of the plan, or at an end of the scale's range.
 *
 * A node holds a row of critical scales from s1 to s2 and the options that may still matter. Over s1..s2 an option costs at least
 * its cost at the scale of that range nearest to its ρ (convexity, least at ρ since z·rsd < 1). With these costs the drop cap is
 * priced at λ a drop: Σ min(cost + λ·drops) − λ·cap bounds every plan from below (Lagrange). A node whose bound is no
 * better than the best plan is closed; an option whose own bound (the sum with it in place of its line's least) is no
 * better is dropped for good, as costs only grow when the range shrinks; and only ρ of options that are left stay
 * critical. At one single scale the costs are exact, and a knapsack over drops (with other caps: a depth-first search)
 * gives the exact optimum there.
 */

const START_PRICE = 0.01; // of a drop, a first guess
const TINY = 1e-14; // from one ρ to above it, relative
const SAMPLES = 32; // our choice: scales tried first, for a good start

/**
 * The plan of smallest weighted sum with at most `cap` drops, of equals the one of fewest drops (under caps of mass: one of
 * them); null where no plan is below `bound` or keeps the limits.
 */
export function smallestSum(problem: Problem, cap: number, bound = Infinity): Found | null {
  const options = allOptions(problem, cap);
  const { rho } = options;
  const lines = problem.lines.length;
  const search: SumSearch = {
    problem,
    options,
    lines,
    cap,
    costs: new Float64Array(rho.length),
    best: null,
    target: bound,
  };
  const alive = Int32Array.from(rho, (_, o) => o);
  const min = Math.max(problem.scaleMin, rho[0] ?? Infinity);
  const max = Math.min(problem.scaleMax, rho.at(-1) ?? 0);
  let lambda = START_PRICE;
  for (let i = 0; i <= SAMPLES && bound === Infinity && min <= max; i++) {
    const s = min * (max / min) ** (i / SAMPLES);
    price(search, alive, [s, s]);
    const dual = dualBound({ ...search, alive }, lambda, Infinity);
    tryPlan(search, dual.picks);
    lambda = dual.lambda;
  }
  for (const end of new Set([problem.scaleMin, problem.scaleMax]))
    if (end > 0 && end < Infinity) visit(search, { alive, from: end, to: end, lambda });
  if (min <= max) visit(search, { alive, from: min, to: max, lambda });
  return search.best;
}

interface Node {
  /** Options left, by ascending ρ. */
  readonly alive: Int32Array;
  /** First and last critical scale, mg per part. */
  readonly from: number;
  readonly to: number;
  readonly lambda: number;
}

function visit(search: SumSearch, { alive, from, to, lambda }: Node): void {
  const { rho } = search.options;
  price(search, alive, [from, to]);
  const dual = dualBound({ ...search, alive }, lambda, search.target);
  if (dual.bound >= search.target) return;
  tryPlan(search, dual.picks);
  const left = worthKeeping(search, alive, dual);
  if (from === to) return settle(search, left, dual.lambda);
  const first = placeOf(rho, left, from);
  const end = placeOf(rho, left, to * (1 + TINY));
  if (first >= end) return; // no critical scale is left
  const at = (k: number) => rho[left[k]!]!;
  const middle = at((first + end - 1) >> 1);
  const next = placeOf(rho, left, middle * (1 + TINY));
  visit(search, { alive: left, from: at(first), to: middle, lambda: dual.lambda });
  if (next < end) visit(search, { alive: left, from: at(next), to: at(end - 1), lambda: dual.lambda });
}

/** First option left with ρ ≥ scale, by halving. */
function placeOf(rho: Float64Array, left: Int32Array, scale: number): number {
  let [low, high] = [0, left.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rho[left[middle]!]! < scale) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Options with which, in place of their line's least, the bound is still below the target. */
function worthKeeping(
  { options, costs, target }: SumSearch,
  alive: Int32Array,
  { bound, least, lambda }: Dual,
): Int32Array {
  const room = target - bound;
  const left = new Int32Array(alive.length);
  let n = 0;
  for (let k = 0; k < alive.length; k++) {
    const o = alive[k]!;
    if (costs[o]! + lambda * options.drops[o]! - least[options.line[o]!]! < room) left[n++] = o;
  }
  return left.subarray(0, n);
}

/** Least cost of each option over a range of scales: at the scale of the range nearest to its ρ. */
function price({ problem, options, costs }: SumSearch, alive: Int32Array, range: readonly [number, number]): void {
  const [from, to] = range;
  const weights = problem.lines.map(({ weight }) => weight);
  for (let k = 0; k < alive.length; k++) {
    const o = alive[k]!;
    const rho = options.rho[o]!;
    const s = rho < from ? from : rho > to ? to : rho;
    costs[o] = weights[options.line[o]!]! * (Math.abs(rho / s - 1) + options.spread[o]! / s);
  }
}

/** One scale: costs are exact, and so is what is found here. */
function settle(search: SumSearch, alive: Int32Array, lambda: number): void {
  const { problem, options, costs, cap } = search;
  if (problem.caps.length === 0) {
    const picks = cheapestUnderCap({ ...search, alive });
    if (picks) tryPlan(search, picks);
    return;
  }
  const priced = problem.lines.map((line, at) =>
    [...alive.filter((o) => options.line[o] === at)].map((o): Priced => {
      const { choice, uses } = optionOf(line, options.choices[o]!);
      const reduced = costs[o]! + lambda * options.drops[o]!; // sums above target + λ·cap cannot be better
      return {
        choice,
        uses: [...problem.caps.map((_, r) => uses[r + 1] ?? 0), uses[0]!, reduced],
        cost: costs[o]!,
        place: o,
      };
    }),
  );
  const picked = cheapestPick(priced, [...problem.caps, cap, search.target + lambda * cap]);
  if (picked)
    tryPlan(
      search,
      picked.map((option) => (option as Priced).place),
    );
}
