import { expect, expectTypeOf, test } from 'vitest';
import { byKind, kinds, type EditableKind, type LabelledKind } from '../../../src/records/kind/kinds';
import type { AnyRecord, OwnPageKind, RecordOf } from '../../../src/records/kind/kinds';
import { everyOne, madeOf, type Kind } from '../../../src/records/kind/record';
import { newRecord } from '../../../src/records/shelf';

/**
 * What must not compile. Each line below `@ts-expect-error` is refused by the type check (npx tsc --noEmit), which in turn fails where
 * one of them is taken: that is the proof, the expectations only keep the rows in use.
 */
type Vial = RecordOf<'vial'>;
const whole = {
  kind: 'vial',
  schema: kinds.vial.schema,
  upgrades: [],
  words: { one: 'Vial', many: 'Vials' },
  shelf: everyOne,
  descent: ({ solvent }) => madeOf(...(solvent ? [solvent.id] : [])),
  search: () => [],
  label: true,
  edit: true,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Vial>;

test('a kind without one of its parts does not compile', () => {
  const row = (kind: Kind<Vial>) => Object.keys(kind);
  const { words, ...noWords } = whole;
  const { shelf, ...noShelf } = whole;
  const { descent, ...noDescent } = whole;
  const { search, ...noSearch } = whole;
  const { label, ...noLabel } = whole;
  const { edit, ...noEdit } = whole;
  const { repeat, ...noRepeat } = whole;
  const { page, ...noPage } = whole;
  expect(row(whole)).toEqual(Object.keys(kinds.vial));
  expect([words.one, shelf, descent, search, label, edit, repeat, page]).not.toContain(undefined);
  // @ts-expect-error without words
  expect(row(noWords)).not.toContain('words');
  // @ts-expect-error without a word on the Shelf
  expect(row(noShelf)).not.toContain('shelf');
  // @ts-expect-error without descent
  expect(row(noDescent)).not.toContain('descent');
  // @ts-expect-error without search texts
  expect(row(noSearch)).not.toContain('search');
  // @ts-expect-error without a word on labels
  expect(row(noLabel)).not.toContain('label');
  // @ts-expect-error without a word on changing it
  expect(row(noEdit)).not.toContain('edit');
  // @ts-expect-error without a word on repeating it
  expect(row(noRepeat)).not.toContain('repeat');
  // @ts-expect-error without a page
  expect(row(noPage)).not.toContain('page');
  // @ts-expect-error under another kind's name
  expect(row({ ...whole, kind: 'bottle' })).toEqual(row(whole));
});

test('a kind that says yes to something does not compile without its entry, and one that says no needs none', () => {
  type Table<K extends keyof typeof kinds> = { readonly [P in K]: (record: RecordOf<P>) => string };
  const vial: Table<'vial'>['vial'] = ({ code }) => code;
  const bottle: Table<'bottle'>['bottle'] = ({ lot }) => lot;
  const labels: Table<LabelledKind> = { vial, bottle, batch: ({ name }) => name };
  // @ts-expect-error a batch can carry a label
  const short: Table<LabelledKind> = { vial, bottle };
  // @ts-expect-error a dropper can be changed
  const edits: Table<EditableKind> = { vial, bottle, material: () => '', supply: () => '' };
  // @ts-expect-error a calibration has a page of its own, and others
  const pages: Table<OwnPageKind> = { vial, bottle };
  expect([short, edits, pages].map((table) => 'batch' in table)).toEqual([false, false, false]);
  expectTypeOf<'supply' | 'dropper' | 'run' | 'settings'>().toExtend<Exclude<keyof typeof kinds, OwnPageKind>>();
  const dropper = newRecord('dropper', { name: 'P1', tip: 'glass' });
  // @ts-expect-error a dropper carries no label
  expect(() => byKind(labels, dropper)).toThrow(TypeError);
});

test('a record of any kind is narrowed by its kind alone', () => {
  const record: AnyRecord = newRecord('dropper', { name: 'P1', tip: 'glass' });
  const tip = (one: AnyRecord) => (one.kind === 'dropper' ? one.tip : '');
  expect(tip(record)).toBe('glass');
  // @ts-expect-error not every kind has a tip
  expect(((one: AnyRecord) => one.tip)(record)).toBe('glass');
});
