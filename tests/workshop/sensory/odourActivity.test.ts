import { beforeEach, describe, expect, test } from 'vitest';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { odourActivities, partsForSwap, thresholdInWater } from '../../../src/workshop/sensory/odourActivity';

const smelled = (
  id: string,
  ...thresholds: readonly (readonly [medium: string, low: number, high: number, unit: string])[]
) =>
  newRecord('material', {
    id,
    name: id,
    code: id.toUpperCase(),
    sort: 'substance',
    form: 'liquid',
    cautions: [],
    thresholds: thresholds.map(([medium, low, high, unit]) => ({
      medium,
      kind: 'detection',
      low,
      high,
      unit,
      source: 'test',
    })),
  } as never);

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([
    smelled('strong', ['water', 1, 2, 'µg/kg'], ['water', 4, 4, 'µg/L'], ['air', 0.001, 0.001, 'mg/m³']),
    smelled('middle', ['water', 0.01, 0.02, 'mg/kg']),
    smelled('weak', ['water', 5, 5, 'mg/L']),
    smelled('open', ['air', 1, 1, 'mg/m³']),
  ]);
});

const lines = (mgPerKg: number) =>
  ['weak', 'open', 'middle', 'strong'].map((name) => ({ material: name, name, mgPerKg }));

describe('dose over threshold', () => {
  test('takes all thresholds in water, in mg/kg, and none in air', () => {
    expect(thresholdInWater('strong')).toEqual({ low: 0.001, high: 0.004 });
    expect(thresholdInWater('open')).toBeNull();
  });

  test('is an order with the places that the ranges leave open, and what is not known last', () => {
    const all = odourActivities(lines(1));
    expect(all.map(({ name, places }) => [name, places?.from, places?.to])).toEqual([
      ['strong', 1, 1],
      ['middle', 2, 2],
      ['weak', 3, 3],
      ['open', undefined, undefined],
    ]);
    expect(all[0]!.times).toEqual({ low: 250, high: 1000 });
    const near = odourActivities([
      { material: 'strong', name: 'strong', mgPerKg: 0.2 }, // 50 to 200
      { material: 'middle', name: 'middle', mgPerKg: 1 }, // 50 to 100
    ]);
    expect(near.map(({ places }) => places)).toEqual([
      { from: 1, to: 2 },
      { from: 1, to: 2 },
    ]);
  });

  test('what is swapped in takes as many times the parts as its threshold is higher, within both ranges', () => {
    expect(partsForSwap('middle', 'weak')).toEqual({ low: 250, high: 500 });
    expect(partsForSwap('middle', 'open')).toBeNull();
  });
});
