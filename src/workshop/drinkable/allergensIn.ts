import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { ancestors } from '../../records/lineage';
import { allergens } from '../../tables/allergens';

/** Allergens of a thing by all the bottles that are in it; and whether someone looked at each of them. */
export interface AllergensIn {
  /** Ids of the table, in its order. */
  readonly known: readonly string[];
  /** False where a bottle in it says nothing of them. */
  readonly all: boolean;
}

/** What a label has to name of a thing, from the bottles up. */
export function allergensIn(record: AnyRecord): AllergensIn {
  const within = ancestors(record.id, 'is in it').map((one) => one.record);
  const bottles = [record, ...within].flatMap((one) => (isOf('bottle', one) ? [one] : []));
  const named = new Set(bottles.flatMap((bottle) => bottle.allergens ?? []));
  return {
    known: allergens.map(({ id }) => id).filter((id) => named.has(id)),
    all: bottles.every((bottle) => bottle.allergens !== undefined),
  };
}

/** 'milk, nuts': the words of a label for ids of the table; '' for none. */
export function allergenWords(ids: readonly string[]): string {
  return allergens
    .filter(({ id }) => ids.includes(id))
    .map(({ words }) => words)
    .join(', ');
}
