import type * as z from 'zod/mini';
import { batch } from './batch';
import { device } from './device';
import { base, tasting } from './drink';
import { calibration, dropper } from './dropper';
import { formula } from './formula';
import { layering } from './layering';
import { bottle, material } from './material';
import { photo } from './photo';
import { picture } from './picture';
import { proportions } from './proportions';
import type { Kind, Stored } from './record';
import { run } from './run';
import { scale } from './scale';
import { settings } from './settings';
import { solvent } from './solvent';
import { supply } from './supply';
import { test } from './test';
import { vessel } from './vessel';
import { vial } from './vial';

/** Every kind that is kept, in the order of the Shelf. A new kind is a line here. */
export const kinds = {
  vial,
  bottle,
  formula,
  supply,
  dropper,
  scale,
  vessel,
  calibration,
  layering,
  proportions,
  tasting,
  batch,
  test,
  solvent,
  material,
  base,
  run,
  settings,
  device,
  photo,
  picture,
} as const;

export type KindName = keyof typeof kinds;
type Records = { readonly [K in KindName]: z.output<(typeof kinds)[K]['schema']> };
export type RecordOf<K extends KindName> = Records[K];
export type AnyRecord = Records[KindName];

/** Kinds whose row has a value, such as true, under a key, such as 'label'. */
type KindsWith<Key extends keyof Kind<Stored>, Value> = {
  [K in KindName]: (typeof kinds)[K][Key] extends Value ? K : never;
}[KindName];
/** Kinds that can carry a label. */
export type LabelledKind = KindsWith<'label', true>;
/** Kinds of which a person may change something. */
export type EditableKind = KindsWith<'edit', true>;
/** Kinds whose page is more than plain data. */
export type OwnPageKind = KindsWith<'page', 'own'>;

/** The names of all kinds, in the order of the Shelf. */
export const kindNames = Object.keys(kinds) as KindName[];

/** Whether a record is of a kind. */
export function isOf<K extends KindName>(kind: K, record: AnyRecord): record is RecordOf<K> {
  return record.kind === kind;
}

/** What Minim knows of a record's kind. */
export function kindOf(record: AnyRecord): Kind<AnyRecord> {
  return kinds[record.kind];
}

/** The kind of that name; undefined for one that this version does not know. */
export function kindNamed(name: string): Kind<AnyRecord> | undefined {
  return Object.hasOwn(kinds, name) ? kinds[name as KindName] : undefined;
}

/** What one of a record's kind is called. */
export function kindWords(record: AnyRecord): string {
  return kindOf(record).words.one;
}

/** Whether a record can carry a label. */
export function isLabelled(record: AnyRecord): record is RecordOf<LabelledKind> {
  return kindOf(record).label;
}

/** Whether a person may change something of a record. */
export function isEditable(record: AnyRecord): record is RecordOf<EditableKind> {
  return kindOf(record).edit;
}

/** What a table with an entry for each of some kinds says of a record of one of them. */
export function byKind<K extends KindName, Out, More extends readonly unknown[]>(
  table: { readonly [P in K]: (record: RecordOf<P>, ...more: More) => Out },
  record: RecordOf<K>,
  ...more: More
): Out {
  const entry = table[record.kind as K] as (record: RecordOf<K>, ...more: More) => Out; // the entry of its own kind
  return entry(record, ...more);
}
