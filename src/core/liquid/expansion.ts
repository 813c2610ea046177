import { propagate, type Measured } from '../number/measured';
import type { Celsius } from '../number/units';
import { Refusal } from '../text/refusal';

/**
 * Density of a liquid at t from its density at 20 °C (g/mL) and its cubic expansion (1/K): ρ20/(1 + β(t − 20)).
 * Both may carry uncertainty; the result carries it on. Valid: 5–40 °C. β is a mean of 15–25 °C; that it changes beyond moves the
 * density of organic liquids by less than 0.1 % (ethanol at 40 °C 0.07 %, OIML R 22). Not for water, which has a law of its own.
 * Check: propylene glycol 1.0361 at 20 °C with 7.3e-4/K is 1.0323 at 25 °C (DIPPR 1.0326).
 * Source: definition of cubic expansion; values from the tables. @throws Refusal outside
 */
export function densityAt(at20: Measured, expansionPerK: Measured, t: Celsius): Measured {
  refuseOutside(t);
  const grown = 1 + expansionPerK.value * (t - 20);
  const density = at20.value / grown;
  return propagate(density, [
    [at20, 1 / grown],
    [expansionPerK, (-density * (t - 20)) / grown],
  ]);
}

/**
 * Density at 20 °C (g/mL) from one printed for t, by the same law turned round: ρ(t)·(1 + β(t − 20)).
 * Check: benzaldehyde, printed 1.0401 at 25 °C, is 1.0453 at 20 °C (PPDS 1.0455). Source: as {@link densityAt}. @throws Refusal outside
 */
export function densityAt20(atT: Measured, expansionPerK: Measured, t: Celsius): Measured {
  refuseOutside(t);
  const grown = 1 + expansionPerK.value * (t - 20);
  return propagate(atT.value * grown, [
    [atT, grown],
    [expansionPerK, atT.value * (t - 20)],
  ]);
}

function refuseOutside(t: Celsius): void {
  if (!(t >= 5 && t <= 40))
    throw new Refusal('density by expansion from 20 °C is good for 5–40 °C, not for {t} °C', { t });
}
