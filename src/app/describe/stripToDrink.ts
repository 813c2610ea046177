import { find } from '../../records/shelf';
import { forwardInWater, heldByAlcohol } from '../../workshop/stripToDrink';
import type { Description } from './description';

const ORDER = 'An order only: by solubility in water and log Kow, each with the places it may have.';

/** What changes between the strip and the drink, of the materials of some vials: which come forward in water, which alcohol holds back. */
export function stripToDrink(vials: readonly string[]): NonNullable<Description['facts']> {
  const materials = vials.flatMap((id) => find('vial', id)?.contents.map(({ material }) => material) ?? []);
  return stripToDrinkOf(materials);
}

/** The same of materials, by id. */
export function stripToDrinkOf(materials: readonly string[]): NonNullable<Description['facts']> {
  const all = [...new Set(materials)];
  const rows = [
    ['Stronger in water, strongest first', forwardInWater(all)],
    ['Held back by alcohol, most held back first', heldByAlcohol(all)],
  ] as const;
  return rows.flatMap(([label, text]) => (text === '' ? [] : [[label, text, ORDER] as const]));
}
