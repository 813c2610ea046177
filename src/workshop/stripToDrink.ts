import { placesOf, type Range } from '../core/liquid/places';
import { find } from '../records/shelf';
import { logKow } from '../tables/partition';
import { inWater } from './inWater';

/**
 * From a strip, where each material is by itself, to a drink, where water or alcohol holds it: its smell changes by the inverse of its molar
 * solubility in water, and falls with alcohol the more, the larger its log Kow (Henry's law; log-linear cosolvency). How much
 * is not known well enough for a number, so only the order is told, with the places that each may have.
 */

/** Molar masses of aroma materials lie between 75 and 300 g/mol: as far as that, solubility by mass says it. */
const MOLAR = 2;
/** How far published log Kow of one material differ; our choice. */
const LOG_KOW = 0.3;

interface Known {
  readonly name: string;
  readonly range: Range | null;
}

/** What comes forward in water, most first, with its places; '' where fewer than two are known. `materials` are ids. */
export function forwardInWater(materials: readonly string[]): string {
  return inOrder(
    materials.map((id) => {
      const material = find('material', id);
      const water = material ? inWater(material.cas ?? '', material) : null;
      const range = water && { low: water.low / MOLAR, high: water.high * MOLAR };
      return { name: material?.name ?? 'a material that is gone', range };
    }),
  );
}

/** What alcohol holds back, most first, with its places; '' where fewer than two are known. `materials` are ids. */
export function heldByAlcohol(materials: readonly string[]): string {
  return inOrder(
    materials.map((id) => {
      const material = find('material', id);
      const value = logKow[material?.cas ?? ''];
      const range = value === undefined ? null : { low: -value - LOG_KOW, high: -value + LOG_KOW };
      return { name: material?.name ?? 'a material that is gone', range };
    }),
  );
}

/** 'limonene (place 1), linalool (place 2 or 3), eugenol (place 2 or 3); not known: rhubarb extract'. */
function inOrder(all: readonly Known[]): string {
  const known = all.flatMap(({ name, range }) => (range ? [{ name, range }] : []));
  if (known.length < 2) return '';
  const places = placesOf(known.map(({ range }) => range));
  const told = known
    .map(({ name }, i) => ({ name, ...places[i]! }))
    .sort((one, other) => one.from - other.from || one.to - other.to)
    .map(({ name, from, to }) => `${name} (${placeWords(from, to)})`);
  const missing = all.flatMap(({ name, range }) => (range ? [] : name));
  return [told.join(', '), missing.length > 0 ? `not known: ${missing.join(', ')}` : ''].filter(Boolean).join('; ');
}

/** 'place 1', 'place 1 or 2', 'places 1 to 4'. */
function placeWords(from: number, to: number): string {
  if (from === to) return `place ${from}`;
  return to === from + 1 ? `place ${from} or ${to}` : `places ${from} to ${to}`;
}
