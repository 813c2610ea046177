/**
 * Which layering to smell next, so that every pair of vials meets in the fewest layerings overall: a covering design
 * where one fits what is already done, otherwise the layering with most new pairs. How a design is fitted and the greedy plan
 * are our own.
 */
import type { PairCoverage } from './pairCoverage';
import { triplesForAllPairs } from './tripleSystems';
import { Refusal } from '../text/refusal';

/** A stored covering of all pairs of `vials` by layerings of `size`: words of letters, a for the first vial. */
export interface CoveringRow {
  readonly vials: number;
  readonly size: number;
  readonly proven: boolean;
  readonly layerings: string;
}

/** What to layer next. `next` is null when every pair has met. */
export interface NextLayering {
  readonly next: readonly string[] | null;
  readonly newPairs: number;
  /** Layerings this plan still takes, the next one included. */
  readonly planned: number;
  /** No plan whatever can take fewer. */
  readonly atLeast: number;
}

/** Open pairs as a square of 0 and 1, and layerings as lists of places in it. */
type Open = readonly Uint8Array[];
type Block = readonly number[];

/**
 * The next layering of at most `size` strips (2 to 5). Strips that would bring no new pair are left away, so the last
 * layerings may be smaller. `stored` are the coverings known for fours and fives; without them the greedy plan stands. All
 * numbers are counts. The order of `coverage.vials` should stay as it is while a plan is followed.
 * @throws Refusal for a size outside 2 to 5
 */
export function nextLayering(coverage: PairCoverage, size: number, stored: readonly CoveringRow[] = []): NextLayering {
  if (!(Number.isInteger(size) && size >= 2 && size <= 5))
    throw new Refusal('a layering has 2 to 5 strips, not {size}', { size });
  if (coverage.left.length === 0) return { next: null, newPairs: 0, planned: 0, atLeast: 0 };
  const open = coverage.times.map((row, i) => Uint8Array.from(row, (times, j) => (i !== j && times === 0 ? 1 : 0)));
  const greedy = greedyPlan(open, size);
  const design = designPlan(open, designFor(open.length, size, stored));
  const plan = design && design.length <= greedy.length ? design : greedy;
  const gain = (block: Block): number => pairsIn(block, open);
  const best = plan.reduce((one, other) => (gain(other) > gain(one) ? other : one));
  return {
    next: best.filter((i) => best.some((j) => open[i]![j])).map((i) => coverage.vials[i]!),
    newPairs: gain(best),
    planned: plan.length,
    atLeast: leastLayerings(coverage, size),
  };
}

/**
 * A count: at least that many layerings of `size` are still needed: by the pairs left, by what the busiest vial still has to
 * meet, and by the places all vials together still need. With nothing done this is the bound of Schönheim,
 * ⌈v/k·⌈(v−1)/(k−1)⌉⌉. Source: Pacific J. Math. 14 (1964) 1405; with something done, our own.
 */
export function leastLayerings(coverage: PairCoverage, size: number): number {
  const strips = Math.min(size, coverage.vials.length);
  if (coverage.left.length === 0) return 0;
  const turns = coverage.times.map((row, i) =>
    Math.ceil(row.filter((times, j) => i !== j && times === 0).length / (strips - 1)),
  );
  return Math.max(
    Math.ceil(coverage.left.length / ((strips * (strips - 1)) / 2)),
    Math.max(...turns),
    Math.ceil(turns.reduce((sum, turn) => sum + turn, 0) / strips),
  );
}

function designFor(vials: number, size: number, stored: readonly CoveringRow[]): Block[] | null {
  if (vials <= size) return [Array.from({ length: vials }, (_, i) => i)];
  if (size === 3 && vials <= 100) return triplesForAllPairs(vials);
  const row = stored.find((one) => one.vials === vials && one.size === size);
  return row ? row.layerings.split(' ').map((word) => [...word].map((letter) => letter.charCodeAt(0) - 97)) : null;
}

/** Up to that many vials a design is fitted to what is done; with more, the greedy plan was as good in every trial. */
const FITTED = 20;

/** The layerings of a design that still bring a new pair, its letters given to the vials so that few are left. */
function designPlan(open: Open, design: readonly Block[] | null): Block[] | null {
  if (!design) return null;
  const vial = open.map((_, i) => i);
  const blocksOf = vial.map((_, i) => design.filter((block) => block.includes(i)));
  const needed = (block: Block): boolean => {
    for (let a = 1; a < block.length; a++)
      for (let b = 0; b < a; b++) if (open[vial[block[a]!]!]![vial[block[b]!]!]) return true;
    return false;
  };
  const neededWith = (i: number, j: number): number => {
    let sum = 0;
    for (const block of blocksOf[i]!) if (needed(block)) sum++;
    for (const block of blocksOf[j]!) if (!block.includes(i) && needed(block)) sum++;
    return sum;
  };
  for (let better = open.length <= FITTED; better;) {
    better = false;
    for (let i = 0; i < vial.length; i++)
      for (let j = 0; j < i; j++) {
        const before = neededWith(i, j);
        [vial[i], vial[j]] = [vial[j]!, vial[i]!];
        if (neededWith(i, j) < before) better = true;
        else [vial[i], vial[j]] = [vial[j]!, vial[i]!];
      }
  }
  return design.filter(needed).map((block) => block.map((i) => vial[i]!));
}

/** Layering after layering, each with most new pairs, until all have met; then those found needless are left out. */
function greedyPlan(open: Open, size: number): Block[] {
  if (size === 2) return open.flatMap((row, i) => [...row.keys()].filter((j) => i < j && row[j]).map((j) => [i, j]));
  const left = open.map((row) => Uint8Array.from(row));
  const met = open.map((row) => new Uint16Array(row.length));
  const plan: Block[] = [];
  for (let block = grow(left, size); pairsIn(block, left) > 0; block = grow(left, size)) {
    plan.push(block);
    for (const i of block)
      for (const j of block) {
        left[i]![j] = 0;
        met[i]![j]!++;
      }
  }
  return plan.filter((block) => {
    if (pairsOf(block).some(([i, j]) => open[i]![j] && met[i]![j] === 1)) return true;
    for (const i of block) for (const j of block) met[i]![j]!--;
    return false;
  });
}

/** A layering with many open pairs: from the vial with most of them, always the one that closes most. */
function grow(left: Open, size: number): Block {
  const degree = left.map((row) => row.reduce((sum, one) => sum + one, 0));
  const block = [degree.indexOf(Math.max(...degree))];
  while (block.length < Math.min(size, left.length)) {
    let [best, bestWorth] = [-1, -1];
    for (let i = 0; i < left.length; i++) {
      if (block.includes(i)) continue;
      const closes = block.reduce((sum, j) => sum + left[i]![j]!, 0);
      const worth = closes * 1000 + degree[i]!;
      if (worth > bestWorth) [best, bestWorth] = [i, worth];
    }
    block.push(best);
  }
  return block;
}

function pairsOf(block: Block): [number, number][] {
  return block.flatMap((i, at) => block.slice(at + 1).map((j): [number, number] => [i, j]));
}

function pairsIn(block: Block, open: Open): number {
  let count = 0;
  for (let a = 0; a < block.length; a++)
    for (let b = a + 1; b < block.length; b++) count += open[block[a]!]![block[b]!]!;
  return count;
}
