/**
 * Ranking of several samples by several sittings (ISO 8587): Friedman's test and the least distance that counts. One row
 * per sitting, one column per sample, in the same order.
 */
import { chiSquaredTail, normalBound } from '../number/tails';
import { Refusal } from '../text/refusal';

/** Outcome of Friedman's test. `exact` is null where the counting would take too long; then chi-squared stands alone. */
export interface Friedman {
  readonly rankSums: readonly number[];
  /** Friedman's F, corrected for ties; 0 when all sittings tie everything. */
  readonly f: number;
  readonly exact: number | null;
  readonly chiSquared: number;
}

/** Orders of p samples that are worth counting exactly: J rows at most (our choice: well under a second on a phone). */
const MOST_ROWS: Record<number, number> = { 2: 200, 3: 24, 4: 14, 5: 9, 6: 5 };
/** Our choice: more cannot be kept apart in one sitting, and Page's test would take too long to count. */
const MOST_SAMPLES = 10;

/** Ranks of one sitting's scores, 1 for the lowest, equal scores sharing the mean of their ranks. Any finite numbers. */
export function ranks(scores: readonly number[]): number[] {
  return scores.map((score) => {
    const below = scores.filter((other) => other < score).length;
    const equal = scores.filter((other) => other === score).length;
    return below + (equal + 1) / 2;
  });
}

/**
 * Friedman's test of ranks or scores (ranked here within each row).
 * F = 12/(Jp(p+1))·ΣR² − 3J(p+1), over 1 − Σ(t³ − t)/(Jp(p² − 1)) for ties. Source: ISO 8587; Conover 1999 for ties. The
 * exact p counts every way the rows could have been ordered, ties kept.
 * @throws Refusal for fewer than 2 or more than 10 samples, no rows, or rows of different length
 */
export function friedman(rows: readonly (readonly number[])[]): Friedman {
  const [ranked, p] = demandRows(rows);
  const rankSums = ranked[0]!.map((_, i) => ranked.reduce((sum, row) => sum + row[i]!, 0));
  const mean = (ranked.length * (p + 1)) / 2;
  const spread = ranked.flat().reduce((sum, rank) => sum + (rank - (p + 1) / 2) ** 2, 0);
  if (spread === 0) return { rankSums, f: 0, exact: 1, chiSquared: 1 };
  const f = ((p - 1) * squares(rankSums, mean)) / spread; // the same F, ties and all (Conover 1999, T1)
  const asFar = spreadChances(ranked)?.filter((other) => other.spread >= squares(rankSums, mean) - 1e-9);
  const exact = asFar ? asFar.reduce((sum, { chance }) => sum + chance, 0) : null;
  return { rankSums, f, exact, chiSquared: chiSquaredTail(f, p - 1) };
}

/**
 * Least difference of two rank sums that counts, at a two-sided `risk`, once Friedman's test has shown a difference.
 * LSD = z·√(Jp(p+1)/6). Source: ISO 8587. `sittings` and `samples` are whole numbers.
 * @throws Refusal when the risk is not between 0 and 1
 */
export function leastRankDistance(sittings: number, samples: number, risk: number): number {
  return normalBound(risk / 2) * Math.sqrt((sittings * samples * (samples + 1)) / 6);
}

/**
 * The rows as ranks, and how many samples they rank. Arithmetic.
 * @throws Refusal for fewer than 2 or more than 10 samples, or rows of different length
 */
export function demandRows(rows: readonly (readonly number[])[]): [number[][], number] {
  const p = rows[0]?.length ?? 0;
  if (!(p >= 2 && p <= MOST_SAMPLES))
    throw new Refusal('2 to {most} samples can be ranked, not {p}', { most: MOST_SAMPLES, p });
  if (rows.some((row) => row.length !== p)) throw new Refusal('every session has to rank all samples');
  return [rows.map(ranks), p];
}

function squares(sums: readonly number[], mean: number): number {
  return sums.reduce((sum, one) => sum + (one - mean) ** 2, 0);
}

/**
 * Chance of each spread S = Σ (R − mean)² of the rank sums when every order of every row of ranks is as likely, ties
 * kept; largest S first. Null where the counting would take too long (3 samples up to 24 rows, 4 to 14, 5 to 9, 6 to 5).
 */
export function spreadChances(ranked: readonly (readonly number[])[]): { spread: number; chance: number }[] | null {
  const p = ranked[0]?.length ?? 0;
  if (ranked.length > (MOST_ROWS[p] ?? 0)) return null;
  const doubled = ranked.map((row) => row.map((rank) => 2 * rank));
  const base = 2 * p * ranked.length + 1; // above any doubled rank sum
  let states = new Map([[0, 1]]);
  doubled.forEach((row, before) => {
    states = withRow(states, distinctOrders(row), { base, total: before * p * (p + 1) });
  });
  const [mean, total] = [ranked.length * (p + 1), ranked.length * p * (p + 1)]; // of doubled ranks
  const bySpread = new Map<number, number>();
  for (const [state, chance] of states) {
    const spread = squares(unpack(state, { p, base, total }), mean) / 4;
    bySpread.set(spread, (bySpread.get(spread) ?? 0) + chance);
  }
  return [...bySpread].map(([spread, chance]) => ({ spread, chance })).sort((a, b) => b.spread - a.spread);
}

/**
 * Rank sums after one more row. Which sample holds which sum does not matter, so a state is the sums in rising order,
 * packed as digits of one number; the last sum follows from the total and is left out.
 */
function withRow(
  states: Map<number, number>,
  orders: readonly (readonly number[])[],
  { base, total }: { base: number; total: number },
): Map<number, number> {
  const p = orders[0]!.length;
  const sorted = new Int32Array(p);
  const next = new Map<number, number>();
  for (const [state, chance] of states) {
    const sums = unpack(state, { p, base, total });
    for (const order of orders) {
      let key = 0;
      for (let i = 0; i < p; i++) {
        const sum = sums[i]! + order[i]!;
        let at = i;
        for (; at > 0 && sorted[at - 1]! > sum; at--) sorted[at] = sorted[at - 1]!;
        sorted[at] = sum;
      }
      for (let i = 0; i < p - 1; i++) key = key * base + sorted[i]!;
      next.set(key, (next.get(key) ?? 0) + chance / orders.length);
    }
  }
  return next;
}

function unpack(state: number, { p, base, total }: { p: number; base: number; total: number }): number[] {
  const sums = new Array<number>(p).fill(0);
  let rest = total;
  for (let i = p - 2; i >= 0; i--) {
    sums[i] = state % base;
    state = Math.floor(state / base);
    rest -= sums[i]!;
  }
  sums[p - 1] = rest;
  return sums;
}

/** All different orders of a row, ties not told apart. */
function distinctOrders(row: readonly number[]): number[][] {
  if (row.length === 0) return [[]];
  return [...new Set(row)].flatMap((head) => {
    const rest = [...row];
    rest.splice(rest.indexOf(head), 1);
    return distinctOrders(rest).map((tail) => [head, ...tail]);
  });
}
