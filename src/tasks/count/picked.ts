import { find } from '../../records/shelf';
import { answer, namesBegun } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { fields, wayOf } from './fields';
import { targetsIn, type Target } from './rounds';
import { stocksOnHand, type Stock } from './stock';

/** What was touched in the list to pick from, in that order. */
function touched(run: RunState): string[] {
  return namesBegun(run, 'pick.').map((name) => name.slice('pick.'.length));
}

function handedOver(run: RunState): string[] {
  return (answer(run, fields.handed) ?? '').split(/[\s,]+/).filter(Boolean);
}

/** Whether a vial or material is picked, by hand or by the task that handed it over. */
export function isPicked(run: RunState, id: string): boolean {
  const own = answer(run, fields.picked(id));
  return own === null ? handedOver(run).includes(id) : own === 'yes';
}

/** Vials and bottles that were picked by hand or handed over, in the order of picking. */
export function pickedStocks(run: RunState): Stock[] {
  const stocks = stocksOnHand();
  return [...new Set([...handedOver(run), ...touched(run)])]
    .filter((id) => isPicked(run, id))
    .flatMap((id) => stocks.find((stock) => stock.id === id) ?? []);
}

/** Materials that were picked for a typed formula, in the order of picking. */
export function pickedMaterials(run: RunState) {
  return touched(run).flatMap((id) => (isPicked(run, id) ? (find('material', id) ?? []) : []));
}

/** Whether the drops of a trial made before are counted again: nothing is asked and nothing is planned. */
export function isExact(run: RunState): boolean {
  return answer(run, fields.exactly) !== null;
}

/** The drops wanted: the plan that was chosen, or what was typed for each vial picked. */
export function wanted(run: RunState): Target[] {
  if (wayOf(run) !== 'hand' || isExact(run)) return targetsIn(answer(run, fields.plan) ?? '');
  const typed = pickedStocks(run).map(({ id }) => ({ id, drops: answer(run, fields.planned(id)) }));
  return typed.flatMap(({ id, drops }) => (drops === null ? [] : [{ id, drops }]));
}
