import { byKind, kindNames, kinds, type LabelledKind, type RecordOf } from '../records/kind/kinds';
import { find, list } from '../records/shelf';

/** What can carry a label: it has a short id, and a code. */
export type Labelled = RecordOf<LabelledKind>;

/** All that can carry a label, in the order of the Shelf, newest first. */
export function allLabelled(): Labelled[] {
  return kindNames.flatMap((kind) => (isLabelledKind(kind) ? list(kind) : []));
}

function isLabelledKind(kind: keyof typeof kinds): kind is LabelledKind {
  return kinds[kind].label;
}

/** The code that the person gave to a thing, and what it is called. */
export interface Called {
  readonly code: string;
  readonly name: string;
}

const called: { readonly [K in LabelledKind]: (record: RecordOf<K>) => Called } = {
  vial: ({ code, name }) => ({ code, name }),
  bottle: ({ material }) => find('material', material) ?? { code: '', name: 'a material that is gone' },
  batch: ({ name }) => ({ code: 'BATCH', name }),
};

/** Code and name of a thing that can carry a label; a batch has no code, and says what it is. */
export function calledOf(record: Labelled): Called {
  return byKind(called, record);
}
