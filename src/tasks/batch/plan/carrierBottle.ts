import { find } from '../../../records/shelf';
import { answer, ask, askAbout } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { labelSays } from '../../../workshop/drinkable/grade';
import { solventBottleOptions, solventBottles } from '../../../workshop/onHand';
import { sourceOfSolvent, type Source } from '../../../workshop/sources';
import { asked } from './asked';
import { NOT_FROM_SHELF, usualBottle } from './usualBottle';
import { isEmulsion } from './emulsion';
import { carrierOf, litresToMake, spareFactor } from './drinkAsked';
import { fields } from './fields';

/** What is said where a bottle is not food grade. */
export const NOT_FOOD = 'What is not food grade is smell only: it never goes into a drink. Take another bottle.';

/** Grams of carrier that the concentrate takes at most; null until it is known how much. */
function carrierGrams(run: RunState): number | null {
  const [gramsPerL, litres] = [answer(run, asked(run).dosage), litresToMake(run)];
  return gramsPerL === null || litres === null ? null : gramsPerL * litres * spareFactor(run);
}

/** From which bottle on the Shelf the carrier comes; null where the Shelf holds none of it. One that alone will do is chosen already, else that of last time. */
export function carrierBottleField(run: RunState): Field<string> | null {
  const id = carrierOf(run)?.id;
  const bottles = id === undefined ? [] : solventBottles(id).map(sourceOfSolvent);
  if (id === undefined || bottles.length === 0) return null;
  const field = fields.lot(id, 'Bottle of the carrier');
  const options = [
    ...solventBottleOptions(id).map((option) => ({ ...option, short: option.label.split(', ')[1] ?? 'its bottle' })),
    NOT_FROM_SHELF,
  ];
  const isOlder = answer(run, fields.carrierFood) !== null && answer(run, field) === null; // it asked for the grade alone
  return ask(field, {
    options,
    preset: isOlder ? NOT_FROM_SHELF.value : (answer(run, field) ?? usualBottle(run, bottles, carrierGrams(run))),
  });
}

/** The bottle that the carrier comes from; null where it is none of the Shelf, or no one has said. */
export function carrierBottleOf(run: RunState): Source | null {
  const field = carrierBottleField(run);
  const supply = field && find('supply', answer(run, field));
  return supply ? sourceOfSolvent(supply) : null;
}

/** True where the word of a bottle on the Shelf does not tell whether the carrier is food grade. */
export function asksCarrierFood(run: RunState): boolean {
  const supply = find('supply', carrierBottleOf(run)?.id);
  return supply === undefined || labelSays(supply) === null;
}

/** Whether the carrier is food grade, asked of each carrier and bottle by itself. */
export function carrierFoodField(run: RunState): Field<string> {
  return askAbout(run, fields.carrierFood, carrierBottleOf(run)?.id ?? carrierOf(run)?.id ?? '');
}

/** Why the carrier may not go into a drink, in one sentence; null when it may, or there is none. */
export function carrierRefusal(run: RunState): string | null {
  if (isEmulsion(run)) return null;
  const denied = asksCarrierFood(run) && answer(run, carrierFoodField(run)) === 'no';
  return carrierBottleOf(run)?.refusal ?? (denied ? NOT_FOOD : null);
}
