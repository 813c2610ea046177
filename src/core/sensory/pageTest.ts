/** Page's test: does a ranking follow an order that was expected beforehand (ISO 8587)? One row per sitting, one column per sample. */
import { demandRows } from './ranking';
import { normalTail } from '../number/tails';
import { Refusal } from '../text/refusal';

/** Outcome of Page's test: L, its exact one-sided p, and the normal approximation of p. */
export interface Page {
  readonly l: number;
  readonly exact: number;
  readonly normal: number;
}

/**
 * Page's test: do the rows follow the order of the columns (lowest expected first)? L = Σ i·R_i; exact probability by counting.
 * Normal form: L' = (12L − 3Jp(p+1)²)/(p(p+1)√(J(p−1))). Source: ISO 8587; Page, J. Am. Stat. Assoc. 58 (1963) 216.
 * @throws Refusal for fewer than 2 or more than 10 samples, no rows, or rows of different length
 */
export function page(rows: readonly (readonly number[])[]): Page {
  const [ranked, p] = demandRows(rows);
  const j = ranked.length;
  const own = (row: readonly number[]): number => row.reduce((sum, rank, i) => sum + (i + 1) * rank, 0);
  const l = ranked.reduce((sum, row) => sum + own(row), 0);
  let exact = 0;
  for (const [doubled, chance] of chancesOf(ranked)) if (doubled >= 2 * l) exact += chance;
  const z = (12 * l - 3 * j * p * (p + 1) ** 2) / (p * (p + 1) * Math.sqrt(j * (p - 1)));
  return { l, exact: Math.min(1, exact), normal: normalTail(z) };
}

/**
 * Smallest L, a whole number, that shows the order expected at a `risk` (a chance, 0 to 1), by counting every order of
 * every sitting without ties; null when none does. `sittings` and `samples` (2 to 10) are counts. Source: ISO 8587, the
 * rule of its table of critical values of L.
 * @throws Refusal when the risk is not between 0 and 1, or for samples or sittings that cannot be
 */
export function leastPageL(sittings: number, samples: number, risk: number): number | null {
  if (!(risk > 0 && risk < 1)) throw new Refusal('a risk lies between 0 and 1, not {risk}', { risk });
  const row = Array.from({ length: samples }, (_, i) => i + 1);
  const [ranked] = demandRows(Array.from({ length: sittings }, () => row));
  const falling = [...chancesOf(ranked)].sort(([a], [b]) => b - a);
  let least: number | null = null;
  let tail = 0;
  for (const [doubled, chance] of falling) {
    tail += chance;
    if (tail > risk * (1 + 1e-12)) break;
    least = doubled / 2;
  }
  return least;
}

/** Chance of each value of 2·L when every order of every row is as likely. */
function chancesOf(ranked: readonly (readonly number[])[]): Map<number, number> {
  return ranked.reduce((chances, row) => convolved(chances, orderings(row)), new Map([[0, 1]]));
}

/** Chance of each value of 2·Σ i·r_i over all orders of one row, by the set of ranks already placed. */
function orderings(row: readonly number[]): Map<number, number> {
  const p = row.length;
  const bySet: Map<number, number>[] = [new Map([[0, 1]])];
  for (let set = 1; set < 1 << p; set++) {
    const place = bits(set);
    const here = new Map<number, number>();
    for (let i = 0; i < p; i++)
      if (set & (1 << i))
        for (const [sum, chance] of bySet[set ^ (1 << i)]!) {
          const value = sum + 2 * place * row[i]!;
          here.set(value, (here.get(value) ?? 0) + chance / place);
        }
    bySet.push(here);
  }
  return bySet[(1 << p) - 1]!;
}

function bits(set: number): number {
  let count = 0;
  for (let rest = set; rest; rest &= rest - 1) count++;
  return count;
}

function convolved(a: Map<number, number>, b: Map<number, number>): Map<number, number> {
  const sum = new Map<number, number>();
  for (const [x, p] of a) for (const [y, q] of b) sum.set(x + y, (sum.get(x + y) ?? 0) + p * q);
  return sum;
}
