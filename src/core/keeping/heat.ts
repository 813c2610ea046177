/** What heat does to what lives in a drink, counted in minutes at a temperature of reference. It counts heat, not what is killed by it. */
import { Refusal } from '../text/refusal';

/** A moment of the heating: minutes from its beginning, and °C in the middle of the bottle. */
export interface Moment {
  readonly minutes: number;
  readonly atC: number;
}

/** A unit of heat: °C at which a minute is one unit, and by how many °C more it works ten times as fast. */
export interface HeatUnit {
  readonly atC: number;
  readonly z: number;
}

/** 1 / log₁₀ 1.393: the z of the unit of breweries, °C. Source: PU = t · 1.393^(T − 60), as it is published. */
export const BREWERS: HeatUnit = { atC: 60, z: 1 / Math.log10(1.393) };

/**
 * Units (minutes at the temperature of reference) of a heating from its log: ∫ 10^((T − T₀)/z) dt, T straight between two
 * moments and the integral exact. Arithmetic. Check: 20 min at 62 °C are 38.81 with 1.393 per °C, 38.61 with z = 7 °C.
 * @throws Refusal for fewer than two moments, times that go back, or outside 0–150 °C
 */
export function heatUnits(log: readonly Moment[], { atC, z }: HeatUnit): number {
  if (log.length < 2) throw new Refusal('a heating has at least two moments');
  if (!log.every((one) => one.atC >= 0 && one.atC <= 150)) throw new Refusal('a drink is heated to 0–150 °C');
  return log.slice(1).reduce((sum, to, i) => {
    const from = log[i]!;
    const minutes = to.minutes - from.minutes;
    if (!(minutes >= 0)) throw new Refusal('the minutes of a heating only increase');
    const rate = Math.LN10 / z; // per °C
    const [slow, fast] = [from.atC, to.atC].map((t) => Math.exp(rate * (t - atC))) as [number, number];
    const rise = rate * (to.atC - from.atC);
    return sum + minutes * (Math.abs(rise) < 1e-9 ? slow : (fast - slow) / rise);
  }, 0);
}
