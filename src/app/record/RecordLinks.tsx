import type { AnyRecord, KindName } from '../../records/kind/kinds';
import { go } from '../nav/route';
import { startTask } from '../nav/startTask';

const pages: { readonly [K in KindName]?: readonly [string, string] } = {
  batch: ['sheet', 'Sheet to print, table for a spreadsheet'],
  formula: ['formula', 'Versions, cost, bottles, drops'],
};

/** On the page of a bottle: what its certificate says. On that of a batch: its sheet. On that of a formula: all that follows from it. */
export function PageOffer({ record }: { record: AnyRecord }) {
  if (record.kind === 'bottle')
    return (
      <button class="second" onClick={() => void startTask({ task: 'certificate', typed: { bottle: record.id } })}>
        What the certificate says
      </button>
    );
  const entry = 'catalogue' in record ? record.catalogue : undefined;
  const page = entry ? (['catalogue', 'All the catalogue knows of it, rules too'] as const) : pages[record.kind];
  if (!page) return null;
  return (
    <button class="second" onClick={() => go([page[0], entry ?? record.id])}>
      {page[1]}
    </button>
  );
}
