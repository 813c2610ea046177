import { REFERENCE_TEMPERATURE } from '../../core/number/units';
import { waterDensity } from '../../core/liquid/water';
import { formatPlain } from '../../ui/format';
import { attempt, Refused } from '../../workshop/attempt';
import { alcoholOfVial } from '../../workshop/thing/carrier';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { liquidOfVial } from '../../workshop/onHand';
import type { RunState } from '../engine/fold';
import { dropsInCup, levelsOf, unitOf, vialOfLadder } from './ladder';
import { areSmelled } from './samples';

const MG = 1000; // in a gram

/**
 * What keeps the blanks of a series fair: what carries the material goes into them too, or its smell is what is noticed. Of drops also what
 * each step brings into a cup, mg/kg of material and % ABV, before anything is filled.
 */
export function carriedText(run: RunState): string[] {
  const levels = attempt(() => levelsOf(run));
  const vial = vialOfLadder(run);
  if (unitOf(run) !== 'drops')
    return ['The blanks get as much of what carries it (alcohol, syrup) as the cup that holds it.'];
  if (!vial?.solvent || levels instanceof Refused || !levels) return [];
  const { name } = vial.solvent;
  const plain = `Into each blank as many drops of plain ${name}: else its smell tells the cups apart.`;
  const blank = [
    plain,
    ...(areSmelled(run) ? [] : [`Take ${name} from a bottle that is food grade: the blanks are tasted.`]),
  ];
  const cup = dropsInCup(run);
  if (!cup) return blank;
  const { mgPerDrop } = dropOf(cup.dropper, liquidOfVial(vial));
  const strength = vial.contents.reduce((sum, part) => sum + part.strength.value, 0);
  const alcohol = alcoholOfVial(vial);
  const steps = levels.map((drops) => {
    const g = (drops * mgPerDrop.value) / MG;
    const ppm = formatPlain((g * strength * 1e6) / (cup.cupG + g), 2);
    const ml = g / vial.densityGPerMl;
    const all = cup.cupG / waterDensity(REFERENCE_TEMPERATURE) + ml;
    const abv = alcohol === null ? '' : `, ${formatPlain((100 * ml * alcohol) / all, 2)} % ABV`;
    return `${dropsText(drops)} ${ppm} mg/kg${abv}`;
  });
  return [...blank, `In a cup: ${steps.join('; ')}.`];
}
