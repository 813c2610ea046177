import { Refusal } from '../text/refusal';

/**
 * Will it dissolve? Measured water solubility first, log-linear cosolvency on top of it. All of it is good to an order of
 * magnitude, so the answer is a range and, in between, "try it".
 */

/** How a water solubility is known. */
export type Basis = 'measured' | 'rule of thumb';

/** A water solubility, mg/L, with the range it may lie in. */
export interface WaterSolubility {
  readonly mgPerL: number;
  readonly low: number;
  readonly high: number;
  readonly basis: Basis;
}

/** A cosolvent in the mixture: share of the volume before mixing, solute left out (0 to 1), and its σ line with spread. */
export interface CosolventShare {
  readonly fraction: number;
  readonly slope: number;
  readonly intercept: number;
  readonly sd: number;
}

/** Least factor a measured value is doubted by: two entries of one compound differ up to threefold (limonene 6.1, 19.4). */
const MEASURED_FACTOR = 2;
/** The model errs by a factor of two to three beside the spread of σ (Rubino 1984; Handbook of Solvents 14.21.2). */
const MODEL_FACTOR = 3;

/**
 * A measured water solubility, mg/L; `sd` is the spread of log10 S between sources. Range: our choice.
 * @throws Refusal at 0 or below
 */
export function measuredSolubility(mgPerL: number, sd: number): WaterSolubility {
  const factor = Math.max(MEASURED_FACTOR, 10 ** (2 * sd));
  return { mgPerL: positive(mgPerL), low: mgPerL / factor, high: mgPerL * factor, basis: 'measured' };
}

/**
 * A solubility known only as a range of its kind (terpene hydrocarbons 5–30 mg/L); our choice of middle: the geometric one.
 * @throws Refusal at 0 or below
 */
export function solubilityOfKind(range: { low: number; high: number }): WaterSolubility {
  return { mgPerL: Math.sqrt(positive(range.low) * positive(range.high)), ...range, basis: 'rule of thumb' };
}

/**
 * Solubilising power σ of a cosolvent for a solute: slope · log Kow + intercept, dimensionless.
 * Source: as {@link solubilityIn}. Check: limonene in ethanol 4.672.
 */
export function solubilisingPower(line: { slope: number; intercept: number }, logKow: number): number {
  return line.slope * logKow + line.intercept;
}

/**
 * Solubility in water with cosolvents: log10 S = log10 Sw + Σ σ f. Source: Rubino, Blanchard and Yalkowsky 1984.
 * Weakest at 70–90 % of cosolvent, and often too hopeful below 20 %; the range is widened by the model's factor of three and by two
 * spreads of σ. Check: limonene 10.4 mg/L at 5 % ethanol, 451 at 40 %; at 0.1 % the gain is 1 %.
 * @throws Refusal when shares are negative or add to more than the whole
 */
export function solubilityIn(
  water: WaterSolubility,
  logKow: number,
  cosolvents: readonly CosolventShare[],
): WaterSolubility {
  const whole = cosolvents.reduce((sum, { fraction }) => sum + fraction, 0);
  if (cosolvents.some(({ fraction }) => !(fraction >= 0)) || whole > 1)
    throw new Refusal('cosolvents are 0 to 100 % of the volume together');
  if (whole === 0) return water;
  const gain = 10 ** cosolvents.reduce((sum, one) => sum + solubilisingPower(one, logKow) * one.fraction, 0);
  const spread = 10 ** (2 * cosolvents.reduce((sum, one) => sum + one.sd * one.fraction, 0));
  const factor = spread * MODEL_FACTOR ** Math.min(1, whole / LITTLE);
  return {
    mgPerL: water.mgPerL * gain,
    low: (water.low * gain) / factor,
    high: water.high * gain * factor,
    basis: water.basis,
  };
}

/** From this share of cosolvent on, the model's whole factor of uncertainty counts; below it in proportion of the logarithm. Our choice. */
const LITTLE = 0.1;

/** What a range of solubility says about an amount. */
export type Verdict = 'dissolves' | 'try it' | 'stays cloudy';

function positive(x: number): number {
  if (!(x > 0)) throw new Refusal('a solubility or molar mass is more than zero, not {x}', { x });
  return x;
}
