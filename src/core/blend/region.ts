/**
 * Which blends may be made: the shares of two to four parts, each from 0 to 1, that add to 1, within bounds.
 */
import { Refusal } from '../text/refusal';

/** Shares of the parts of a blend, fractions that add to 1. */
export type Shares = readonly number[];

/** The least and the most share of each part, fractions. */
export type Bounds = readonly { readonly least: number; readonly most: number }[];

/** Shares nearer than this are the same: far above rounding, far below any drop. */
const SAME = 1e-9;

/** No bounds: every share from 0 to 1. `parts` is a count. By definition. */
export function free(parts: number): Bounds {
  return Array.from({ length: parts }, () => ({ least: 0, most: 1 }));
}

/**
 * The bounds as they can really be reached: nothing is more than what the least shares of the others leave, or less than
 * what their largest leave; fractions. Source: Piepel, Technometrics 25 (1983) 97 (implied bounds).
 * @throws Refusal for fewer than 2 or more than 4 parts, bounds outside of 0 to 1, or bounds that no blend keeps
 */
export function reachable(bounds: Bounds): Bounds {
  const parts = bounds.length;
  if (!(parts >= 2 && parts <= 4)) throw new Refusal('2 to 4 vials can be blended here, not {parts}', { parts });
  if (!bounds.every(({ least, most }) => least >= 0 && most <= 1 && least <= most))
    throw new Refusal('a share lies between 0 and 100 %, its least below its most');
  const sum = (of: 'least' | 'most') => bounds.reduce((total, one) => total + one[of], 0);
  if (sum('least') > 1 + SAME) throw new Refusal('the least shares add up to more than the whole blend');
  if (sum('most') < 1 - SAME) throw new Refusal('the largest shares add up to less than the whole blend');
  return bounds.map(({ least, most }) => ({
    least: Math.max(least, 1 - (sum('most') - most)),
    most: Math.min(most, 1 - (sum('least') - least)),
  }));
}

/** Whether a blend keeps the bounds (fractions). By definition. */
export function keeps(shares: Shares, bounds: Bounds): boolean {
  return shares.every((one, i) => one >= bounds[i]!.least - SAME && one <= bounds[i]!.most + SAME);
}

/** Whether two blends are the same, to the rounding of their shares (fractions). By definition. */
export function same(one: Shares, other: Shares): boolean {
  return one.every((share, i) => Math.abs(share - other[i]!) < SAME);
}

/** Every blend once, in the order in which it first comes; shares are fractions. By definition. */
export function distinct(blends: readonly Shares[]): Shares[] {
  return blends.filter((blend, i) => blends.findIndex((other) => same(blend, other)) === i);
}

/**
 * All blends whose shares are whole multiples of 1/`steps` (a count) and keep the bounds; fractions.
 * Source: the simplex lattice, Scheffé, J. R. Stat. Soc. B 20 (1958) 344.
 */
export function lattice(bounds: Bounds, steps: number): Shares[] {
  const filled = (counts: readonly number[], left: number): Shares[] =>
    counts.length === bounds.length - 1
      ? [[...counts, left].map((count) => count / steps)]
      : Array.from({ length: left + 1 }, (_, count) => filled([...counts, left - count], count)).flat();
  return filled([], steps).filter((shares) => keeps(shares, bounds));
}

/**
 * The corners of the region: blends in which all shares but one are at a bound; fractions.
 * Source: McLean & Anderson, Technometrics 8 (1966) 447 (extreme vertices).
 * @throws Refusal for bounds that no blend keeps
 */
export function corners(given: Bounds): Shares[] {
  const bounds = reachable(given);
  const found: number[][] = [];
  for (let open = 0; open < bounds.length; open++)
    for (let ends = 0; ends < 2 ** bounds.length; ends++) {
      const shares = bounds.map(({ least, most }, i) => (i === open ? 0 : ends & (1 << i) ? most : least));
      shares[open] = 1 - shares.reduce((sum, one) => sum + one, 0);
      found.push(shares.map((share) => (Math.abs(share) < SAME ? 0 : share)));
    }
  return distinct(found.filter((shares) => keeps(shares, bounds)));
}

/**
 * Whether an edge of the region runs between two corners: they have all bounds but two in common (fractions).
 * Source: as {@link corners}.
 */
export function joined(one: Shares, other: Shares, bounds: Bounds): boolean {
  const shared = bounds.filter(
    ({ least, most }, i) =>
      Math.abs(one[i]! - other[i]!) < SAME && [least, most].some((bound) => Math.abs(one[i]! - bound) < SAME),
  );
  return shared.length >= bounds.length - 2;
}
