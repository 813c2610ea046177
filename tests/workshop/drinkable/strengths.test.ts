import { beforeEach, describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import type { Batch } from '../../../src/records/kind/batch';
import type { Tasting } from '../../../src/records/kind/drink';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { alcoholIsUnknownOf, alcoholText } from '../../../src/workshop/drinkable/alcoholOf';
import { overLines } from '../../../src/workshop/drinkable/overNow';
import { partsOfBatch, partsOfTasting } from '../../../src/workshop/drinkable/partsOfDrink';
import { vialRecord } from '../../browser/benchRecords';

const DENSITY = 0.7892391; // g/mL of ethanol at 20 °C (OIML R 22 gives 789.24 kg/m³)

const facts = (id: string) => ({
  name: id,
  density: { gPerMl: 1, atC: 20, source: '' },
  food: true,
  dryOff: 'unknown' as const,
});

/** A solvent of one's own, with the alcohol that was said of it, mL/mL; none said where left out. */
const solvent = (id: string, abv?: number) =>
  newRecord('solvent', { id, ...facts(id), ...(abv === undefined ? {} : { abv }) } as never);

/** A vial of 10 % sage oil in a solvent of one's own; its copy says what was known when it was made. */
const vial = (id: string, copy: { abv?: number } = {}) =>
  ({
    ...vialRecord({ code: 'SAGE', name: 'sage oil', solvent: 'propylene-glycol' }),
    id: `v-${id}`,
    densityGPerMl: 1,
    contents: [{ material: 'sage', name: 'sage oil', strength: exact(0.1) }],
    solvent: { id, ...facts(id), ...copy },
  }) as never;

const how = 'counted' as const;

/** 100 mL of water with a gram of each of these vials: 0.9 g of solvent from each. */
const drink = (ids: readonly string[], more: object = {}): Tasting =>
  newRecord('tasting', {
    base: { name: 'water', volumeMl: 100, brix: 0, abv: 0, densityGPerMl: 1 },
    doses: ids.map((id) => ({ vial: `v-${id}`, code: 'SAGE', drops: 40, massG: exact(1) })),
    reached: [{ material: 'sage', name: 'sage oil', mgPerKg: exact(1000) }],
    verdict: '',
    liking: null,
    uses: ids.map((id) => ({ id: `v-${id}`, massG: 1, how })),
    ...more,
  } as never);

/** % vol that so many g of ethanol make in the drink with n vials. */
const percent = (grams: number, n: number) => (100 * grams) / DENSITY / (100 + n);

/** The least and the most % vol. */
const between = (record: Tasting | Batch) => {
  const { drink: finished, mostAbv } = record.kind === 'batch' ? partsOfBatch(record) : partsOfTasting(record);
  return [finished.abv, mostAbv] as const;
};

beforeEach(() => {
  shelf.records.value = new Map();
  const sage = { id: 'sage', name: 'sage oil', code: 'SA', cas: '', botanical: 'Salvia officinalis', sort: 'natural' };
  takeIn([newRecord('material', { ...sage, form: 'liquid', cautions: [] } as never)]);
});

describe('the strength of a dosed drink with solvents of the person’s own', () => {
  test('of one that was said to hold none is 0, also beside one that is not known', () => {
    takeIn([solvent('none', 0), solvent('open'), vial('none'), vial('open')]);
    expect(between(drink(['none']))).toEqual([0, 0]);
    expect(alcoholIsUnknownOf(drink(['none']))).toBe(false);
    const [least, most] = between(drink(['none', 'open']));
    expect(least).toBe(0);
    expect(most).toBeCloseTo(percent(0.9, 2), 6); // 1.118: only what is not known counts as ethanol
    expect(alcoholIsUnknownOf(drink(['none', 'open']))).toBe(true);
    expect(overLines(drink(['none', 'open'])).filter((line) => line.includes('EU limit of thujone'))).toEqual([]);
  });

  test('of two that are not known both may be ethanol: above 1.2 % vol the thujone of sage has a limit', () => {
    takeIn([solvent('a'), solvent('b'), vial('a'), vial('b')]);
    expect(between(drink(['a', 'b']))[1]).toBeCloseTo(percent(1.8, 2), 6);
    expect(overLines(drink(['a', 'b']))).toContainEqual(expect.stringMatching(/EU limit of thujone/));
  });

  test('counts what is known of one in the least, too, where another is not known', () => {
    takeIn([solvent('half', 0.5), solvent('open'), vial('half'), vial('open')]);
    const [least, most] = between(drink(['half', 'open']));
    expect(least).toBeCloseTo(percent(0.9 * 0.4244, 2), 3); // 50 % vol is 42.44 % by mass
    expect(most).toBeCloseTo(percent(0.9 * 0.4244 + 0.9, 2), 3);
  });

  test('counts the drink before it, thinned by what was dosed', () => {
    takeIn([solvent('none', 0), vial('none')]);
    const base = { name: 'wine', volumeMl: 100, brix: 0, abv: 10, densityGPerMl: 1 };
    expect(between(drink(['none'], { base }))[0]).toBeCloseTo(1000 / 101, 6);
  });

  test('of one that was erased is not known, never 0; unless the vial itself says it', () => {
    takeIn([vial('gone'), vial('none', { abv: 0 }), vial('half', { abv: 0.5 })]);
    expect(between(drink(['gone']))[1]).toBeCloseTo(percent(0.9, 1), 6);
    expect(alcoholIsUnknownOf(drink(['gone']))).toBe(true);
    expect(between(drink(['none']))).toEqual([0, 0]);
    const [least, most] = between(drink(['half']));
    expect([least, most]).toEqual([least, least]);
    expect(least).toBeCloseTo(percent(0.9 * 0.4244, 1), 3);
  });

  test('of a vial that was erased nothing is known: all of it may be ethanol', () => {
    expect(between(drink(['erased']))[1]).toBeCloseTo((100 * 1) / DENSITY / 100, 6);
    expect(alcoholIsUnknownOf(drink(['erased']))).toBe(true);
  });

  test('that was worked out when it was dosed stays so, whatever is erased since', () => {
    takeIn([vial('gone')]);
    expect(between(drink(['gone'], { abv: exact(0.3) }))).toEqual([0.3, 0.3]);
    expect(between(drink(['erased'], { abv: exact(0.3) }))).toEqual([0.3, 0.3]);
  });
});

describe('what the first version kept was without the alcohol of the person’s own solvents', () => {
  const old = (ids: readonly string[], abv: number) =>
    drink(ids, { abv: exact(abv), uses: ids.map((id) => ({ id: `v-${id}`, massG: 1 })) });

  test('not known: it may be ethanol; said since: so much more; none said since, or of the table: it stays', () => {
    takeIn([solvent('open'), vial('open'), solvent('half', 0.5), vial('half'), solvent('none', 0), vial('none')]);
    expect(between(old(['open'], 0.1))[1]).toBeCloseTo(0.1 + percent(0.9, 1), 6);
    expect(between(old(['half'], 0.1))[0]).toBe(0.1);
    expect(between(old(['half'], 0.1))[1]).toBeCloseTo(0.1 + percent(0.9 * 0.4244, 1), 3);
    expect(between(old(['none'], 0.1))).toEqual([0.1, 0.1]);
    takeIn([{ ...(vial('none') as object), id: 'v-table', solvent: { id: 'ethanol-96', ...facts('x') } } as never]);
    expect(between(old(['table'], 0.1))).toEqual([0.1, 0.1]); // that of the table was counted
  });

  test('so is an erased one', () => {
    takeIn([vial('gone')]);
    expect(between(old(['gone'], 0))[1]).toBeCloseTo(percent(0.9, 1), 6);
    expect(alcoholIsUnknownOf(old(['gone'], 0))).toBe(true);
  });
});

describe('the strength of a batch', () => {
  const weighed = (id: string, grams: number, source: string | null = null, into = 'concentrate') => ({
    into,
    id,
    name: id,
    source,
    lot: '',
    plannedG: grams,
    massG: exact(grams),
  });

  /** A litre of drink with 20 g of a concentrate, of which `grams` are the carrier. */
  const batchOf = (carrier: string, more: { abvUnknown?: true; old?: true; extra?: object[] } = {}): Batch =>
    newRecord('batch', {
      code: 'B1',
      name: 'trial',
      formula: { id: 'f', name: 'f', version: 1 },
      lines: [],
      asked: { carrier },
      weighed: [
        weighed('sage', 0.1, null),
        weighed(carrier, 19.9),
        ...(more.extra ?? []),
        weighed('concentrate', 20, null, 'drink'),
      ],
      drink: {
        litres: exact(1),
        brix: exact(8),
        abv: exact(0.4),
        ...(more.abvUnknown ? { abvUnknown: true } : {}),
        densityGPerMl: exact(1.03),
        emulsion: false,
      },
      reached: [{ material: 'sage', name: 'sage oil', mgPerKg: exact(0.1e6 / 1030), mgPerL: exact(100) }],
      checks: [],
      jurisdiction: 'EU',
      madeOn: '2026-11-30',
      notes: '',
      uses: [{ id: 'b', massG: 0.1, ...(more.old ? {} : { how: 'weighed' }) }],
    } as never);

  const percentOf = (grams: number) => (100 * grams) / DENSITY / 1000;

  test('is as it was kept where everything in it was known, whatever is erased since', () => {
    expect(between(batchOf('gone'))).toEqual([0.4, 0.4]);
    expect(alcoholText(batchOf('gone'))).toBe('0.4 % ABV');
  });

  test('with a carrier that is not known has all of it as ethanol at most; erased, it still has', () => {
    takeIn([solvent('open')]);
    for (const carrier of ['open', 'gone']) {
      const made = batchOf(carrier, { abvUnknown: true });
      expect(between(made)[0]).toBe(0.4);
      expect(between(made)[1]).toBeCloseTo(0.4 + percentOf(19.9), 6);
      expect(alcoholText(made)).toBe('not known');
    }
  });

  test('is known again once it was said that the carrier holds none', () => {
    takeIn([solvent('none', 0)]);
    expect(between(batchOf('none', { abvUnknown: true }))).toEqual([0.4, 0.4]);
    expect(alcoholText(batchOf('none', { abvUnknown: true }))).toBe('0.4 % ABV');
  });

  test('of the first version is without a carrier of the person’s own, known since or erased; not without one of the table', () => {
    takeIn([solvent('half', 0.5)]);
    expect(between(batchOf('half', { old: true }))[1]).toBeCloseTo(0.4 + percentOf(19.9 * 0.4244), 2);
    expect(between(batchOf('gone', { old: true }))[1]).toBeCloseTo(0.4 + percentOf(19.9), 6);
    expect(between(batchOf('ethanol-96', { old: true }))).toEqual([0.4, 0.4]);
    expect(between(batchOf('propylene-glycol', { old: true }))).toEqual([0.4, 0.4]);
  });

  test('counts what vials brought, and all of one that is gone', () => {
    takeIn([vial('open'), solvent('open')]);
    const extra = [weighed('citric-acid', 1, null, 'syrup'), weighed('sage', 2, 'v-open', 'syrup')];
    const made = batchOf('propylene-glycol', { abvUnknown: true, extra });
    expect(between(made)[1]).toBeCloseTo(0.4 + percentOf(1.8), 6);
    const lost = batchOf('propylene-glycol', { abvUnknown: true, extra: [weighed('sage', 2, 'v-erased', 'syrup')] });
    expect(between(lost)[1]).toBeCloseTo(0.4 + percentOf(2), 6);
  });
});
