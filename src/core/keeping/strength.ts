/** What keeps by itself: sugar and alcohol. */
import { Refusal } from '../text/refusal';

/** Delle units from which on yeast is said to stop. Source: as {@link delleUnits}. */
export const DELLE = 78;

/**
 * Delle units (dimensionless): g of sugar in 100 mL plus 4.5 times % ABV; 78 and more keep yeast from growing. Source: the
 * winemakers’ rule, published worked example 5.9 g/100 mL and 19.28 % vol: 92.66. For sweet wine; acid and hygiene not counted.
 * @throws Refusal below zero
 */
export function delleUnits(sugarPer100Ml: number, abv: number): number {
  if (!(sugarPer100Ml >= 0 && abv >= 0)) throw new Refusal('sugar and alcohol are zero or more');
  return sugarPer100Ml + 4.5 * abv;
}

/** Norrish’s constant of sucrose, natural logarithm. */
const NORRISH = 6.47;
/** g/mol of water and of sucrose. */
const [WATER, SUCROSE] = [18.015, 342.297];
/** °Brix of a saturated solution at 20 °C. */
const SATURATED = 67.1;

/**
 * Water activity (0 to 1, dimensionless) of sucrose in water, 25 °C: x_w exp(−6.47 x_s²), x mole fractions.
 * Source: Norrish 1966, as assessed by Baeza 2010 (doi 10.1007/s11947-007-0052-8). Check: 0.8953 at 60 °Brix, 0.8498 at 67.1.
 * Sucrose alone: invert sugar lowers it more, alcohol is not counted. @throws Refusal outside 0–67.1 °Brix
 */
export function waterActivity(brix: number): number {
  if (!(brix >= 0 && brix <= SATURATED))
    throw new Refusal('water activity is known for 0–67.1 °Brix, not for {brix} °Brix', { brix });
  const [water, sugar] = [(100 - brix) / WATER, brix / SUCROSE];
  const share = sugar / (water + sugar);
  return (1 - share) * Math.exp(-NORRISH * share ** 2);
}
