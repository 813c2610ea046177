import { cheapestPick, optionOf } from './dropCaps';
import { allOptions, type Options } from './dropOptions';
import { noWorseThan, type Found } from './dropSearch';
import type { Problem } from './dropTerms';
import { dualBound, fewestUnderCap, type Priced } from './dropDual';

/**
 * Smallest weighted sum of line errors, proved by branch and bound on the scale.
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
interface Search {
  readonly problem: Problem;
  readonly options: Options;
  readonly cap: number;
  readonly costs: Float64Array;
  best: Found | null;
  /** Only sums below this are of interest. */
  target: number;
}

const MARGIN = 1e-11; // sums nearer than this, relative to 1 + sum, are equal
const SAMPLES = 32; // our choice: scales tried first, for a good start

/** The plan of smallest weighted sum with at most `cap` drops; null where no plan is below `bound` or keeps the limits. */
export function smallestSum(problem: Problem, cap: number, bound = Infinity): Found | null {
  const options = allOptions(problem, cap);
  if (options.lists.some((list) => list.length === 0)) return null;
  const search: Search = {
    problem,
    options,
    cap,
    costs: new Float64Array(options.rho.length),
    best: null,
    target: bound,
  };
  const scales = criticalScales(search, options.lists, [problem.scaleMin, problem.scaleMax]);
  for (let i = 0; i <= SAMPLES; i++) {
    const s = scales[Math.round((i / SAMPLES) * (scales.length - 1))]!;
    price(search, options.lists, [s, s]);
    tryPlan(search, dualBound({ ...search, lists: options.lists }, 0));
  }
  visit(search, { scales, lists: options.lists, lambda: 0 });
  return search.best;
}

/** Of all plans no worse than `found`, one with the fewest drops. */
export function fewestDropsOfSum(problem: Problem, found: Found): Found {
  const fewer = smallestSum(problem, found.drops - 1, noWorseThan(found.error));
  return fewer ? fewestDropsOfSum(problem, fewer) : found;
}

/** ρ of the options within the range, ascending, with the range's finite ends: where the best scale may be (Lemma 4). */
function criticalScales(
  { options, problem }: Search,
  lists: readonly (readonly number[])[],
  [min, max]: readonly [number, number],
): Float64Array {
  const ends = [problem.scaleMin, problem.scaleMax].filter((s) => s > 0 && s < Infinity && s >= min && s <= max);
  const inside = lists.flatMap((list) => list.map((o) => options.rho[o]!).filter((rho) => rho >= min && rho <= max));
  const all = Float64Array.from(inside.concat(ends)).sort();
  return all.filter((s, at) => at === 0 || s !== all[at - 1]);
}

interface Node {
  readonly scales: Float64Array;
  readonly lists: readonly (readonly number[])[];
  readonly lambda: number;
}

function visit(search: Search, { scales, lists, lambda }: Node): void {
  if (scales.length === 0) return;
  const range = [scales[0]!, scales.at(-1)!] as const;
  price(search, lists, range);
  const dual = dualBound({ ...search, lists }, lambda);
  if (dual.bound >= search.target) return;
  tryPlan(search, dual);
  const left = lists.map((list, at) => {
    const room = search.target - dual.bound + dual.least[at]!;
    return list.filter((o) => search.costs[o]! + dual.lambda * search.options.drops[o]! < room);
  });
  if (left.some((list) => list.length === 0)) return;
  if (scales.length === 1) return settle(search, left, dual.lambda);
  const kept = criticalScales(search, left, range);
  if (kept.length === 1) return visit(search, { scales: kept, lists: left, lambda: dual.lambda });
  const middle = kept.length >> 1;
  visit(search, { scales: kept.subarray(0, middle), lists: left, lambda: dual.lambda });
  visit(search, { scales: kept.subarray(middle), lists: left, lambda: dual.lambda });
}

/** Least cost of each option over a range of scales: at the scale of the range nearest to its ρ. */
function price(
  { problem, options, costs }: Search,
  lists: readonly (readonly number[])[],
  range: readonly [number, number],
): void {
  const [from, to] = range;
  for (let at = 0; at < lists.length; at++) {
    const { weight } = problem.lines[at]!;
    for (const o of lists[at]!) {
      const rho = options.rho[o]!;
      const s = rho < from ? from : rho > to ? to : rho;
      costs[o] = weight * (Math.abs(rho / s - 1) + options.spread[o]! / s);
    }
  }
}

/** Takes the plan that solved the priced problem, if it keeps the limits and is better at its own best scale. */
function tryPlan(search: Search, { picks }: { picks: readonly number[] }): void {
  const { problem, options, cap } = search;
  const drops = picks.reduce((sum, o) => sum + options.drops[o]!, 0);
  if (drops > cap || !keepsCaps(search, picks)) return;
  const choices = picks.map((o) => options.choices[o]!);
  const { scale, error } = sumAtBest(problem, choices);
  if (error >= search.target) return;
  search.target = error - MARGIN * (1 + error);
  const low = Math.min(...choices.map(({ lo }) => lo));
  search.best = { choices, low, high: Math.max(...choices.map(({ hi }) => hi)), scale, error, drops };
}

function keepsCaps({ problem, options }: Search, picks: readonly number[]): boolean {
  return problem.caps.every((cap, r) => {
    const used = picks.reduce((sum, o) => {
      const { a, na, b, nb } = options.choices[o]!;
      return sum + na * (a?.costs[r] ?? 0) + nb * (b?.costs[r] ?? 0);
    }, 0);
    return used <= cap;
  });
}

function sumAtBest(problem: Problem, choices: Found['choices']): { scale: number; error: number } {
  const { lines, scaleMin, scaleMax } = problem;
  let best = { scale: NaN, error: Infinity };
  for (const { rho } of choices) {
    const scale = Math.min(scaleMax, Math.max(scaleMin, rho));
    const error = choices.reduce(
      (sum, choice, at) =>
        sum + lines[at]!.weight * (Math.abs(choice.rho / scale - 1) + (choice.hi - choice.lo) / 2 / scale),
      0,
    );
    if (error < best.error) best = { scale, error };
  }
  return best;
}

/** One scale: costs are exact, and so is what is found here. */
function settle(search: Search, lists: readonly (readonly number[])[], lambda: number): void {
  const { problem, options, costs, cap } = search;
  if (problem.caps.length === 0) {
    const picks = fewestUnderCap({ ...search, lists });
    if (picks) tryPlan(search, { picks });
    return;
  }
  const priced: Priced[][] = lists.map((list, at) =>
    list.map((o) => {
      const { choice, uses } = optionOf(problem.lines[at]!, options.choices[o]!, 0);
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
  if (picked) tryPlan(search, { picks: picked.map((option) => (option as Priced).place) });
}
