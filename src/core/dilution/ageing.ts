import { measured, minus, over, plus, standardUncertainty, type Measured } from '../number/measured';

/** How a vial is closed and kept: most of its solvent that may leave it in a year, g/g, and g in each opening. */
export interface Closing {
  readonly perYear: number;
  readonly perOpeningG: number;
}

/**
 * Most of a vial's liquid that may have evaporated, g/g: by the closing and the years, and by each opening; never more than one half.
 * Arithmetic; the rates come from the table of closings.
 */
export function mostLost(vial: { closing: Closing; years: number; openings: number; massG: number }): number {
  const { closing, years, openings, massG } = vial;
  const opened = massG > 0 ? (openings * closing.perOpeningG) / massG : 0;
  return Math.min(0.5, Math.max(0, closing.perYear * years + opened));
}

/**
 * A strength (g/g) of what does not evaporate, when up to `most` (g/g) of the liquid may have: the value stays, and the loss, which only ever
 * makes it stronger, is one source `age:<id>` with u = most/√3, the root mean square of 0 to most. Where a one-sided effect is not corrected
 * its uncertainty takes it in. Source: GUM F.2.4.5, 4.3.7.
 */
export function aged(strength: Measured, most: number, id: string): Measured {
  const words = 'solvent that may have evaporated since: only ever stronger';
  return plus(strength, measured(0, (most / Math.sqrt(3)) * strength.value, { id: `age:${id}`, words }));
}

/**
 * By how much a vial got stronger when all that is missing of it evaporated: g that should be there over g that are. Arithmetic: the mass of the
 * material is conserved. Null where less is missing than the weighing tells (k = 2). Check: 10.0 g of 1.000 %, now 9.3 g: 1.0753 times, 1.075 %.
 */
export function strongerBy(expected: Measured, found: Measured): Measured | null {
  const missing = minus(expected, found);
  if (!(found.value > 0) || missing.value <= 2 * standardUncertainty(missing)) return null;
  return over(expected, found);
}
