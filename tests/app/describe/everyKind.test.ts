import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { describe as wordsOf } from '../../../src/app/describe/describe';
import { searchShelf } from '../../../src/app/describe/shelfIndex';
import { editables } from '../../../src/app/edit/editable';
import { isLabelled, kindNames, kindOf, kinds, type AnyRecord } from '../../../src/records/kind/kinds';
import { versionOf, type Stored } from '../../../src/records/kind/record';
import { parentsOf } from '../../../src/records/lineage';
import { shelf, takeIn } from '../../../src/records/shelf';
import { solvents } from '../../../src/tables/solvents';
import { calledOf, tagOf } from '../../../src/workshop/thing/labelled';

const folder = resolve(import.meta.dirname, '../../fixtures/backups');
const stored = readdirSync(folder).flatMap(
  (name): Stored[] => JSON.parse(readFileSync(join(folder, name), 'utf8')).records,
);
const samples = stored.map(({ id, kind }) => [kind, id] as const);
const sample = (id: string): AnyRecord => shelf.records.value.get(id)!;
const found = (query: string) => searchShelf(query, 200).map(({ id }) => id);

beforeAll(() => takeIn(stored));

describe.each(kindNames)('%s', (name) => {
  test('is named, and its version is one more than its upgrades', () => {
    const { kind, words, upgrades } = kinds[name];
    expect(kind).toBe(name);
    expect(words.one).toMatch(/^[A-Z][a-z ]+$/);
    expect(words.many).toMatch(/^[A-Z][a-z, ]+$/);
    expect(versionOf(kinds[name])).toBe(upgrades.length + 1);
  });
});

describe.each(samples)('a stored %s', (kind, id) => {
  test('is read as it was written', () => {
    expect(shelf.unreadable.value).toEqual([]);
    expect(sample(id)).toEqual(stored.find((one) => one.id === id));
  });

  test('has a title, and no fact of it is empty', () => {
    const { title, facts = [] } = wordsOf(sample(id));
    expect(title).not.toBe('');
    expect(facts.filter(([label, text]) => label === '' || text === '')).toEqual([]);
  });

  test('comes from what is there, or from a solvent of the table', () => {
    const descent = kindOf(sample(id)).descent?.(sample(id));
    const ids = descent ? [...(descent.isIn ?? []).map((part) => part.id), ...descent.ledTo] : [];
    const known = new Set([...shelf.records.value.keys(), ...solvents.map((solvent) => solvent.id)]);
    expect(ids.filter((one) => !known.has(one))).toEqual([]);
    expect(parentsOf(id)).toEqual(expect.arrayContaining(ids.filter((one) => shelf.records.value.has(one))));
  });

  test('is found by its title and by every text of its kind, or by none', () => {
    const record = sample(id);
    const texts = kindOf(record).search?.(record);
    if (!texts) expect(found(wordsOf(record).title)).not.toContain(id);
    else
      for (const text of [wordsOf(record).title, ...texts.map(([one]) => one)].filter((one) => one.trim() !== ''))
        expect([text, found(text.trim().split(/\s+/)[0]!)]).toEqual([text, expect.arrayContaining([id])]);
  });

  test('is labelled and changed if its kind says so, and only then', () => {
    const record = sample(id);
    expect(editables(record).length > 0).toBe(kindOf(record).edit);
    if (isLabelled(record)) expect([calledOf(record).code, calledOf(record).name, tagOf(record)]).not.toContain('');
    expect(kindOf(record).shelf?.([record]) ?? [record]).toEqual([record]);
    expect(record.kind).toBe(kind);
  });
});

test('a record of a kind that every object has as a member is kept unread', () => {
  takeIn([{ id: 'odd', kind: 'toString', v: 1 }]);
  expect(shelf.unreadable.value.map(({ raw }) => raw.id)).toEqual(['odd']);
  expect(shelf.records.value.has('odd')).toBe(false);
});
