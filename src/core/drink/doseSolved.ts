import { propagate, type Measured } from '../number/measured';
import { massFraction, PPM, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/*
 * The level in a drink solved for the other amounts. A pour of m g with w g/g in a drink of M g gives c = w m / (M + m), in g per g of
 * finished drink. Arithmetic, with the sensitivities of each (GUM 5.1.2).
 */

/**
 * The pour (g) of strength w (g/g) that brings a drink (g) to so many mg/kg: m = c M / (w − c). Arithmetic.
 * @throws Refusal when the pour is not stronger than what is wanted
 */
export function pourFor(
  mgPerKg: number,
  { strength, drink }: { readonly strength: Measured; readonly drink: Measured },
): Measured {
  const c = level(mgPerKg);
  const over = strength.value - c;
  if (!(over > 0)) throw new Refusal(TOO_WEAK, { mgPerKg });
  const mass = (c * drink.value) / over;
  return propagate(mass, [
    [drink, c / over],
    [strength, -mass / over],
  ]);
}

/**
 * The strength (g/g) that a pour (g) into a drink (g) needs for so many mg/kg: w = c (M + m) / m. Arithmetic.
 * @throws Refusal when nothing is poured, or even the neat material would not do
 */
export function strengthFor(
  mgPerKg: number,
  { pour, drink }: { readonly pour: Measured; readonly drink: Measured },
): Measured {
  const c = level(mgPerKg);
  if (!(pour.value > 0)) throw new Refusal('nothing is poured yet');
  const w = (c * (drink.value + pour.value)) / pour.value;
  if (w > 1) throw new Refusal('so little of even the neat material gives less than {mgPerKg} mg/kg', { mgPerKg });
  return propagate(w, [
    [drink, c / pour.value],
    [pour, (-c * drink.value) / pour.value ** 2],
  ]);
}

/**
 * The drink (g) that a pour (g) of strength w (g/g) brings to so many mg/kg: M = m (w / c − 1). Arithmetic.
 * @throws Refusal when the pour is not stronger than what is wanted
 */
export function drinkFor(
  mgPerKg: number,
  { pour, strength }: { readonly pour: Measured; readonly strength: Measured },
): Measured {
  const c = level(mgPerKg);
  const times = strength.value / c - 1;
  if (!(times > 0)) throw new Refusal(TOO_WEAK, { mgPerKg });
  return propagate(pour.value * times, [
    [pour, times],
    [strength, pour.value / c],
  ]);
}

const TOO_WEAK = '{mgPerKg} mg/kg cannot be made from it: it is no stronger than that';

function level(mgPerKg: number): MassFraction {
  if (!(mgPerKg > 0)) throw new Refusal('a level is more than 0 mg/kg, not {mgPerKg} mg/kg', { mgPerKg });
  return massFraction(mgPerKg / PPM);
}
