import type { Batch } from '../records/kind/batch';
import type { Bottle } from '../records/kind/material';
import { find, list } from '../records/shelf';
import type { Vial } from '../records/kind/vial';

/** What can carry a label: it has a short id, and a code. */
export type Labelled = Vial | Bottle | Batch;

/** All that can carry a label, vials first, batches last, newest first. */
export function allLabelled(): Labelled[] {
  return [...list('vial'), ...list('bottle'), ...list('batch')];
}

/** The code that the person gave to it; a batch has none, and says what it is. */
export function codeOf(record: Labelled): string {
  if (record.kind === 'batch') return 'BATCH';
  return record.kind === 'vial' ? (record as Vial).code : (find('material', (record as Bottle).material)?.code ?? '');
}

/** What it is called. */
export function nameOf(record: Labelled): string {
  return record.kind === 'bottle'
    ? (find('material', (record as Bottle).material)?.name ?? 'a material that is gone')
    : (record as Vial | Batch).name;
}
