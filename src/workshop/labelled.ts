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

const codes: { readonly [K in LabelledKind]: (record: RecordOf<K>) => string } = {
  vial: ({ code }) => code,
  bottle: ({ material }) => find('material', material)?.code ?? '',
  batch: () => 'BATCH',
};

const names: { readonly [K in LabelledKind]: (record: RecordOf<K>) => string } = {
  vial: ({ name }) => name,
  bottle: ({ material }) => find('material', material)?.name ?? 'a material that is gone',
  batch: ({ name }) => name,
};

/** The code that the person gave to it; a batch has none, and says what it is. */
export function codeOf(record: Labelled): string {
  return byKind(codes, record);
}

/** What it is called. */
export function nameOf(record: Labelled): string {
  return byKind(names, record);
}
