import type { Option } from './dropCaps';
import type { Options } from './dropOptions';

/** An option of the depth-first search that knows its place in the columns. */
export interface Priced extends Option {
  readonly place: number;
}

/** Options left, what each costs now, and the cap on drops. */
export interface PricedLists {
  readonly options: Options;
  /** Places of the options left. */
  readonly alive: Int32Array;
  readonly lines: number;
  readonly costs: Float64Array;
  readonly cap: number;
}

export interface Dual {
  readonly lambda: number;
  /** Σ least − λ · cap: no plan under the cap costs less. */
  readonly bound: number;
  /** min(cost + λ · drops) of each line, and which option that is. */
  readonly least: Float64Array;
  readonly picks: Int32Array;
}

const LEAST_PRICE = 1e-6; // of a drop, in units of the objective: below it a drop is free
const ROUNDS = 2; // our choice: any λ ≥ 0 gives a valid bound, a few steps from a neighbour's λ a good one

/**
 * Lagrangian bound of the drop cap. Any price λ ≥ 0 of a drop is valid (proof: a plan under the cap
 * costs at least its cost + λ · (drops − cap), hence at least Σ least − λ · cap); sought (our own, by a few steps), from
 * `start`, is the least at which the drops keep the cap. Ends early where the bound reaches `enough`.
 */
export function dualBound(lists: PricedLists, start: number, enough: number): Dual {
  let [low, high, step] = [-Infinity, Infinity, 0.1];
  let best = atPrice(lists, start);
  let kept = best;
  let tried = best;
  for (let i = 0; i < ROUNDS && best.bound < enough; i++) {
    const over = tried.drops > lists.cap;
    if (!over) kept = tried;
    if (over) low = tried.lambda;
    else high = tried.lambda;
    if (high === 0) break; // the drops are free, and kept
    const mean = low > -Infinity && high < Infinity ? (low + high) / 2 : tried.lambda * (over ? 1 + step : 1 - step);
    tried = atPrice(lists, mean < LEAST_PRICE ? (over ? LEAST_PRICE : 0) : mean);
    step = Math.min(0.9, step * 2);
    if (tried.bound > best.bound) best = tried;
  }
  return { ...best, picks: (tried.drops <= lists.cap ? tried : kept).picks };
}

function atPrice({ options, alive, lines, costs, cap }: PricedLists, lambda: number): Dual & { drops: number } {
  const least = new Float64Array(lines).fill(Infinity);
  const picks = new Int32Array(lines).fill(-1);
  for (let k = 0; k < alive.length; k++) {
    const o = alive[k]!;
    const line = options.line[o]!;
    const priced = costs[o]! + lambda * options.drops[o]!;
    if (priced < least[line]!) {
      least[line] = priced;
      picks[line] = o;
    }
  }
  let drops = 0;
  let bound = -lambda * cap;
  for (let line = 0; line < lines; line++) {
    bound += least[line]!;
    if (picks[line]! >= 0) drops += options.drops[picks[line]!]!;
  }
  return { lambda, bound, least, picks, drops };
}

/**
 * One option a line with the smallest sum of costs and at most `cap` drops, by dynamic programming over drops (common
 * practice); null where none.
 */
export function cheapestUnderCap({ options, alive, lines, costs, cap }: PricedLists): number[] | null {
  const width = cap + 1;
  let sums = new Float64Array(width).fill(Infinity);
  sums[0] = 0;
  const taken = Array.from({ length: lines }, (_, line) => {
    const next = new Float64Array(width).fill(Infinity);
    const by = new Int32Array(width).fill(-1);
    for (const o of alive) {
      if (options.line[o] !== line) continue;
      const n = options.drops[o]!;
      for (let d = n; d < width; d++) {
        const sum = sums[d - n]! + costs[o]!;
        if (sum < next[d]!) {
          next[d] = sum;
          by[d] = o;
        }
      }
    }
    sums = next;
    return by;
  });
  const smallest = Math.min(...sums);
  let d = sums.findIndex((sum) => sum <= smallest * (1 + 1e-13)); // the fewest drops of equal sums
  if (smallest === Infinity) return null;
  return taken
    .reverse()
    .map((by) => {
      const o = by[d]!;
      d -= options.drops[o]!;
      return o;
    })
    .reverse();
}
