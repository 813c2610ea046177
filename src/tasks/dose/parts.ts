import { over, scaled, times } from '../../core/measured';
import { PPM } from '../../core/units';
import { bottlesOf, carriersOf } from '../carrier';
import type { RunState } from '../fold';
import { judge, type Judgement, type Part } from '../judging';
import type { Glass } from './glass';

/** What the drops brought into the glass, materials and solvents; with `following`, only that dose follows what is looked at. */
export function partsOf({ dosings, dose }: Glass, following?: number): Part[] {
  return dosings.flatMap(({ vial, mass }, k) => {
    const share = scaled(over(mass, dose.mass), PPM); // mg of the vial's liquid per kg of drink
    const fixed = following !== undefined && following !== k + 1;
    const bottles = bottlesOf(vial);
    const solvents = carriersOf(vial).filter(({ ethanol }) => ethanol === 0);
    return [
      ...vial.contents.map(({ material, name, strength }) => ({
        id: material,
        name,
        mgPerKg: times(share, strength),
        fixed,
        bottles: bottles.filter((bottle) => bottle.material === material),
      })),
      ...solvents.map((one) => ({
        id: one.id,
        name: one.name,
        mgPerKg: scaled(share, one.share),
        fixed,
        carrier: true,
      })),
    ];
  });
}

/** What the rules say of the glass; with `following`, ceilings are those of that dose beside the others. */
export function judgeGlass(run: RunState, glass: Glass, following?: number): Judgement | null {
  const { dose } = glass;
  const drink = { abv: dose.abv.value, density: dose.mass.value / dose.volume.value };
  return judge(run, partsOf(glass, following), drink);
}
