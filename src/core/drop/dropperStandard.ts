import type { Reading } from './drop';
import { MG_PER_G, type Celsius } from '../number/units';
import { Refusal, sentence, type Filling, type Sentence } from '../text/refusal';

/** A verdict of a pharmacopoeia: true, false, or null where its test was not done as it asks; `why` in one sentence without its full stop. */
export interface Verdict {
  readonly passes: boolean | null;
  readonly why: Sentence;
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
 * A weighing of another number of drops is not the Ph. Eur. test. @throws Refusal without weighings
 */
export function checkWaterDropper(readings: readonly Reading[], t: Celsius): DropperVerdicts {
  if (readings.length === 0) throw new Refusal('there are no water drops to judge the dropper by');
  return { phEur: phEur(readings, t), usp: usp(readings) };
}

function phEur(readings: readonly Reading[], t: Celsius): Verdict {
  if (!(t >= 19 && t <= 21))
    return { passes: null, why: sentence('Ph. Eur. tests at 20 ± 1 °C, the water has {t} °C', { t }) };
  const twenties = readings.filter(({ drops }) => drops === 20).map(({ massG }) => massG * MG_PER_G);
  if (twenties.length < 3)
    return {
      passes: null,
      why: sentence('Ph. Eur. asks for three weighings of 20 drops, there are {there}', { there: twenties.length }),
    };
  const mean = average(twenties);
  const off = twenties.find((mg) => Math.abs(mg - mean) > 0.05 * mean);
  if (off !== undefined)
    return { passes: false, why: sentence('20 drops of {mg} mg are more than 5 % off their mean', whole(off)) };
  const outside = twenties.find((mg) => Math.abs(mg - 1000) > 50 + 1e-9); // 1e-9 mg: the limits themselves pass
  if (outside !== undefined)
    return { passes: false, why: sentence('20 drops weigh {mg} mg, not 950 to 1050 mg', whole(outside)) };
  return { passes: true, why: sentence('20 drops weigh {mg} mg, within 950 to 1050 mg', whole(mean)) };
}

function usp(readings: readonly Reading[]): Verdict {
  const drops = readings.map(({ drops, massG }) => (massG * MG_PER_G) / drops);
  const outside = drops.find((drop) => drop < 45 - 1e-9 || drop > 55 + 1e-9); // mg; the limits themselves pass
  return outside === undefined
    ? {
        passes: true,
        why: sentence('drops of {mg} mg, within 45 to 55 mg (USP)', { mg: { value: average(drops), decimals: 1 } }),
      }
    : {
        passes: false,
        why: sentence('drops of {mg} mg, not 45 to 55 mg (USP)', { mg: { value: outside, decimals: 1 } }),
      };
}

function average(numbers: readonly number[]): number {
  return numbers.reduce((total, x) => total + x, 0) / numbers.length;
}

function whole(mg: number): { mg: Filling } {
  return { mg: { value: mg, decimals: 0 } };
}
