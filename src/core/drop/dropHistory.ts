import { measured, plus, propagate, standardUncertainty, type Measured } from '../number/measured';
import { chiSquaredTail } from '../number/tails';
import { Refusal } from '../text/refusal';

/** Several calibrations of one dropper with one liquid, as one. */
export interface CombinedCalibration {
  /** mg per drop, weighted by 1/u²; widened by a source `drift:<id>` when the calibrations disagree. */
  readonly mgPerDrop: Measured;
  /** Birge ratio √(χ²/(n − 1)): 1 is what the ± allow; above it they disagree. Null for a single calibration. */
  readonly birge: number | null;
  /** Probability of disagreeing so much by chance; null for a single calibration. */
  readonly chance: number | null;
  /** True when chance is below 5 %. */
  readonly drifted: boolean;
  /** Latest against the mean of all before it, over that mean; null for a single calibration. */
  readonly change: number | null;
}

/**
 * One drop mass (mg) from calibrations of the same dropper and liquid, oldest first. They are weighted by 1/u², and
 * tested for agreement by χ² on n − 1; where they disagree (chance below 5 %), the uncertainty is widened by the Birge ratio
 * and `drifted` says so: the latest is then the one to trust, or a new one.
 * Source: Birge, Phys. Rev. 40 (1932) 207; GUM 5.1.2. Sources shared between the calibrations add up as they should.
 * @throws Refusal without calibrations, or for one without uncertainty
 */
export function combineCalibrations(oldestFirst: readonly Measured[], id: string): CombinedCalibration {
  const last = oldestFirst.at(-1);
  if (!last) throw new Refusal('there is no calibration to combine');
  for (const each of oldestFirst)
    if (standardUncertainty(each) === 0) throw new Refusal('a calibration without ± cannot be weighed against others');
  const mean = weightedMean(oldestFirst);
  if (oldestFirst.length === 1) return { mgPerDrop: mean, birge: null, chance: null, drifted: false, change: null };
  const degrees = oldestFirst.length - 1;
  const chi2 = oldestFirst.reduce((sum, x) => sum + ((x.value - mean.value) / standardUncertainty(x)) ** 2, 0);
  const birge = Math.sqrt(chi2 / degrees);
  const chance = chiSquaredTail(chi2, degrees);
  const drifted = chance < 0.05;
  const extra = drifted ? standardUncertainty(mean) * Math.sqrt(birge ** 2 - 1) : 0; // mg
  const before = weightedMean(oldestFirst.slice(0, -1)).value;
  return {
    mgPerDrop: plus(mean, measured(0, extra, { id: `drift:${id}`, words: 'calibrations that disagree over time' })),
    birge,
    chance,
    drifted,
    change: last.value / before - 1,
  };
}

function weightedMean(calibrations: readonly Measured[]): Measured {
  const weights = calibrations.map((x) => 1 / standardUncertainty(x) ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const value = calibrations.reduce((sum, x, i) => sum + (x.value * weights[i]!) / total, 0);
  return propagate(
    value,
    calibrations.map((x, i) => [x, weights[i]! / total]),
  );
}
