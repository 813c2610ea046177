import { expanded, measured, plus, propagate, scaled, type Measured } from '../number/measured';
import { studentFactor95 } from '../number/student';
import { MG_PER_G, type Celsius, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** One weighing: that many drops, counted, weighed this much net of the tare, in grams. */
export interface Reading {
  readonly drops: number;
  readonly massG: number;
}

/** A scale, by the smallest step it shows, in grams. */
export interface Scale {
  readonly readabilityG: number;
}

/** What weighed drops say about one dropper with one liquid. */
export interface DropCalibration {
  /** mg per drop: total mass over total drops; sources `<id>:repeatability` and `<id>:readability`. */
  readonly mgPerDrop: Measured;
  /** Standard deviation of ONE drop over the mean drop, dimensionless. */
  readonly perDropSpread: number;
  /** Standard deviation of the readings' mg per drop; null for a single reading. */
  readonly sMg: number | null;
  readonly n: number;
  /** Drops of all readings together. */
  readonly drops: number;
  /** 95 % half-width in mg: Student's t on the scatter, k = 2 on the readability. */
  readonly expandedMg: number;
  /** False for a single reading: its scatter is then taken from typical droppers, and the screen should say so. */
  readonly scatterSeen: boolean;
}

/**
 * Typical standard deviation of one drop over the mean drop: 5.5 % (4–6 % is usual).
 * Source: 19 eye-drop bottles of 33.8–63.4 µL had a mean repeatability coefficient of 5.07 µL (German et al.), which
 * is 3.8 % or 5.3 % of a drop as the coefficient is read (2.77 s or 1.96 s); rounded up, our choice. Not confirmed
 * for glass droppers.
 */
export const TYPICAL_DROP_SPREAD = 0.055;

/**
 * How far one weighing may lie from the mean of several with a good dropper: 5 %.
 * Source: Ph. Eur. 2.1.1 (read in the Czech Pharmacopoeia 1997).
 */
const WEIGHING_TOLERANCE = 0.05;

/** So many readings is the typical drop spread worth when pooled with measured ones; our choice. */
export const TYPICAL_WORTH = 4;

/** Standard uncertainty of a net mass from readability d: two readings, d/√6. Source: GUM F.2.2.1, half-width d/2 each. */
const NET_READABILITY = 1 / Math.sqrt(6);

/**
 * mg per drop from one or more weighings of counted drops (drops whole, mass in g net, readability in g).
 *
 * The mean is total mass over total drops. Its repeatability is s/√n, widened by t(0.975; n − 1)/2 so that k = 2
 * keeps 95 % with few readings too (GUM G.3; the widening of u itself is our choice). With one reading no scatter is
 * seen: it is then taken from the typical drop spread and the 5 % that Ph. Eur. allows a weighing. Readability
 * (d/√6 per net mass) is common to all readings and does not average out (GUM F.2.2.1): only more drops help.
 *
 * @throws Refusal without readings, or with drops that are not whole, or a mass or readability not above zero
 */
export function calibrateDrops(
  readings: readonly Reading[],
  scale: Scale,
  source: { id: string; words: string },
): DropCalibration {
  for (const reading of readings) checkReading(reading);
  if (readings.length === 0) throw new Refusal('a calibration needs at least one weighing');
  if (!(scale.readabilityG > 0))
    throw new Refusal('the readability of a scale is more than zero, not {readabilityG} g', {
      readabilityG: scale.readabilityG,
    });
  const n = readings.length;
  const drops = sum(readings.map((reading) => reading.drops));
  const mean = (MG_PER_G * sum(readings.map((reading) => reading.massG))) / drops;
  const readability = (NET_READABILITY * scale.readabilityG * MG_PER_G * n) / drops; // mg per drop
  const oneDrop = n === 1 ? null : oneDropDeviation(readings, mean);
  const repeatability =
    oneDrop === null
      ? mean * Math.hypot(TYPICAL_DROP_SPREAD / Math.sqrt(drops), WEIGHING_TOLERANCE / Math.sqrt(3))
      : ((studentFactor95(n) / 2) * oneDrop) / Math.sqrt(drops);
  const mgPerDrop = plus(
    measured(mean, repeatability, { id: `${source.id}:repeatability`, words: `${source.words}: scatter of weighings` }),
    measured(0, readability, { id: `${source.id}:readability`, words: `${source.words}: readability of the scale` }),
  );
  return {
    mgPerDrop,
    perDropSpread: pooledSpread(n, oneDrop, { mean, noise: readability * Math.sqrt(drops / n) }),
    sMg: oneDrop === null ? null : oneDrop / Math.sqrt(drops / n),
    n,
    drops,
    expandedMg: expanded(mgPerDrop),
    scatterSeen: oneDrop !== null,
  };
}

/**
 * Mass in grams of counted drops. The calibration's sources go along under their own ids, so drops of one dropper
 * are right or wrong together; the scatter of the drops themselves, √n · spread, is a source of its own, `counting:<id>`.
 * `mgPerDrop` in mg, `perDropSpread` as standard deviation of one drop over the mean drop, `drops` whole.
 * Source: GUM 5.1.2; independent drops.
 * @throws Refusal when drops are not whole or below zero, or the spread is negative
 */
export function massOfDrops(counted: {
  drops: number;
  mgPerDrop: Measured;
  perDropSpread: number;
  id: string;
  words: string;
}): Measured {
  const { drops, mgPerDrop, perDropSpread } = counted;
  if (!(Number.isInteger(drops) && drops >= 0)) throw new Refusal('drops are whole, not {drops}', { drops });
  const counting = (Math.sqrt(drops) * perDropSpread * Math.abs(mgPerDrop.value)) / MG_PER_G; // g
  return plus(
    scaled(mgPerDrop, drops / MG_PER_G),
    measured(0, counting, { id: `counting:${counted.id}`, words: counted.words }),
  );
}

/** Up to this mass fraction a dilution in the same solvent drops as its solvent does: about 1 %, whatever its basis. */
export const SHARED_CALIBRATION_LIMIT = 0.015; // g/g: 1 % w/v in ethanol is 1.24 % w/w

/**
 * mg per drop of a dilution, from a calibration of the same dropper with the same solvent, or with another dilution in it; `apart` is how
 * far their strengths (g/g) are apart.
 * At most 1 % of another liquid shifts surface tension and density, and so the drop, by about 0.3 %, and by 0.6 % in the
 * worst case looked at, benzaldehyde in ethanol (linear mixing of surface tensions, our own estimate): added as a source
 * `dilute:<id>` of its own with u = 0.3 %, more in proportion above 1 %, without a step: 3 % at 10 %, 15 % at one half. Not for water as the
 * solvent: traces of aroma lower its surface tension at once.
 * @throws Refusal outside 0 to 1
 */
export function dropOfDilution(mgPerDrop: Measured, apart: MassFraction, id: string): Measured {
  if (!(apart >= 0 && apart <= 1))
    throw new Refusal('a strength is from 0 to 100 % w/w, not {strength}', { strength: apart * 100 });
  if (apart === 0) return mgPerDrop;
  const shift = 0.003 * Math.max(1, apart / 0.01) * mgPerDrop.value; // mg
  const source = { id: `dilute:${id}`, words: 'drop of a dilution compared with a drop of its solvent' };
  return propagate(mgPerDrop.value, [
    [mgPerDrop, 1],
    [measured(0, shift, source), 1],
  ]);
}

/**
 * Relative standard uncertainty of a drop on another day, in another hand: rate, angle, fill height and what clings to the tip. 2.8 %: as much
 * as Ph. Eur. 2.1.1 allows between weighings of one session (5 %) as a rectangle (GUM 4.3.7); our choice.
 */
const OTHER_DAY = 0.028;

/** mg per drop as it is counted with on another day: one source `day:<dropper>`, shared by all drops of that dropper. GUM 5.2.2. */
export function onAnotherDay(mgPerDrop: Measured, dropper: string): Measured {
  const source = { id: `day:${dropper}`, words: 'another day, another hand: rate and angle of the drops' };
  return plus(mgPerDrop, measured(0, OTHER_DAY * mgPerDrop.value, source));
}

/**
 * mg per drop at `t` from one weighed at `weighedAt` (°C): a warm drop is lighter by `perK` (1/K), which has its own uncertainty and is
 * good for some 15 K. Source: surface tension falls in proportion; the power 1.068 of Yildirim et al. 2005. Arithmetic.
 */
export function dropAt(
  mgPerDrop: Measured,
  perK: Measured,
  { weighedAt, t }: { weighedAt: Celsius; t: Celsius },
): Measured {
  const warmer = t - weighedAt;
  const factor = 1 - perK.value * warmer;
  return propagate(mgPerDrop.value * factor, [
    [mgPerDrop, factor],
    [perK, -mgPerDrop.value * warmer],
  ]);
}

/**
 * Standard deviation of one drop, mg, from readings of any number of drops each: √(Σ Nᵢ(xᵢ − x̄)² / (n − 1)), where a
 * reading of N drops scatters as 1/√N. With equal N it is s·√N. Needs two readings or more. Source: GUM 4.2.2, weighted.
 */
export function oneDropDeviation(readings: readonly Reading[], meanMg: number): number {
  const squares = readings.map(({ drops, massG }) => drops * ((MG_PER_G * massG) / drops - meanMg) ** 2);
  return Math.sqrt(sum(squares) / (readings.length - 1));
}

/** The seen spread, less what the scale's step explains, pooled with the typical one (GUM 4.2.4); dimensionless. */
function pooledSpread(n: number, oneDrop: number | null, { mean, noise }: { mean: number; noise: number }): number {
  if (oneDrop === null) return TYPICAL_DROP_SPREAD;
  const seen = Math.max(0, oneDrop ** 2 - noise ** 2) / mean ** 2;
  return Math.sqrt((TYPICAL_WORTH * TYPICAL_DROP_SPREAD ** 2 + (n - 1) * seen) / (TYPICAL_WORTH + n - 1));
}

function checkReading({ drops, massG }: Reading): void {
  if (!(Number.isInteger(drops) && drops > 0))
    throw new Refusal('drops are whole, and at least one, not {drops}', { drops });
  if (!(massG > 0 && Number.isFinite(massG)))
    throw new Refusal('the drops must weigh more than nothing, not {massG} g', { massG });
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, x) => total + x, 0);
}
