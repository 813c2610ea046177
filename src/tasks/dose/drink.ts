import { drinkMakeOf } from '../../core/drink/drinkMake';
import { drinkOfVolume, type Drink } from '../../core/drink/dose';
import { drinkDensity } from '../../core/drink/finishedDrink';
import { measured, over, type Measured } from '../../core/number/measured';
import { gramPerMl, massFraction, volumeFraction } from '../../core/number/units';
import type { Base } from '../../records/kind/drink';
import { find, list } from '../../records/shelf';
import { typedText } from '../../core/number/typed';
import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { fields } from './fields';

/** Half-width of what acid, salts and gum may change, g/mL. Our choice: 0.3 % of citric acid is about 0.001 g/mL. */
const UNSEEN = 0.002;

/** The drink before the dose: for the sum, and for the record. */
export interface BaseDrink {
  readonly drink: Drink;
  readonly facts: Pick<Base, 'name' | 'volumeMl' | 'brix' | 'abv' | 'densityGPerMl'>;
}

/** The drink used before that was chosen, if one was. */
export function usedBase(run: RunState): Base | undefined {
  return find('base', run.typed['base']);
}

/** True while a drink that was not used before is described. */
export function isNewBase(run: RunState): boolean {
  return list('base').length === 0 || run.typed['base'] === 'new';
}

/** Name, sugar, alcohol and density (g/mL), or null until they are known. @throws Refusal when sugar and alcohol leave no room */
export function describedBase(run: RunState) {
  const used = usedBase(run);
  if (used && !isNewBase(run)) return used;
  const [name, brix, abv] = [valueOf(run, fields.name), valueOf(run, fields.brix), valueOf(run, fields.abv)];
  if (name === null || brix === null || abv === null) return null;
  const make = drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100));
  return { name, brix, abv, densityGPerMl: valueOf(run, fields.density) ?? drinkDensity(make) };
}

/** True when the drink was put on a scale, false when its volume was read. */
export function isWeighed(run: RunState): boolean {
  return run.typed['base.by'] === 'mass';
}

/** Give or take, %, where nothing else is typed: a scale, or a jug. Our choice. */
export function usualSlack(run: RunState): string {
  return isWeighed(run) ? '0.1' : '2';
}

/** The volume of the same drink last time as it could be typed, mL; '' for none. */
export function lastVolume(run: RunState): string {
  const base = usedBase(run);
  return base ? typedText(Number(base.volumeMl.toPrecision(6))) : '';
}

/** The drink, or null until it is known. @throws Refusal when it cannot be */
export function baseOf(run: RunState): BaseDrink | null {
  const base = describedBase(run);
  const slack = valueOf(run, fields.slack(usualSlack(run)));
  const amount = isWeighed(run) ? valueOf(run, fields.mass) : valueOf(run, fields.volume(lastVolume(run)));
  if (!base || slack === null || amount === null) return null;
  const half = (amount * slack) / 100 / 2; // give or take is meant at k = 2
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
