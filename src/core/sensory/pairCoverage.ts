import { Refusal } from '../text/refusal';

/**
 * Which vials were smelled together: pairs done, pairs left, and how many combinations there are in all.
 * Vials are named by their ids; a layering is the list of its vials, in any order. Counting: arithmetic.
 */

/** What one set of layerings has covered of a session's pairs. `times[i][j]` is how often vials i and j met. */
export interface PairCoverage {
  readonly vials: readonly string[];
  readonly times: readonly (readonly number[])[];
  readonly done: number;
  readonly total: number;
  readonly left: readonly (readonly [string, string])[];
}

/**
 * Counts the pairs of `vials` that met in `layerings`. Vials of a layering that are not in `vials` are passed over, so
 * yesterday's layerings count for today's choice. Pairs left come in the order of `vials`.
 * @throws Refusal when a vial stands twice in `vials`
 */
export function pairCoverage(vials: readonly string[], layerings: readonly (readonly string[])[]): PairCoverage {
  const place = new Map(vials.map((vial, i) => [vial, i]));
  if (place.size !== vials.length) throw new Refusal('a vial can be picked only once');
  const times = vials.map(() => new Array<number>(vials.length).fill(0));
  for (const layering of layerings) {
    const there = [...new Set(layering)].flatMap((vial) => place.get(vial) ?? []);
    for (const i of there) for (const j of there) if (i !== j) times[i]![j]!++;
  }
  const left: [string, string][] = [];
  for (let i = 0; i < vials.length; i++)
    for (let j = i + 1; j < vials.length; j++) if (times[i]![j] === 0) left.push([vials[i]!, vials[j]!]);
  const total = combinations(vials.length, 2);
  return { vials, times, done: total - left.length, total, left };
}

/**
 * How many different layerings of `size` vials can be made from `vials` of them: the binomial coefficient, exact up to
 * 2^53 and correctly rounded near it. Whole numbers, 0 or more; 0 when size exceeds vials.
 * @throws Refusal for numbers that are no counts
 */
export function combinations(vials: number, size: number): number {
  for (const n of [vials, size])
    if (!(Number.isInteger(n) && n >= 0)) throw new Refusal('a count is a whole number of 0 or more, not {n}', { n });
  if (size > vials) return 0;
  let product = 1n;
  for (let i = 1; i <= Math.min(size, vials - size); i++) product = (product * BigInt(vials - i + 1)) / BigInt(i);
  return Number(product);
}
