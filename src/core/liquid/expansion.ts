import { propagate, type Measured } from '../number/measured';
import type { Celsius } from '../number/units';
import { Refusal } from '../text/refusal';

/**
 * Density of a liquid at t from its density at 20 °C (g/mL) and its cubic expansion (1/K): ρ20/(1 + β(t − 20)).
 * Both may carry uncertainty; the result carries it on. Valid: 10–30 °C, since β is a mean of 15–25 °C (5 K beyond is our
 * choice: the change of β there moves the density by less than 0.01 %).
 * Check: propylene glycol 1.0361 at 20 °C with 7.3e-4/K is 1.0323 at 25 °C (DIPPR 1.0326).
 * Source: definition of cubic expansion; values from the tables. @throws Refusal outside
 */
export function densityAt(at20: Measured, expansionPerK: Measured, t: Celsius): Measured {
  if (!(t >= 10 && t <= 30))
    throw new Refusal('density by expansion from 20 °C is good for 10–30 °C, not for {t} °C', { t });
  const grown = 1 + expansionPerK.value * (t - 20);
  const density = at20.value / grown;
  return propagate(density, [
    [at20, 1 / grown],
    [expansionPerK, (-density * (t - 20)) / grown],
  ]);
}
