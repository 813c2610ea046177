import { beforeEach, describe, expect, test } from 'vitest';
import { bookTable, narrowed } from '../../src/app/describe/bookEntries';
import { editables } from '../../src/app/edit/editable';
import { recordTable } from '../../src/app/record/paper';
import { searchShelf } from '../../src/app/describe/shelfIndex';
import { dueThings, toBuy } from '../../src/app/nav/watch';
import type { Run } from '../../src/records/kind/run';
import { kindOf, type AnyRecord } from '../../src/records/kind/kinds';
import { readRecord } from '../../src/records/kind/record';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { today } from '../../src/workshop/today';
import { material, vialOf } from '../tasks/count/countShelf';

const bottle = (id: string, facts: object = {}) => ({
  ...newRecord('bottle', {
    id,
    from: ['card'],
    material: 'card',
    supplier: 'Pebblewick',
    lot: id,
    grade: 'fit for drinks',
  }),
  ...facts,
});
const vial = {
  ...vialOf('hex', 0.01),
  from: ['A1'],
  uses: [{ id: 'A1', massG: 0.1 }],
  name: '=HYPERLINK("x")',
  madeOn: '2026-04-30',
};
const run = (id: string, task: string, kept: string[], title: string): Run =>
  newRecord('run', { id, task, kept, title, endedAt: '2026-05-01T10:00:00Z' });
const runs = [
  run('r3', 'layer', [], 'Layer · CARD + PGF'),
  run('r2', 'dilute', ['hex'], 'Dilute · card oil'),
  run('r1', 'dilute', ['pgf'], 'Dilute · grapefruit oil'),
];

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('card'), material('pgf'), bottle('A1'), vial, vialOf('pgf', 0.01)]);
});
const ids = (found: readonly Run[]) => found.map(({ id }) => id);

describe('the Book', () => {
  test('is narrowed down by task, by material and by vial', () => {
    const all = { task: '', of: '', words: '' };
    expect(ids(narrowed(runs, all))).toEqual(['r3', 'r2', 'r1']);
    expect(ids(narrowed(runs, { ...all, task: 'dilute' }))).toEqual(['r2', 'r1']);
    expect(ids(narrowed(runs, { ...all, of: 'card' }))).toEqual(['r2']);
    expect(ids(narrowed(runs, { ...all, of: 'hex' }))).toEqual(['r2']);
  });

  test('is searched by words of the run and of what it ended in', () => {
    expect(ids(narrowed(runs, { task: '', of: '', words: 'grapefrut' }))).toEqual(['r1']);
    expect(ids(narrowed(runs, { task: '', of: '', words: 'HEX' }))).toEqual(['r2']);
  });

  test('finds a day as it is stored, of the run and of what it ended in', () => {
    const found = (words: string) => ids(narrowed(runs, { task: '', of: '', words }));
    expect(found('2026-05-01')).toEqual(['r3', 'r2', 'r1']);
    expect(found('2026-04-30')).toEqual(['r2']);
    expect(found('1999-05-01')).toEqual([]);
  });

  test('as a table names lots and runs nothing as a formula', () => {
    const table = bookTable(narrowed(runs, { task: 'dilute', of: 'card', words: '' }));
    expect(table).toContain('A1');
    expect(table).toContain(`"'=HYPERLINK`);
    expect(table.split('\r\n')).toHaveLength(3);
  });

  test('any record is a table too, with its ± and what it was made from', () => {
    const table = recordTable(vial);
    expect(table).toMatch(/Strength,[\d.]+,[\d.]+,% w\/w/);
    expect(table).toContain('Bottle,card oil');
  });
});

describe('the Shelf', () => {
  test('finds a bottle by lot, supplier and the name of its material', () => {
    expect(searchShelf('A1', 5)[0]!.id).toBe('A1');
    expect(searchShelf('pebblewik', 5).map(({ id }) => id)).toEqual(['A1']);
    expect(searchShelf('card oil', 5).map(({ id }) => id)).toContain('A1');
  });

  test('finds a vial by code and strength, with a point or a comma, before the same code in another strength', () => {
    const at = (id: string, value: number) => ({
      ...vialOf('card', value / 100),
      id,
      label: { value, basis: '% w/v' },
    });
    takeIn([at('strong', 1), at('weak', 0.1), at('weaker', 0.01)]);
    expect(searchShelf('card 0.1', 9).map(({ id }) => id)).toEqual(['weak']);
    expect(searchShelf('CARD 0,1 %', 9).map(({ id }) => id)).toEqual(['weak']);
    expect(searchShelf('card 1', 9)[0]!.id).toBe('strong');
    expect(searchShelf('card neat', 9).map(({ id }) => id)).toEqual(['A1']);
  });

  test('finds a bottle by a day of it, whole or from its year and month', () => {
    takeIn([bottle('A2', { received: '2025-03-09', opened: '2025-04-11' })]);
    for (const day of ['2025-03-09', '2025-04-11', '2025-04'])
      expect(searchShelf(day, 9).map(({ id }) => id)).toEqual(['A2']);
    expect(searchShelf('2025-05', 9)).toEqual([]);
  });

  test('finds what was put away, after what stands there', () => {
    takeIn([bottle('A2'), bottle('A0', { archived: '2026-01-01T00:00:00Z' })]);
    const found = searchShelf('pebblewick', 9).map(({ id }) => id);
    expect(found.at(-1)).toBe('A0');
    expect(found).toHaveLength(3);
  });

  test('follows a change at once', () => {
    const renamed = { ...material('card'), name: 'green cardamom oil' };
    takeIn([renamed]);
    expect(searchShelf('green', 5).map(({ id }) => id)).toContain('A1');
  });

  test('tells what is due, longest past first', () => {
    const due = { ...bottle('old'), useBy: '2020-01-01' };
    const soon = { ...bottle('soon'), useBy: today(3) };
    const later = { ...bottle('later'), useBy: today(300) };
    takeIn([soon, due, later]);
    expect(dueThings().map(({ record }) => record.id)).toEqual(['old', 'soon']);
    expect(dueThings()[1]!.days).toBe(3);
  });

  test('puts a bottle on the shopping list when it runs low and no other of its kind is full', () => {
    const nearly = { ...bottle('A1'), amountG: 0.11 };
    takeIn([nearly]);
    expect(toBuy().map(({ id }) => id)).toEqual(['A1']);
    takeIn([{ ...bottle('B2'), amountG: 10 } as AnyRecord]);
    expect(toBuy()).toEqual([]);
  });
});

describe('changing a record', () => {
  test.each([material('card'), bottle('A1', { amountG: 5, density: { gPerMl: 0.9, atC: 20, source: 'test' } }), vial])(
    'with nothing typed anew it stays as it is: $kind',
    (record) => {
      for (const { field, text, change } of editables(record)) {
        const answer = change(record, text);
        expect([field.name, answer.ok]).toEqual([field.name, true]);
        if (text !== '') expect(answer).toEqual({ ok: true, value: record });
      }
    },
  );

  test('an emptied answer takes the fact out, and the record can still be read', () => {
    const full = bottle('A1', {
      amountG: 5,
      box: 'A',
      received: '2026-01-01',
      density: { gPerMl: 0.9, atC: 20, source: 't' },
    });
    for (const record of [full, { ...material('card'), cas: '8000-66-6', also: ['x'] }, vial] as AnyRecord[])
      for (const { field, change } of editables(record)) {
        const answer = change(record, '');
        if (!answer.ok) continue;
        const read = readRecord(kindOf(record), answer.value);
        expect([field.name, read.ok]).toEqual([field.name, true]);
      }
  });

  test('another density becomes the person’s own, with that as its source', () => {
    const density = editables(bottle('A1')).find(({ field }) => field.name === 'density')!;
    expect(density.change(bottle('A1'), '0.91')).toMatchObject({
      value: { density: { gPerMl: 0.91, source: 'as typed by hand' } },
    });
  });
});
