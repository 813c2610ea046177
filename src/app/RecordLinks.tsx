import type { AnyRecord } from '../records/kinds';
import { go } from './route';

const pages: Readonly<Record<string, readonly [string, string]>> = {
  batch: ['sheet', 'Sheet to print, table for a spreadsheet'],
  formula: ['formula', 'Versions, cost, bottles, drops'],
};

/** On the page of a batch: its sheet. On that of a formula: all that follows from it. */
export function PageOffer({ record }: { record: AnyRecord }) {
  const page = pages[record.kind];
  if (!page) return null;
  return (
    <button class="second" onClick={() => go([page[0], record.id])}>
      {page[1]}
    </button>
  );
}
