import { find } from '../../../records/shelf';
import { solventBottleOptions, solventBottles } from '../../../workshop/onHand';
import { sourceOfSolvent, type Source } from '../../../workshop/sources';
import { answer, ask } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { fields } from './fields';
import { EMULSION_WATER } from './goods';
import { inSlot, NOT_FROM_SHELF, usualBottle } from './usualBottle';

const TABLED = 'water'; // its id in the table of solvents

/** From which bottle the water of an emulsion comes: that of last time, else the only one that will do; null where the Shelf holds none. */
export function waterBottleField(run: RunState): Field<string> | null {
  const bottles = solventBottles(TABLED).map(sourceOfSolvent);
  if (bottles.length === 0) return null;
  const field = fields.lot(EMULSION_WATER, 'Bottle of the water');
  const options = [...solventBottleOptions(TABLED).map(inSlot), NOT_FROM_SHELF];
  return ask(field, {
    options,
    preset: answer(run, field) ?? (usualBottle(run, bottles, null) || NOT_FROM_SHELF.value),
  });
}

/** The bottle that was chosen; null where it is none of the Shelf. */
export function waterBottleOf(run: RunState): Source | null {
  const field = waterBottleField(run);
  const supply = field && find('supply', answer(run, field));
  return supply ? sourceOfSolvent(supply) : null;
}
