import { beforeEach, describe, expect, test } from 'vitest';
import { measured, standardUncertainty } from '../../src/core/number/measured';
import type { Supply } from '../../src/records/kind/supply';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { leftOf, runsLow } from '../../src/records/stock';
import { useByOf, useByOfDilution } from '../../src/workshop/useBy';
import { vialOf } from '../tasks/count/countShelf';

const at = (day: string) => `${day}T10:00:00.000Z`;
const material = (family: string) =>
  newRecord('material', {
    id: family,
    name: family,
    code: 'X',
    sort: 'natural' as const,
    form: 'liquid' as const,
    cautions: [],
    family,
  });
const bottle = (facts: object = {}) => ({
  ...newRecord('bottle', { id: 'b', material: 'oil', supplier: '', lot: '', grade: 'fit for drinks' }),
  made: at('2026-01-10'),
  ...facts,
});
const vial = (id: string, massG: number, day: string) => ({
  ...vialOf(id, 0.01, { massG: 8 }),
  made: at(day),
  uses: [{ id: 'b', massG }],
});

const pack = (id: string, day: string) =>
  ({
    ...newRecord('supply', {
      id,
      name: 'ethanol',
      sort: 'solvent' as const,
      solvent: 'ethanol-96',
      unit: 'g' as const,
      amount: 800,
      supplier: '',
      lot: '',
    }),
    made: at(day),
  }) as Supply;

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('oil'), material('citrus oil'), material('aldehyde')]);
});

describe('the amount left', () => {
  test('in a bottle follows what vials took of it, archived ones too', () => {
    takeIn([vial('v1', 0.3, '2026-02-01'), { ...vial('v2', 0.2, '2026-03-01'), archived: at('2026-04-01') }]);
    expect(leftOf(bottle({ amountG: 9 }))!.value).toBeCloseTo(8.5, 12);
  });

  test('is not known for a bottle whose amount nobody typed', () => {
    expect(leftOf(bottle())).toBeNull();
    expect(runsLow(bottle())).toBe(false);
  });

  test('is what the scale said, less what was taken since', () => {
    takeIn([vial('v1', 0.3, '2026-02-01'), vial('v2', 0.2, '2026-03-01')]);
    const weighed = [{ at: at('2026-02-15'), left: measured(7, 0.01, { id: 's', words: '' }) }];
    const left = leftOf(bottle({ amountG: 9, weighed }))!;
    expect(left.value).toBeCloseTo(6.8, 12);
    expect(standardUncertainty(left)).toBeCloseTo(Math.hypot(0.01, 0.05 * 0.2), 12);
  });

  test('of a solvent counts what the vials hold beside the material, from the pack of their time', () => {
    const [first, later] = [pack('p1', '2026-01-01'), pack('p2', '2026-02-15')];
    takeIn([first, later, vial('v1', 0.3, '2026-02-01'), vial('v2', 0.2, '2026-03-01')]);
    expect(leftOf(first)!.value).toBeCloseTo(800 - 7.7, 9);
    expect(leftOf(later)!.value).toBeCloseTo(800 - 7.8, 9);
  });

  test('of a bottle of solvent that vials name is theirs alone, whatever bottle came later', () => {
    const [first, later] = [pack('p1', '2026-01-01'), pack('p2', '2026-02-15')];
    const named = vial('v1', 0.3, '2026-03-01');
    const poured = { ...named, uses: [...named.uses, { id: 'p1', massG: 7.7 }] };
    takeIn([first, later, poured]);
    expect(leftOf(first)!.value).toBeCloseTo(800 - 7.7, 9);
    expect(leftOf(later)!.value).toBeCloseTo(800, 9);
  });

  test('is low below 15 % of what there was, or below what the person set', () => {
    takeIn([vial('v1', 7.7, '2026-02-01')]);
    expect(runsLow(bottle({ amountG: 9 }))).toBe(true);
    expect(runsLow(bottle({ amountG: 9, lowAt: 1 }))).toBe(false);
    expect(leftOf(vialOf('x', 0.1, { massG: 5 }))).toEqual(measured(5, 0, { id: 'making:x', words: '' }));
  });
});

describe('the last day of use', () => {
  test('is the one on the label, where there is one', () => {
    expect(useByOf(bottle({ useBy: '2027-01-01' }))).toEqual({ day: '2027-01-01', words: 'as the label says' });
  });

  test('of an oil follows its kind, from the day it was opened', () => {
    expect(useByOf(bottle({ opened: '2026-01-31' }))!.day).toBe('2027-01-31');
    expect(useByOf(bottle({ material: 'citrus oil', received: '2026-01-31' }))!.day).toBe('2026-07-31');
  });

  test('is not made up where nothing is known', () => {
    expect(useByOf(bottle({ material: 'aldehyde' }))).toBeNull();
  });

  test('of a dilution follows solvent and kind, and never outlives the bottle; common practice says so', () => {
    const made = { madeOn: '2026-03-01', source: null };
    expect(useByOfDilution({ ...made, families: ['oil'], liquid: 'ethanol' }).day).toBe('2027-03-01');
    expect(useByOfDilution({ ...made, families: ['aldehyde'], liquid: 'ethanol' })).toMatchObject({
      day: '2026-06-01',
    });
    expect(useByOfDilution({ ...made, families: ['oil'], liquid: 'water' as const }).day).toBe('2026-03-04');
    expect(useByOfDilution({ ...made, families: [], liquid: 'triacetin' }).words).toContain('common practice');
    const old = useByOf(bottle({ material: 'citrus oil', received: '2026-01-31' }));
    expect(useByOfDilution({ ...made, source: old, families: ['citrus oil'], liquid: 'ethanol' }).day).toBe(
      '2026-07-31',
    );
  });
});
