import {
  oneDropDeviation,
  TYPICAL_DROP_SPREAD,
  TYPICAL_WORTH,
  type DropCalibration,
  type Reading,
  type Scale,
} from './drop';
import { studentFactor95, studentQuantile } from '../number/student';
import { MG_PER_G } from '../number/units';
import { Refusal } from '../text/refusal';

/** What to weigh: `readings` weighings of `drops` drops each, and the ± over the mean that follows (95 %). */
export interface WeighingPlan {
  readonly readings: number;
  readonly drops: number;
  readonly relative: number;
}

/** Is the calibration good enough, and if not, what is missing. */
export interface ReadingsAdvice {
  readonly enough: boolean;
  /** ± over the mean as it stands, 95 %. */
  readonly relative: number;
  /** More weighings of as many drops each that would do; 0 when enough, null when the scale's step stands in the way. */
  readonly moreReadings: number | null;
  /** Fewest drops per weighing at which the step of the scale leaves room for the wanted ±. */
  readonly dropsPerReading: number;
}

/** A reading far from its fellows. Nothing is left out: the person decides. */
export interface Outlier {
  readonly index: number;
  /** Its drop over that of the others: 1.97 is almost double. */
  readonly ratio: number;
  /** Distance from the others in standard deviations, and the bound that 95 % of clean sets stay below. */
  readonly distance: number;
  readonly critical: number;
}

const MOST_READINGS = 30; // our choice: no one weighs more
const MOST_DROPS = 400; // our choice: about 20 mL of water

/**
 * Smallest effort (total drops, then weighings) that brings mg per drop within `wanted` (± over the mean, 95 %), with
 * this scale (step in g), an expected drop (mg) and the standard deviation of one drop over the mean; null when none does.
 * ±² = (t s/√(n N))² + (2 d/√6/(N m))². Drops per weighing in fives from 5, weighings from 3 (a mean with its scatter).
 * Source: GUM 4.2.3, G.3, F.2.2.1; see calibrateDrops. @throws Refusal unless all are above zero
 */
export function planReadings(aim: {
  mgPerDrop: number;
  perDropSpread: number;
  scale: Scale;
  wanted: number;
}): WeighingPlan | null {
  checkPositive([aim.mgPerDrop, aim.perDropSpread, aim.scale.readabilityG, aim.wanted]);
  let best: WeighingPlan | null = null;
  for (let readings = 3; readings <= MOST_READINGS; readings++)
    for (let drops = 5; drops <= MOST_DROPS; drops += 5) {
      if (best && readings * drops >= best.readings * best.drops) break;
      const relative = expectedRelative(aim, readings, drops);
      if (relative <= aim.wanted) best = { readings, drops, relative };
    }
  return best;
}

/**
 * Whether more weighings are worth it: the ± reached against the `wanted` one (± over the mean, 95 %), and what would
 * reach it with this scale (step in g). A single weighing is never enough: its scatter is not seen.
 * Source: as {@link planReadings}, with the spread seen so far. @throws Refusal unless wanted and step are above zero
 */
export function readingsStillWorth(
  calibration: Pick<DropCalibration, 'mgPerDrop' | 'perDropSpread' | 'n' | 'drops' | 'expandedMg'>,
  scale: Scale,
  wanted: number,
): ReadingsAdvice {
  checkPositive([scale.readabilityG, wanted]);
  const { n, perDropSpread } = calibration;
  const mgPerDrop = calibration.mgPerDrop.value;
  const relative = calibration.expandedMg / mgPerDrop;
  const stepAlone = (2 * scale.readabilityG * MG_PER_G) / (Math.sqrt(6) * mgPerDrop); // over the mean, for one drop
  const dropsPerReading = Math.floor(stepAlone / wanted) + 1;
  const enough = n > 1 && relative <= wanted;
  return { enough, relative, moreReadings: enough ? 0 : missing(), dropsPerReading };

  function missing(): number | null {
    const drops = calibration.drops / n;
    for (let total = Math.max(3, n + 1); total <= MOST_READINGS; total++)
      if (expectedRelative({ mgPerDrop, perDropSpread, scale }, total, drops) <= wanted) return total - n;
    return null;
  }
}

/**
 * Readings too far from the others (mg per drop, each weighed by its drops); a warning only. Needs three readings; fewer give none.
 *
 * Each is compared with the mean of the others (the deleted residual), in standard deviations of what can be expected: the scatter of
 * the others, pooled with that of typical droppers (so that two readings that agree by chance accuse no third), and the step of the scale
 * (g; d/√6 for each net mass). Bound: Student's t at 5 % for all n together (Bonferroni).
 * Source: Cook & Weisberg, Residuals and Influence in Regression (1982) 2.2.2, from memory; pooling GUM 4.2.4; step GUM F.2.2.1.
 * Check: 0.34, 0.35, 0.62 g of 20 drops accuses the third and 0.34, 0.35, 0.34 g none, on a scale of 0.01 g.
 * @throws Refusal unless the step is above zero
 */
export function outliers(readings: readonly Reading[], scale: Scale): Outlier[] {
  checkPositive([scale.readabilityG]);
  const n = readings.length;
  if (n < 3) return [];
  const critical = studentQuantile(1 - 0.05 / (2 * n), freedomWithout(n));
  return readings
    .map((reading, index) => ({ index, critical, ...fromOthers(reading, readings.toSpliced(index, 1), scale) }))
    .filter(({ distance }) => distance > critical);
}

/** Degrees of freedom of the scatter of n − 1 readings, with that of typical droppers. */
function freedomWithout(n: number): number {
  return TYPICAL_WORTH + n - 2;
}

function fromOthers({ drops, massG }: Reading, others: readonly Reading[], scale: Scale) {
  const allDrops = sum(others.map((one) => one.drops));
  const mean = (MG_PER_G * sum(others.map((one) => one.massG))) / allDrops;
  const [mine, freedom] = [(MG_PER_G * massG) / drops, others.length - 1];
  const seen = oneDropDeviation(others, mean) ** 2;
  const typical = (TYPICAL_DROP_SPREAD * mean) ** 2;
  const oneDrop = (TYPICAL_WORTH * typical + freedom * seen) / (TYPICAL_WORTH + freedom); // variance, mg²
  const step = (scale.readabilityG * MG_PER_G) ** 2 / 6; // variance of one net mass, mg²
  const variance = oneDrop / drops + step / drops ** 2 + oneDrop / allDrops + (others.length * step) / allDrops ** 2;
  return { ratio: mine / mean, distance: Math.abs(mine - mean) / Math.sqrt(variance) };
}

/** ± over the mean (95 %) that n readings of N drops will have. */
function expectedRelative(
  aim: { mgPerDrop: number; perDropSpread: number; scale: Scale },
  readings: number,
  drops: number,
): number {
  const scatter = (studentFactor95(readings) * aim.perDropSpread) / Math.sqrt(readings * drops);
  const step = (2 * aim.scale.readabilityG * MG_PER_G) / (Math.sqrt(6) * drops * aim.mgPerDrop);
  return Math.hypot(scatter, step);
}

function checkPositive(numbers: readonly number[]): void {
  for (const x of numbers)
    if (!(x > 0)) throw new Refusal('drop, spread, readability and target ± are above zero, not {x}', { x });
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, x) => total + x, 0);
}
