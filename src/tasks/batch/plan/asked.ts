import { drinkMakeOf } from '../../../core/drink/drinkMake';
import { drinkDensity } from '../../../core/drink/finishedDrink';
import { massFraction, volumeFraction } from '../../../core/number/units';
import { formatTyped } from '../../../ui/format';
import { outcome } from '../../../workshop/attempt';
import { doseBefore } from '../../../workshop/madeBefore';
import { solventsOnHand } from '../../../workshop/onHand';
import { answer, ask } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { oncePerRun } from '../../engine/oncePerRun';
import { drinkBefore, madeAgain, sameBefore, timesBefore } from './before';
import { fields } from './fields';
import { moreFields } from './moreFields';
import { recipeOrNull, whatField } from './recipe';

/** The questions as the page asks them now: as last time for this formula, else as last time, else as benches usually do. */
export const asked = oncePerRun((run: RunState) => {
  const { same, all } = timesBefore(run);
  const own = ofThisRecipe(run);
  const asLast = <T>(field: Field<T>) => asBefore(run, field, all);
  const asItself = <T>(field: Field<T>) => asBefore(own, field, same); // never what another drink had
  const carriers = solventsOnHand().filter(({ foodPossible }) => foodPossible);
  return {
    what: whatField(run),
    ...drinkAsked(run, own),
    litres: asLast(fields.litres),
    loss: asLast(moreFields.loss),
    vessel: asLast(moreFields.vessel),
    sugarBy: asBefore(own, fields.sugarBy, same, 'mass'),
    spirit: asLast(fields.spirit),
    spiritFood: fields.spiritFood,
    parts: asLast(fields.parts),
    by: asLast(fields.by),
    acid: asLast(fields.acid),
    acidity: asLast(fields.acidity),
    benzoate: asItself(fields.benzoate),
    sorbate: asItself(fields.sorbate),
    dosage: asLast(fields.dosage),
    spare: asItself(fields.spare),
    carrier: asLast(ask(fields.carrier, { options: carriers.map(({ id, name }) => ({ value: id, label: name })) })),
    citrus: asItself(fields.citrus),
    droplet: asLast(fields.droplet),
    volumes: asItself(fields.volumes),
    gasAt: asLast(fields.gasAt),
    fine: asLast(fields.fine),
    scatter: asLast(fields.scatter),
    coarse: asLast(fields.coarse),
    tolerance: asLast(fields.tolerance),
  };
});

/** The run without what was left in the slots for another formula. */
export function ofThisRecipe(run: RunState): RunState {
  const before = answer(run, fields.plannedFor);
  return before === null || before === recipeOrNull(run)?.id ? run : { ...run, presets: {} };
}

/** Dose, sugar and alcohol: as that drink was asked for, else as it became; empty where nothing like it was made or tasted. */
function drinkAsked(run: RunState, own: RunState) {
  const before = drinkBefore(run);
  const mgPerKg = recipeOrNull(run)?.mgPerKg ?? sameBefore(run)?.mgPerKg;
  const held = heldDose(run);
  const usual = (value: number | undefined) => (value === undefined ? '' : formatTyped(value, 3));
  const last = before?.asked ? [before.asked] : [];
  const brix = asBefore(own, fields.brix, last, usual(before?.brix));
  const abv = asBefore(own, fields.abv, last, usual(before?.abv));
  const perL = gramsPerL(answer(run, brix), answer(run, abv) ?? 0);
  return {
    dose: asBefore(own, fields.dose, held === null ? last : [], usual(held ?? mgPerKg)),
    brix,
    abv,
    sugarPerL: asBefore(own, fields.sugarPerL, last, perL === null ? '' : formatTyped(perL, 4)),
  };
}

/** The dose of a new version at which what stayed in it keeps its mg/kg, where the last drink was of another version; else null. */
export function heldDose(run: RunState): number | null {
  const [recipe, before] = [recipeOrNull(run), sameBefore(run)];
  if (!recipe || recipe.version === null || !before || madeAgain(run)) return null;
  const { mgPerKg, how } = doseBefore(recipe.lines, before);
  return how === 'holds the others' ? mgPerKg : null;
}

/** g of sugar in a litre of drink of that °Brix and % ABV; null where there is no such drink. */
function gramsPerL(brix: number | null, abv: number): number | null {
  if (brix === null) return null;
  const density = outcome(() => drinkDensity(drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100)))).value;
  return density && brix * 10 * density; // g in 100 g of drink to g/L
}

/** What a scale shows under a key, g. */
export function massField(run: RunState, key: string, on: { title: string; scale: 'fine' | 'coarse' }): Field<number> {
  return fields.mass(key, on.title, asked(run)[on.scale]);
}
