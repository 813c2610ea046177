import type { Batch } from '../../records/kind/batch';
import type { Tasting } from '../../records/kind/drink';
import { shelf } from '../../records/shelf';
import { measuredText } from '../../ui/format';
import { partsOfBatch, partsOfTasting } from './partsOfDrink';

/** Whether the alcohol of a drink or batch that was kept is not known: it may have more than its strength says. */
export function alcoholIsUnknownOf(record: Tasting | Batch): boolean {
  if (known.here !== shelf.records.value) known = { here: shelf.records.value, found: new WeakMap() };
  const before = known.found.get(record);
  if (before !== undefined) return before;
  const { drink, mostAbv } = record.kind === 'batch' ? partsOfBatch(record) : partsOfTasting(record);
  known.found.set(record, mostAbv > drink.abv);
  return mostAbv > drink.abv;
}

/** What was worked out, while the Shelf stays as it is: lists ask again and again. */
let known: { here: unknown; found: WeakMap<object, boolean> } = { here: null, found: new WeakMap() };

/** The alcohol of a batch, for its page, sheet and table. */
export function alcoholText(batch: Batch): string {
  return alcoholIsUnknownOf(batch) ? 'not known' : measuredText(batch.drink.abv, '% ABV');
}
