import { drinkDensity } from './finishedDrink';
import { measured, plus, propagate, type Measured } from '../number/measured';
import { massFraction } from '../number/units';

/** Half-width of what acid, salts and gum may change of the density, g/mL. Our choice: 0.3 % of citric acid is about 0.001 g/mL. */
const UNSEEN = 0.002;

/**
 * Density of a drink, g/mL, from its sugar and ethanol (g/g), with their uncertainty (slopes by a small step) and that of what is not
 * counted. Source: {@link drinkDensity}; the half-width of the rest is our choice.
 * @throws Refusal as drinkDensity
 */
export function densityWithin(sugar: Measured, ethanol: Measured): Measured {
  const at = (brix: number, spirit: number) =>
    drinkDensity({ brix: massFraction(brix), ethanol: massFraction(spirit) }) as number;
  const here = at(sugar.value, ethanol.value);
  const step = 1e-4; // g/g
  const counted = propagate(here, [
    [sugar, (at(sugar.value + step, ethanol.value) - here) / step],
    [ethanol, (at(sugar.value, ethanol.value + step) - here) / step],
  ]);
  const unseen = { id: 'drink:density', words: 'density of the drink: acid and the like are not counted' };
  return plus(counted, measured(0, UNSEEN / Math.sqrt(3), unseen));
}
