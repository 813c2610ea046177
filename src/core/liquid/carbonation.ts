/**
 * Carbon dioxide in water. Sugar and alcohol hold a little less (no number with a source), so a sweet drink at the same
 * pressure holds some per cent less than computed here; charts made for beer do not fit water.
 */
import type { Celsius } from '../number/units';
import { Refusal } from '../text/refusal';

/** Standard atmosphere in bar, exact. */
const BAR_PER_ATM = 1.01325;
/** Molar volume of real CO2 at 0 °C and 1 atm, L/mol, and its molar mass over it: 1 volume is 1.977 g/L. */
const LITRE_PER_MOL = 22.26;
const GRAM_PER_MOL = 44.0095;

/** Pressures at which the gas correction holds, atm absolute. */
const MOST_ATM = 10;

/**
 * Volumes of CO2 (L of gas at 0 °C, 1 atm per L of water) that dissolve at 1 atm fugacity.
 * ln K0 = −58.0931 + 90.5069 (100/T) + 22.2940 ln(T/100), mol/(L atm), T in K, fresh water.
 * Source: Weiss, Mar Chem 2 (1974) 203. Valid: −1 to 40 °C in the source; 0–40 °C here.
 * Check: 1.727 at 0 °C, 1.195 at 10 °C, 0.870 at 20 °C. @throws Refusal outside
 */
export function volumesPerAtm(t: Celsius): number {
  const kelvin = kelvinOf(t);
  return Math.exp(-58.0931 + 90.5069 * (100 / kelvin) + 22.294 * Math.log(kelvin / 100)) * LITRE_PER_MOL;
}

/**
 * Vapour pressure of water, atm. ln p = 24.4543 − 67.4509 (100/T) − 4.8489 ln(T/100).
 * Source: Weiss and Price, Mar Chem 8 (1980) 347, fresh water (coefficients from memory; agrees with 0.0060 atm at 0 °C,
 * 0.0231 at 20 °C, 0.0419 at 30 °C). Valid 0–40 °C. @throws Refusal outside
 */
export function waterVapour(t: Celsius): number {
  const kelvin = kelvinOf(t);
  return Math.exp(24.4543 - 67.4509 * (100 / kelvin) - 4.8489 * Math.log(kelvin / 100));
}

/**
 * Volumes of CO2 in water under pure CO2 at a gauge pressure (bar above 1 atm): K0 (P − p_water) exp(B P/RT), with Weiss's
 * second virial coefficient B. Source: as {@link volumesPerAtm}. Valid: 0–40 °C, −1 to 9 bar gauge. @throws Refusal outside
 */
export function volumesAt(gaugeBar: number, t: Celsius): number {
  const atm = gaugeBar / BAR_PER_ATM + 1;
  if (!(atm >= 0 && atm <= MOST_ATM))
    throw new Refusal('carbonation is known for −1 to 9 bar on the gauge, not for {gaugeBar} bar', { gaugeBar });
  const kelvin = kelvinOf(t);
  const virial = -1636.75 + 12.0408 * kelvin - 0.0327957 * kelvin ** 2 + 3.16528e-5 * kelvin ** 3; // cm³/mol
  const fugacity = Math.max(0, atm - waterVapour(t)) * Math.exp((virial * atm) / (82.0578 * kelvin)); // cm³ atm/(mol K)
  return volumesPerAtm(t) * fugacity;
}

/**
 * Gauge pressure (bar) that holds that many volumes of CO2 in water at t: inverse of {@link volumesAt}, by bisection.
 * Arithmetic.  * Check: 3.0 volumes take 1.08 bar at 4 °C and 2.57 bar at 20 °C.
 * @throws Refusal below zero, above what 9 bar holds, or outside 0–40 °C
 */
export function gaugeForVolumes(volumes: number, t: Celsius): number {
  let [low, high] = [-BAR_PER_ATM, 8.9];
  const most = volumesAt(high, t);
  if (!(volumes >= 0 && volumes <= most))
    throw new Refusal('water at {t} °C holds 0 to {most} volumes up to 9 bar, not {volumes}', {
      t,
      most: { value: most, decimals: 1 },
      volumes,
    });
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (volumesAt(middle, t) < volumes) low = middle;
    else high = middle;
  }
  return high;
}

/** g of CO2 per L in that many volumes: 1.977 each, arithmetic from the constants above (real gas; the trade rounds to 1.96). */
export function carbonDioxidePerLitre(volumes: number): number {
  return (volumes * GRAM_PER_MOL) / LITRE_PER_MOL;
}

function kelvinOf(t: Celsius): number {
  if (!(t >= 0 && t <= 40)) throw new Refusal('carbonation is known for 0–40 °C, not for {t} °C', { t });
  return t + 273.15;
}
