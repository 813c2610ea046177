import { drinkMakeOf } from '../../core/drink/drinkMake';
import { drinkOfVolume, type Drink } from '../../core/drink/dose';
import { drinkDensity } from '../../core/drink/finishedDrink';
import { measured, over, type Measured } from '../../core/number/measured';
import { gramPerMl, massFraction, volumeFraction } from '../../core/number/units';
import type { Base } from '../../records/kind/drink';
import { find } from '../../records/shelf';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { asked } from './asked';
import { drinkFields } from './fields';

/** Half-width of what acid, salts and gum may change, g/mL. Our choice: 0.3 % of citric acid is about 0.001 g/mL. */
const UNSEEN = 0.002;

/** The drink before the dose: for the sum, and for the record. */
export interface BaseDrink {
  readonly drink: Drink;
  readonly facts: Pick<Base, 'name' | 'volumeMl' | 'brix' | 'abv' | 'densityGPerMl'>;
}

/** The drink used before that was chosen, if one was. */
export function usedBase(run: RunState): Base | undefined {
  return find('base', answer(run, asked(run).base));
}

/** Name, sugar, alcohol and density (g/mL), or null until they are known. @throws Refusal when sugar and alcohol leave no room */
export function describedBase(run: RunState) {
  const used = usedBase(run);
  if (used) return used;
  const { name: called, brix: sugar, abv: alcohol, density } = drinkFields;
  const [name, brix, abv] = [answer(run, called), answer(run, sugar), answer(run, alcohol)];
  if (name === null || brix === null || abv === null) return null;
  const make = drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100));
  return { name, brix, abv, densityGPerMl: answer(run, density) ?? drinkDensity(make) };
}

/** True when the drink was put on a scale, false when its volume was read. */
export function isWeighed(run: RunState): boolean {
  return answer(run, asked(run).by) === 'mass';
}

/** The drink, or null until it is known. @throws Refusal when it cannot be */
export function baseOf(run: RunState): BaseDrink | null {
  const now = asked(run);
  const base = describedBase(run);
  const slack = answer(run, now.slack);
  const amount = answer(run, isWeighed(run) ? now.mass : now.volume);
  if (!base || slack === null || amount === null) return null;
  const half = (amount * slack) / 100 / 2; // the ± is meant at k = 2
  const read = measured(amount, half, {
    id: 'drink:amount',
    words: isWeighed(run) ? 'the drink on the scale' : 'the volume of the drink',
  });
  const density = densityOf(base.densityGPerMl);
  const ethanol = volumeFraction(base.abv / 100);
  const drink = isWeighed(run) ? { mass: read, density, ethanol } : drinkOfVolume(read, density, ethanol);
  const { name, brix, abv, densityGPerMl } = base;
  return { drink, facts: { name, brix, abv, densityGPerMl, volumeMl: over(drink.mass, density).value } };
}

function densityOf(gPerMl: number): Measured {
  return measured(gramPerMl(gPerMl), UNSEEN / Math.sqrt(3), {
    id: 'drink:density',
    words: 'density of the drink: acid and the like are not counted',
  });
}
