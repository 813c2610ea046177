import { describe, expect, test } from 'vitest';
import { contributions, summed, type Contribution, type DrinkMaterial } from '../../../src/core/limits/exposure';
import { AT, NEAR, stateOf, STATES, worstFirst, worstState, type Finding } from '../../../src/core/limits/finding';
import type { Figure } from '../../../src/core/limits/figure';
import { ceilings } from '../../../src/core/limits/highestDose';
import { exact, measured } from '../../../src/core/number/measured';

const figure: Figure = { source: 'law', asOf: '2008', level: 'primary' };
const material = (name: string, cas: string, mgPerKg: number, more: Partial<DrinkMaterial> = {}): DrinkMaterial => ({
  id: name,
  name,
  cas: [cas],
  mgPerKg: exact(mgPerKg),
  constituents: [],
  natural: false,
  ...more,
});
const [part] = contributions([material('one', '1-00-0', 1)]) as [Contribution];
const state = (value: number, max: number, u = 0) =>
  stateOf(u > 0 ? measured(value, u, { id: 'scale', words: 'scale' }) : exact(value), max, { figure, from: [part] });

describe('an amount beside its maximum', () => {
  test('is at it within half of one in the fourth digit, that included: 1999 to 2001 of 2000', () => {
    expect([1999, 2000, 2001].map((value) => state(value, 2000))).toEqual(['at', 'at', 'at']);
    expect([1998.9, 2001.1].map((value) => state(value, 2000))).toEqual(['near', 'over']);
    expect(AT * 2000).toBe(1);
  });

  test('is near from four fifths of it, that included', () => {
    expect([NEAR * 100, 79.9].map((value) => state(value, 100))).toEqual(['near', 'within']);
  });

  test('is near where its ± at k = 2 reaches over it; one that ends at the maximum does not', () => {
    expect(state(70, 100, 15)).toBe('within'); // 70 ± 30
    expect(state(70, 100, 15.1)).toBe('near');
  });
});

describe('the order of findings', () => {
  const finding = (one: Finding['state'], more: Partial<Finding> = {}): Finding => ({
    check: 'limit',
    state: one,
    what: one,
    amount: exact(1),
    fixed: exact(0),
    max: 2,
    unit: 'mg/kg',
    from: [part],
    figure,
    rule: '',
    ...more,
  });

  test('is the worst first, however they came', () => {
    const sorted = (all: readonly Finding['state'][]) => all.map((one) => finding(one)).sort(worstFirst);
    const words = (all: readonly Finding[]) => all.map((one) => one.state);
    expect(words(sorted([...STATES].reverse()))).toEqual(STATES);
    expect(words(sorted(['within', 'over', 'check', 'prohibited', 'near']))).toEqual([
      'prohibited',
      'over',
      'near',
      'check',
      'within',
    ]);
    expect(worstState([finding('within'), finding('check'), finding('over')])).toBe('over');
  });

  test('a highest dose is given only where something follows the dose, and more than what is fixed', () => {
    const times = (more: Partial<Finding>) => ceilings([finding('within', more)], 10).map((one) => one.times);
    expect(times({})).toEqual([2]);
    expect(times({ fixed: exact(1) })).toEqual([]); // the amount is all fixed
    const fixed = contributions([material('acid', '2-00-0', 1, { fixed: true })]);
    expect(times({ from: fixed, fixed: exact(1 - 1e-12) })).toEqual([]); // what is left is rounding
    expect(times({ max: null })).toEqual([]);
    expect(times({ state: 'label' })).toEqual([]);
  });
});

describe('what counts against a row', () => {
  const oil = (name: string, cas: string, botanical?: string): DrinkMaterial => ({
    ...material(name, cas, 100),
    ...(botanical === undefined ? {} : { botanical }),
    natural: true,
    constituents: [{ cas: '94-59-7', name: 'safrole', share: 0.1 as never, confirmed: true, open: false, from: '' }],
  });
  const parts = contributions([
    oil('camphor', '8008-51-3', 'Cinnamomum camphora'),
    oil('nutmeg', '8008-45-5', 'Myristica fragrans'),
    oil('unnamed', '8008-51-3'),
  ]);
  const from = (row: { via?: readonly string[]; viaPlants?: readonly string[] }) =>
    summed(parts, { cas: ['94-59-7'], ...row }).from.map((one) => one.material);

  test('comes from all, or from materials with a number, or of a plant, of which one is enough', () => {
    expect(from({})).toEqual(['camphor', 'nutmeg', 'unnamed']);
    expect(from({ via: ['8008-51-3'] })).toEqual(['camphor', 'unnamed']);
    expect(from({ viaPlants: ['Myristica fragrans'] })).toEqual(['nutmeg']);
    expect(from({ via: ['8008-51-3'], viaPlants: ['Myristica fragrans'] })).toEqual(['camphor', 'nutmeg', 'unnamed']);
    expect(from({ via: ['1-00-0'] })).toEqual([]);
  });
});
