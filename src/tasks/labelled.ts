import type { Bottle } from '../records/material';
import { find, list } from '../records/shelf';
import type { Vial } from '../records/vial';

/** What can carry a label: it has a short id, and a code that the person gave it. */
export type Labelled = Vial | Bottle;

/** All that can carry a label, vials first, newest first. */
export function allLabelled(): Labelled[] {
  return [...list('vial'), ...list('bottle')];
}

/** The code that the person gave to it. */
export function codeOf(record: Labelled): string {
  return record.kind === 'vial' ? (record as Vial).code : (find('material', (record as Bottle).material)?.code ?? '');
}

/** What it is called. */
export function nameOf(record: Labelled): string {
  return record.kind === 'vial'
    ? (record as Vial).name
    : (find('material', (record as Bottle).material)?.name ?? 'a material that is gone');
}
