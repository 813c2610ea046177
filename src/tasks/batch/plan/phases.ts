/** What of an emulsion is oil, what is dissolved in its water, and which emulsifier holds it. */
import { find } from '../../../records/shelf';
import { emulsifiers, type Emulsifier } from '../../../tables/emulsion/emulsifiers';
import { logKow } from '../../../tables/partition';
import { inWater, isOil } from '../../../workshop/inWater';
import { answer, ask } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { ofThisRecipe } from './asked';
import { timesBefore } from './before';
import { fields } from './fields';
import { massOf, type Planned } from './goods';

/** log Kow from which on nearly all of a material is in the oil; our choice: at a tenth of oil in the emulsion 2 puts nine tenths there. */
const OILY = 2;
/** Where log Kow is not known: less of it in water, mg/L, is an oil. Our choice. */
const LITTLE = 1000;

/** Whether a material belongs to the oil phase. A solid of which nothing is known does not. */
export function isOfOil(id: string): boolean {
  const material = find('material', id);
  if (material && isOil(material)) return true;
  const kow = logKow[material?.cas ?? ''];
  if (kow !== undefined) return kow >= OILY;
  const water = inWater(material?.cas ?? '', material);
  return water ? water.mgPerL < LITTLE : material?.form !== 'solid';
}

/** A run whose recipe was left in a version that took everything for oil, in one vessel: it stays so until its recipe is opened again. */
export function isOfOneVessel(run: RunState): boolean {
  const isLeft = 'recipe' in run.done || 'what' in run.done;
  return isLeft && run.at !== 'recipe' && answer(run, fields.emulsifier) === null;
}

/** The lines of a formula by phase. What a vial brings along beside its material is in the water. g. */
export function phasesOf(run: RunState, lines: readonly Planned[]) {
  const oil = isOfOneVessel(run) ? lines : lines.filter(({ goods }) => isOfOil(goods.id));
  const strengthOf = ({ goods }: Planned) => (isOfOneVessel(run) ? 1 : (goods.source?.strength.value ?? 1));
  const oilG = oil.reduce((sum, one) => sum + one.mass * strengthOf(one), 0);
  return { oil, oilG, besideG: massOf(lines) - oilG };
}

/** Which emulsifier: as last time for this formula, else gum arabic. */
export function emulsifierField(run: RunState): Field<string> {
  const options = emulsifiers.map(({ id, name, ratio }) => ({ value: id, label: name, hint: ratio.source }));
  return asBefore(ofThisRecipe(run), ask(fields.emulsifier, { options }), timesBefore(run).same, emulsifiers[0]!.id);
}

/** The emulsifier that was chosen. */
export function emulsifierOf(run: RunState): Emulsifier {
  return emulsifiers.find(({ id }) => id === answer(run, emulsifierField(run))) ?? emulsifiers[0]!;
}

/** How much of it, g per g of oil phase: of each emulsifier by itself, within what was tried. */
export function ratioField(run: RunState): Field<number> {
  const { id, name, ratio } = emulsifierOf(run);
  const own =
    id === emulsifiers[0]!.id ? fields.gum : { ...fields.gum, name: `gum.${id}`, preset: String(ratio.usual) };
  const { low, high } = ratio;
  const refuse = (value: number) =>
    value >= low && value <= high
      ? null
      : value < low
        ? `under ${low} g/g of ${name} leaves droplets bare; tried are ${low} to ${high}.`
        : `over ${high} g/g of ${name} only thickens; tried are ${low} to ${high}.`;
  const asked = isOfOneVessel(run) ? own : ask(own, { help: `${low} to ${high}: ${ratio.source}.`, refuse });
  return asBefore(run, asked, timesBefore(run).all);
}
