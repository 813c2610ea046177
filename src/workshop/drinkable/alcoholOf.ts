import type { Batch } from '../../records/kind/batch';
import type { Tasting } from '../../records/kind/drink';
import { measuredText } from '../../ui/format';
import { partsOfBatch, partsOfTasting } from './partsOfDrink';

/** Whether the alcohol of a drink or batch that was kept is not known: it may have more than its strength says. */
export function alcoholIsUnknownOf(record: Tasting | Batch): boolean {
  const { drink, mostAbv } = record.kind === 'batch' ? partsOfBatch(record) : partsOfTasting(record);
  return mostAbv > drink.abv;
}

/** The alcohol of a batch, for its page, sheet and table. */
export function alcoholText(batch: Batch): string {
  return alcoholIsUnknownOf(batch) ? 'not known' : measuredText(batch.drink.abv, '% ABV');
}
