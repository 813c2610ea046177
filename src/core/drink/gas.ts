/** Carbon dioxide in a drink and in its closed bottle. Water as in carbonation; sugar and alcohol hold less. */
import { gaugeForVolumes, volumesAt } from '../liquid/carbonation';
import { celsius, type Celsius } from '../number/units';
import { waterDensity } from '../liquid/water';
import { Refusal } from '../text/refusal';

const BAR_PER_ATM = 1.01325;
/** Gauge pressure up to which the law of the gas is used, bar. */
const MOST = 8.98;
/** 0 °C in K. */
const KELVIN = 273.15;

/**
 * Share (0 to 1) of what water holds that a drink holds, from g of sugar in a litre and % ABV: (1 − 0.01 A/0.86)(1 − 0.00144 S).
 * Source: Reg. (EEC) 2676/90 for sparkling wine, litres of gas in a litre = 0.987 P (0.86 − 0.01 A)(1 − 0.00144 S) at 20 °C,
 * P in bar absolute; taken for other temperatures too (our choice). @throws Refusal outside 0–200 g/L and 0–20 % ABV
 */
export function gasShare(sugarPerL: number, abv: number): number {
  if (!(sugarPerL >= 0 && sugarPerL <= 200 && abv >= 0 && abv <= 20))
    throw new Refusal('how much gas a drink holds is known up to 200 g/L of sugar and 20 % ABV');
  return (1 - (0.01 * abv) / 0.86) * (1 - 0.00144 * sugarPerL);
}

/** A bottle as it was closed: volumes in the drink, °C, share of the bottle that is headspace, and whether air is in it. */
export interface Closed {
  readonly volumes: number;
  readonly atC: number;
  readonly headspace: number;
  readonly hasAir: boolean;
  /** What the drink holds of what water does. */
  readonly share: number;
}

/**
 * Gauge pressure, bar, in a closed bottle at t once gas and drink are in balance: the gas that was in drink and headspace is in
 * both again, air keeps to the headspace, and the drink grows into it as water does. Arithmetic (conservation of gas; ideal gas
 * in the headspace) on the laws of {@link volumesAt}. @throws Refusal for 0–40 °C left, above 9 bar, or a headspace that the
 * drink fills
 */
export function closedGauge(closed: Closed, t: Celsius): number {
  const { air, first, holds } = balanceOf(closed, t);
  const all = closed.volumes + first;
  let [low, high] = [-BAR_PER_ATM, MOST];
  if (!(holds(high) >= all)) throw new Refusal('it would be more than 9 bar at {t} °C', { t });
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (holds(middle) < all) low = middle;
    else high = middle;
  }
  return high + air;
}

/**
 * Most volumes with which a closed bottle stays at a gauge pressure of `most` bar at t; 0 where the air alone is more.
 * Arithmetic: inverse of {@link closedGauge}. @throws Refusal as there, and above 9 bar
 */
export function mostVolumes(closed: Omit<Closed, 'volumes'>, most: number, t: Celsius): number {
  const { air, first, holds } = balanceOf(closed, t);
  return Math.max(0, holds(Math.max(-BAR_PER_ATM, Math.min(MOST, most - air))) - first);
}

/** Gas in a closed bottle at t: bar of air, volumes that were in the headspace, and volumes that are in drink and headspace under a gauge pressure of gas alone. */
function balanceOf({ atC, headspace, hasAir, share }: Omit<Closed, 'volumes'>, t: Celsius) {
  if (!(headspace > 0 && headspace < 1)) throw new Refusal('a bottle has some headspace, and some drink');
  const grown = waterDensity(celsius(atC)) / waterDensity(t);
  const [before, now] = [headspace / (1 - headspace), (1 - (1 - headspace) * grown) / (1 - headspace)]; // L per L of drink
  if (!(now > 0)) throw new Refusal('the drink grows into all of the headspace at {t} °C: leave more', { t });
  const warmer = (t + KELVIN) / (atC + KELVIN);
  return {
    air: hasAir ? BAR_PER_ATM * (before / now) * warmer : 0,
    first: hasAir ? 0 : (before * KELVIN) / (atC + KELVIN),
    holds: (gauge: number) => share * volumesAt(gauge, t) + (now * (gauge / BAR_PER_ATM + 1) * KELVIN) / (t + KELVIN),
  };
}

/**
 * Gauge pressure, bar, under which a drink takes up so many volumes at t. Source: as {@link gasShare} and {@link gaugeForVolumes}.
 * @throws Refusal as there
 */
export function drinkGauge(volumes: number, share: number, t: Celsius): number {
  return gaugeForVolumes(volumes / share, t);
}

/**
 * Volumes of gas that yeast would make of g of sugar in a litre of drink: four CO₂ (44.0095 g/mol) of each sucrose (342.297), 1.977 g/L
 * a volume. Arithmetic. Check: 4 g/L make about one volume.
 */
export function volumesFermented(sugarPerL: number): number {
  return (sugarPerL * 4 * 44.0095) / 342.297 / (44.0095 / 22.26);
}
