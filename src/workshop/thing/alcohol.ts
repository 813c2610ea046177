import type { Batch } from '../../records/kind/batch';
import type { Tasting } from '../../records/kind/drink';
import { find } from '../../records/shelf';
import { formatPlain, measuredText } from '../../ui/format';
import { alcoholIsUnknownIn, ethanolOf } from './carrier';

/** What is said where the alcohol of some solvents is not known, and where it can be said. */
export function unknownWords(names: readonly string[]): string {
  return `No one has said how much alcohol is in ${names.join(' and ')}: on the Shelf, under Own solvents, it can be changed.`;
}

/** Whether the alcohol of a drink or batch that was kept is not known: the solvent of a vial in it, or its carrier, is one of which no one has said it. */
export function alcoholIsUnknownOf(record: Tasting | Batch): boolean {
  if (record.kind === 'batch' && record.drink.abvUnknown) return true;
  const carriers = record.kind === 'batch' ? record.weighed.flatMap(({ id }) => find('solvent', id) ?? []) : [];
  const vials = record.uses.flatMap(({ id }) => find('vial', id) ?? []);
  return carriers.some((one) => ethanolOf(one) === null) || vials.some((vial) => alcoholIsUnknownIn(vial).length > 0);
}

/** The alcohol of a batch, for its page, sheet and table. */
export function alcoholText(batch: Batch): string {
  return alcoholIsUnknownOf(batch) ? 'not known' : measuredText(batch.drink.abv, '% ABV');
}

/** The alcohol of a solvent of the person's own, in words. */
export function ownAlcoholText(abv: number | undefined): string {
  return abv === undefined ? 'not known' : `${formatPlain(abv * 100, 3)} % vol`;
}
