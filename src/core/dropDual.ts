import type { Option } from './dropCaps';
import type { Options } from './dropOptions';

/** An option of the depth-first search that knows its place in the columns. */
export interface Priced extends Option {
  readonly place: number;
}

/** Options left, what each costs now, and the cap on drops. */
export interface PricedLists {
  readonly options: Options;
  readonly lists: readonly (readonly number[])[];
  readonly costs: Float64Array;
  readonly cap: number;
}

export interface Dual {
  readonly lambda: number;
  /** Σ least − λ · cap: no plan under the cap costs less. */
  readonly bound: number;
  /** min(cost + λ · drops) of each line, and which option that is. */
  readonly least: readonly number[];
  readonly picks: readonly number[];
}

const HALVINGS = 12; // our choice: any λ ≥ 0 gives a valid bound, a few halvings a good one

/** Lagrangian bound of the drop cap. Any price λ ≥ 0 of a drop is valid; sought is the least at which the drops keep the cap. */
export function dualBound(lists: PricedLists, start: number): Dual {
  const free = atPrice(lists, 0);
  if (free.drops <= lists.cap) return free;
  let low = 0;
  let high = start > 0 ? start : 1e-3;
  let kept = atPrice(lists, high);
  let best = kept.bound > free.bound ? kept : free;
  for (let i = 0; kept.drops > lists.cap && i < 60; i++) {
    low = high;
    high *= 2;
    kept = atPrice(lists, high);
    if (kept.bound > best.bound) best = kept;
  }
  for (let i = 0; i < HALVINGS && high - low > 1e-3 * high; i++) {
    const middle = (low + high) / 2;
    const tried = atPrice(lists, middle);
    if (tried.bound > best.bound) best = tried;
    if (tried.drops > lists.cap) low = middle;
    else {
      high = middle;
      kept = tried;
    }
  }
  return { ...best, picks: kept.picks };
}

function atPrice({ options, lists, costs, cap }: PricedLists, lambda: number): Dual & { drops: number } {
  const least: number[] = [];
  const picks: number[] = [];
  let drops = 0;
  let bound = -lambda * cap;
  for (const list of lists) {
    let lowest = Infinity;
    let pick = -1;
    for (const o of list) {
      const priced = costs[o]! + lambda * options.drops[o]!;
      if (priced < lowest) {
        lowest = priced;
        pick = o;
      }
    }
    least.push(lowest);
    picks.push(pick);
    bound += lowest;
    drops += options.drops[pick]!;
  }
  return { lambda, bound, least, picks, drops };
}

/** One option a line with the smallest sum of costs and at most `cap` drops, by dynamic programming over drops; null where none. */
export function fewestUnderCap({ options, lists, costs, cap }: PricedLists): number[] | null {
  const width = cap + 1;
  let sums = new Float64Array(width).fill(Infinity);
  sums[0] = 0;
  const taken = lists.map((list) => {
    const next = new Float64Array(width).fill(Infinity);
    const by = new Int32Array(width).fill(-1);
    for (const o of list) {
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
  let d = sums.indexOf(Math.min(...sums));
  if (sums[d] === Infinity) return null;
  return taken
    .reverse()
    .map((by) => {
      const o = by[d]!;
      d -= options.drops[o]!;
      return o;
    })
    .reverse();
}
