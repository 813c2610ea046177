import type { Reading } from './drop';
import { MG_PER_G, type Celsius } from '../number/units';

/** A verdict of a pharmacopoeia: true, false, or null where its test was not done as it asks; `why` in one sentence. */
export interface Verdict {
  readonly passes: boolean | null;
  readonly why: string;
}

/** Does the dropper meet the pharmacopoeias? Failing is no fault: a calibrated dropper of any size serves. */
export interface DropperVerdicts {
  readonly phEur: Verdict;
  readonly usp: Verdict;
}

/**
 * Weighings of water drops (drops counted, mass in g) against the droppers of the pharmacopoeias.
 * Ph. Eur. 2.1.1 (read in the Czech Pharmacopoeia 1997): 20 drops at 20 ± 1 °C, upright, 1 drop/s, weigh 1000 ± 50 mg;
 * three weighings, none more than 5 % off their mean. USP 32 <1101>: water drops of 45 to 55 mg each.
 * A weighing of another number of drops is not the Ph. Eur. test. @throws RangeError without weighings
 */
export function checkWaterDropper(readings: readonly Reading[], t: Celsius): DropperVerdicts {
  if (readings.length === 0) throw new RangeError('there are no water drops to judge the dropper by');
  return { phEur: phEur(readings, t), usp: usp(readings) };
}

function phEur(readings: readonly Reading[], t: Celsius): Verdict {
  if (!(t >= 19 && t <= 21)) return { passes: null, why: `Ph. Eur. tests at 20 ± 1 °C, the water has ${t} °C` };
  const twenties = readings.filter(({ drops }) => drops === 20).map(({ massG }) => massG * MG_PER_G);
  if (twenties.length < 3)
    return { passes: null, why: `Ph. Eur. asks for three weighings of 20 drops, there are ${twenties.length}` };
  const mean = average(twenties);
  const off = twenties.find((mg) => Math.abs(mg - mean) > 0.05 * mean);
  if (off !== undefined) return { passes: false, why: `20 drops of ${mg(off)} mg are more than 5 % off their mean` };
  const outside = twenties.find((mg) => Math.abs(mg - 1000) > 50 + 1e-9); // 1e-9 mg: the limits themselves pass
  if (outside !== undefined) return { passes: false, why: `20 drops weigh ${mg(outside)} mg, not 950 to 1050 mg` };
  return { passes: true, why: `20 drops weigh ${mg(mean)} mg, within 950 to 1050 mg` };
}

function usp(readings: readonly Reading[]): Verdict {
  const drops = readings.map(({ drops, massG }) => (massG * MG_PER_G) / drops);
  const outside = drops.find((drop) => drop < 45 - 1e-9 || drop > 55 + 1e-9); // mg; the limits themselves pass
  return outside === undefined
    ? { passes: true, why: `drops of ${average(drops).toFixed(1)} mg, within 45 to 55 mg (USP)` }
    : { passes: false, why: `drops of ${outside.toFixed(1)} mg, not 45 to 55 mg (USP)` };
}

function average(numbers: readonly number[]): number {
  return numbers.reduce((total, x) => total + x, 0) / numbers.length;
}

function mg(x: number): string {
  return x.toFixed(0);
}
