import { beforeEach, describe, expect, test } from 'vitest';
import { describe as wordsOf } from '../../../src/app/describe/describe';
import { searchShelf } from '../../../src/app/describe/shelfIndex';
import { dueThings, toBuy, unjudged } from '../../../src/app/nav/watch';
import { kindOf, type AnyRecord } from '../../../src/records/kind/kinds';
import { readRecord } from '../../../src/records/kind/record';
import { newRecord, shelf } from '../../../src/records/shelf';
import { today } from '../../../src/workshop/today';
import { material } from '../../tasks/count/countShelf';

const bottle = (id: string, facts: object) => ({
  ...newRecord('bottle', { id, material: 'card', supplier: 'Pebblewick', lot: id, grade: 'fit for drinks' }),
  ...facts,
});
const layering = newRecord('layering', {
  id: 'L1',
  name: 'PGF + HEX3',
  strips: [{ vial: 'x', code: 'PGF', dips: 1, family: 'none', dippedAt: null, takenOutAt: null }],
  readings: [],
  verdict: { decision: 'keep', liking: 5, words: '', vials: [] },
});
Object.defineProperty(layering, 'roomC', {
  get: () => {
    throw new RangeError('planted');
  },
});

beforeEach(() => {
  const records: AnyRecord[] = [
    material('card'),
    layering,
    bottle('sound', { useBy: today(3), buy: true }),
    bottle('minus', { useBy: today(4), amountG: -1 }),
    bottle('undated', { useBy: '10/2026', amountG: 5 }),
  ];
  shelf.records.value = new Map(records.map((one) => [one.id, one])); // past the schemas, which take none of it
});

describe('a record with a value that nothing is prepared for', () => {
  test('comes into no store: the schemas take none of them, and a fault of the program is planted here', () => {
    const records = [...shelf.records.value.values()];
    expect(records.filter((one) => !readRecord(kindOf(one), one).ok).map(({ id }) => id)).toEqual(['minus', 'undated']);
  });

  test('is described by its kind and id, with what it broke on', () => {
    const { title, line, fault } = wordsOf(layering);
    expect([title, line]).toEqual(['layering L1', 'cannot be shown']);
    expect(fault?.error).toBeInstanceOf(RangeError);
    expect(wordsOf(shelf.records.value.get('sound')!).fault).toBeUndefined();
  });

  test('does not take the search with it', () => {
    expect(searchShelf('Pebblewick', 9).length).toBe(3);
    expect(searchShelf('L1', 9).map(({ id }) => id)).toContain('L1');
  });

  test('leaves the lists of what is due and what to buy as they are, and is named beside them', () => {
    expect(dueThings().map(({ record }) => record.id)).toEqual(['sound', 'minus']);
    expect(toBuy().map(({ id }) => id)).toEqual(['sound']);
    expect(
      unjudged()
        .map(({ record }) => record.id)
        .sort(),
    ).toEqual(['minus', 'undated']);
  });
});
