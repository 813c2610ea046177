import { over, scaled, times } from '../../core/number/measured';
import { PPM } from '../../core/number/units';
import { contentsNow } from '../../workshop/thing/ageing';
import { bottlesOf, carriersOf, isCloudy } from '../../workshop/thing/carrier';
import { isBegun, supposing } from '../engine/answers';
import { given } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { oncePerRun } from '../engine/oncePerRun';
import { judgeBetween } from '../shared/judgeBetween';
import { traitKey } from '../shared/judgeRun';
import type { Judgement, Part } from '../../workshop/drinkable/judging';
import { attempt, Refused } from '../../workshop/attempt';
import { alcoholIsUnknown, countOf, glassOf, mostAlcohol, type Glass } from './glass';

/** What the drops brought into the glass, materials and what they were in; with `following`, only that dose follows what is looked at. */
export function partsOf({ dosings, dose }: Glass, following?: number): Part[] {
  return dosings.flatMap(({ vial, mass }, k) => {
    const share = scaled(over(mass, dose.mass), PPM); // mg of the vial's liquid per kg of drink
    const fixed = following !== undefined && following !== k + 1;
    const bottles = bottlesOf(vial);
    const others = carriersOf(vial).filter(({ ethanol }) => ethanol === 0 || ethanol === null);
    return [
      ...contentsNow(vial).map(({ material, name, strength }) => ({
        id: material,
        name,
        mgPerKg: times(share, strength),
        fixed,
        bottles: bottles.filter((bottle) => bottle.material === material),
      })),
      ...others.map(({ id, name, cas, share: of }) => ({
        id,
        name,
        fixed,
        mgPerKg: scaled(share, of),
        carrier: true,
        ...(cas === undefined ? {} : { cas }),
      })),
    ];
  });
}

/** What the rules say of the glass; with `following`, ceilings are those of that dose beside the others. */
export function judgeGlass(run: RunState, glass: Glass, following?: number): Judgement | null {
  const { dose, dosings } = glass;
  const drink = { abv: dose.abv.value, density: dose.mass.value / dose.volume.value };
  const cloudy = given(traitKey('cloudy'), ['yes', 'no']);
  const isPreset = dosings.some(({ vial }) => isCloudy(vial)) && !isBegun(run, cloudy);
  const most = alcoholIsUnknown(glass).length > 0 ? mostAlcohol(glass) : drink.abv;
  return judgeBetween(isPreset ? supposing(run, { [cloudy.name]: 'yes' }) : run, {
    parts: partsOf(glass, following),
    drink,
    most,
  });
}

/** What the rules say of the glass as it is now, with all its doses; null while it is not known, or cannot be. */
export const judgedNow = oncePerRun((run: RunState): Judgement | null => {
  const glass = attempt(() => glassOf(run, countOf(run)));
  return glass && !(glass instanceof Refused) ? judgeGlass(run, glass) : null;
});
