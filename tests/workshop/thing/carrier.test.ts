import { beforeEach, describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { alcoholOfVial, bottlesOf, carriersOf, isCloudy, mostAlcoholOfVial } from '../../../src/workshop/thing/carrier';
import { ownAlcoholText } from '../../../src/workshop/thing/alcohol';
import { vialRecord } from '../../browser/benchRecords';

const facts = (id: string) => ({
  id,
  name: id,
  density: { gPerMl: 0.8, atC: 20, source: '' },
  food: true,
  dryOff: 'unknown' as const,
});

/** 10 g of a vial of 20 % in a solvent. */
const vial = (id: string, more: object = {}): Vial =>
  ({
    ...vialRecord({ code: id, name: id, solvent: 'propylene-glycol' }),
    id,
    massG: exact(10),
    densityGPerMl: 0.789,
    contents: [{ material: 'm', name: 'm', strength: exact(0.2) }],
    solvent: facts('propylene-glycol'),
    uses: [],
    ...more,
  }) as never;

const bottle = (id: string) =>
  newRecord('bottle', { id, material: 'm', supplier: '', lot: id, grade: 'fit for drinks' } as never);

const shares = (one: Vial) =>
  Object.fromEntries(carriersOf(one).map(({ id, share }) => [id, Number(share.toFixed(9))]));

beforeEach(() => {
  shelf.records.value = new Map();
});

describe('what the materials of a vial are in', () => {
  test('is what its strength leaves, or what it took leaves where that is on the Shelf', () => {
    takeIn([bottle('b')]);
    expect(shares(vial('a'))).toEqual({ 'propylene-glycol': 0.8 });
    expect(shares(vial('a', { uses: [{ id: 'b', massG: 3 }] }))).toEqual({ 'propylene-glycol': 0.7 });
    const pack = newRecord('supply', { id: 'pack', name: 'p', sort: 'solvent', unit: 'g', amount: 1 } as never);
    takeIn([pack]);
    const both = [
      { id: 'b', massG: 3 },
      { id: 'pack', massG: 7 },
    ];
    expect(shares(vial('a', { uses: both }))).toEqual({ 'propylene-glycol': 0.7 }); // a solvent is not what it took
  });

  test('of a dilution is its own and that of the vial it was made from, each once', () => {
    takeIn([vial('strong'), vial('other', { solvent: facts('triacetin') })]);
    const of = (id: string) => vial('weak', { uses: [{ id, massG: 5 }] });
    expect(shares(of('strong'))).toEqual({ 'propylene-glycol': 0.9 }); // half of it, and 0.8 of the other half
    expect(shares(of('other'))).toEqual({ 'propylene-glycol': 0.5, triacetin: 0.4 });
    const more = vial('more', { uses: [{ id: 'strong', massG: 12 }] }); // than it holds: its own is none, not less
    expect(shares(more)).toEqual({ 'propylene-glycol': 0.96 });
  });

  test('nothing that adding up leaves over counts, and a circle in a damaged backup is not walked for ever', () => {
    takeIn([bottle('b')]);
    expect(shares(vial('full', { uses: [{ id: 'b', massG: 10 }] }))).toEqual({});
    expect(shares(vial('trace', { uses: [{ id: 'b', massG: 10 - 1e-7 }] }))).toEqual({ 'propylene-glycol': 1e-8 });
    const ring = [vial('x', { uses: [{ id: 'y', massG: 5 }] }), vial('y', { uses: [{ id: 'x', massG: 5 }] })];
    takeIn(ring);
    expect(shares(ring[0]!)['propylene-glycol']).toBeGreaterThan(0.5);
    expect(bottlesOf(ring[0]!)).toEqual([]);
  });
});

describe('what is behind a vial', () => {
  test('are the bottles of all vials that it was made from, each once', () => {
    takeIn([bottle('b'), bottle('c')]);
    const uses = (...ids: string[]) => ({ uses: ids.map((id) => ({ id, massG: 1 })) });
    takeIn([vial('first', uses('b')), vial('second', uses('first', 'c'))]);
    const ids = (one: Vial) => bottlesOf(one).map(({ id }) => id);
    expect(ids(vial('third', uses('first', 'second')))).toEqual(['b', 'c']);
    expect(ids(vial('of a bottle', uses('c')))).toEqual(['c']);
  });

  test('it is cloudy by gum and weighting agent, not by a solvent', () => {
    const gum = { id: 'gum-arabic', name: 'gum arabic', cas: '9000-01-5', share: 0.1 };
    expect(isCloudy(vial('clear'))).toBe(false);
    expect(isCloudy(vial('cloudy', { beside: [gum] }))).toBe(true);
    expect(shares(vial('cloudy', { beside: [gum] }))).toEqual({ 'propylene-glycol': 0.7, 'gum-arabic': 0.1 });
  });
});

describe('the alcohol of a vial', () => {
  test('that is not known is at most all of its solvent, mL in a mL', () => {
    takeIn([newRecord('solvent', { ...facts('own') } as never)]);
    const own = vial('own', { solvent: facts('own') });
    expect(alcoholOfVial(own)).toBeNull();
    expect(mostAlcoholOfVial(own)).toBeCloseTo(0.8, 3); // 0.789 g/mL, as ethanol
    const dense = vial('dense', { solvent: facts('own'), densityGPerMl: 1.5 });
    expect(mostAlcoholOfVial(dense)).toBe(1);
  });

  test('of a solvent of one’s own is said with three digits, none as 0', () => {
    expect([0.955, 0.1234, 0, undefined].map(ownAlcoholText)).toEqual([
      '95.5 % vol',
      '12.3 % vol',
      '0 % vol',
      'not known',
    ]);
  });

  test('that is known is that much, and none is none', () => {
    expect(mostAlcoholOfVial(vial('known', { solvent: { ...facts('own'), abv: 0 } }))).toBe(0);
    const half = vial('half', { solvent: { ...facts('own'), abv: 0.5 } });
    expect(alcoholOfVial(half)).toBeCloseTo(0.8 * 0.4244, 3); // 50 % vol is 42.4 % by mass
  });
});
