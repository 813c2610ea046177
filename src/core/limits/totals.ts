import { contributions, summed, type Contribution, type DrinkMaterial } from './exposure';
import type { Measured } from '../number/measured';

/** One substance that more than one material brings into the drink, mg per kg of drink. */
export interface SharedSubstance {
  readonly cas: string;
  readonly name: string;
  readonly total: Measured;
  /** Most first. */
  readonly from: readonly Contribution[];
}

/**
 * Substances that come from several materials, neat or as a known constituent of a natural one, added up: most first.
 * mg per kg of drink. Arithmetic; constituents are counted at their worst, as in {@link contributions}.
 */
export function sharedSubstances(materials: readonly DrinkMaterial[]): SharedSubstance[] {
  const parts = contributions(materials).filter((part) => part.mgPerKg.value > 0);
  const numbers = new Set(parts.flatMap(({ cas }) => cas));
  return [...numbers]
    .flatMap((cas): SharedSubstance[] => {
      const { total, from } = summed(parts, { cas: [cas] });
      const several = new Set(from.map(({ material }) => material)).size > 1;
      const neat = from.find(({ asSuch }) => asSuch) ?? from[0]!;
      return several ? [{ cas, name: neat.substance, total, from }] : [];
    })
    .sort((one, two) => two.total.value - one.total.value);
}

/**
 * Share of what is dosed of which nothing is known that could be judged, 0 to 1: a natural material but for its known
 * constituents, and a substance without a CAS number. 0 where nothing is dosed. Arithmetic; since constituents are counted at
 * their worst, it is the least that is unknown.
 */
export function unknownShare(dosed: readonly DrinkMaterial[]): number {
  const all = dosed.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0);
  if (all === 0) return 0;
  return dosed.reduce((sum, one) => sum + one.mgPerKg.value * unknownOf(one), 0) / all;
}

function unknownOf({ natural, cas, constituents }: DrinkMaterial): number {
  if (!natural) return cas.length > 0 ? 0 : 1;
  return Math.max(0, 1 - constituents.reduce((sum, { share }) => sum + share, 0));
}
