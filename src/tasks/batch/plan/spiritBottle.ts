import { find } from '../../../records/shelf';
import { labelSays } from '../../../workshop/drinkable/grade';
import { solventBottleOptions, solventBottles, solventsOnHand, type SolventOnHand } from '../../../workshop/onHand';
import { sourceOfSolvent, type Source } from '../../../workshop/sources';
import { ethanolOf } from '../../../workshop/thing/carrier';
import { answer, ask, askAbout } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asked } from './asked';
import { carrierRefusal, NOT_FOOD } from './carrierBottle';
import { isEmulsion } from './emulsion';
import { waterBottleOf } from './waterBottle';
import { inSlot, NOT_FROM_SHELF, usualBottle } from './usualBottle';
import { fields } from './fields';
import { SPIRIT, spiritFrom, spiritGoods, type Goods } from './goods';

/** Solvents of the Shelf that a drink may have its alcohol from. */
function spirits(): SolventOnHand[] {
  return solventsOnHand().filter((one) => one.foodPossible && (ethanolOf(one) ?? 0) > 0);
}

/** From which bottle the spirit of the drink comes: the one used last, else the only one that will do; null where the Shelf holds none. */
export function spiritBottleField(run: RunState): Field<string> | null {
  const ids = spirits().flatMap(({ id }) => (solventBottles(id).length > 0 ? [id] : []));
  if (ids.length === 0) return null;
  const field = fields.lot(SPIRIT, 'Bottle of the spirit');
  const options = [...ids.flatMap((id) => solventBottleOptions(id).map(inSlot)), NOT_FROM_SHELF];
  const isOlder = answer(run, fields.spiritFood) !== null && answer(run, field) === null; // it asked for strength and grade alone
  const bottles = ids.flatMap((id) => solventBottles(id).map(sourceOfSolvent));
  const preset = isOlder ? NOT_FROM_SHELF.value : (answer(run, field) ?? usualBottle(run, bottles, null));
  return ask(field, { options, preset });
}

/** The bottle that was chosen; null where it is none of the Shelf, or no one has said. */
export function spiritBottleOf(run: RunState): Source | null {
  const field = spiritBottleField(run);
  const supply = field && find('supply', answer(run, field));
  return supply ? sourceOfSolvent(supply) : null;
}

/** The spirit as goods: from its bottle, else of the strength that was typed; null until one of them is known. */
export function spiritChosen(run: RunState): Goods | null {
  const field = spiritBottleField(run);
  const source = spiritBottleOf(run);
  const solvent = source && spirits().find(({ id }) => id === find('supply', source.id)?.solvent);
  if (solvent) return spiritFrom(solvent, source);
  if (field && answer(run, field) === null) return null;
  const strength = answer(run, asked(run).spirit);
  return strength === null ? null : spiritGoods(strength);
}

/** True where no label on the Shelf tells whether the spirit is drinking alcohol. */
export function asksSpiritFood(run: RunState): boolean {
  const supply = find('supply', spiritBottleOf(run)?.id);
  return supply === undefined || labelSays(supply) === null;
}

/** Whether it is drinking alcohol, asked of each bottle by itself. */
export function spiritFoodField(run: RunState): Field<string> {
  const source = spiritBottleOf(run);
  return source ? askAbout(run, fields.spiritFood, source.id) : fields.spiritFood;
}

/** Why a liquid of the drink may not go into it, in one sentence: carrier, spirit, water of an emulsion; null when all may. */
export function liquidRefusal(run: RunState): string | null {
  return carrierRefusal(run) ?? spiritRefusal(run) ?? (isEmulsion(run) ? (waterBottleOf(run)?.refusal ?? null) : null);
}

function spiritRefusal(run: RunState): string | null {
  if (answer(run, asked(run).abv) === 0) return null;
  const denied = asksSpiritFood(run) && answer(run, spiritFoodField(run)) === 'no';
  return spiritBottleOf(run)?.refusal ?? (denied ? NOT_FOOD : null);
}
