import { beforeEach, describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import type { Batch, Weighed } from '../../../src/records/kind/batch';
import type { Tasting } from '../../../src/records/kind/drink';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { partsOfBatch, partsOfTasting, type KeptDrink } from '../../../src/workshop/drinkable/partsOfDrink';
import { vialRecord } from '../../browser/benchRecords';

const glycol = 'propylene-glycol';

const vial = (id: string, more: object = {}): Vial =>
  ({
    ...vialRecord({ code: id, name: id, solvent: glycol }),
    id: `v-${id}`,
    densityGPerMl: 0.8,
    contents: [{ material: id, name: id, strength: exact(0.25) }],
    ...more,
  }) as never;

const bottle = (id: string, material: string, more: object = {}) =>
  newRecord('bottle', { id, material, supplier: '', lot: id, grade: 'fit for drinks', ...more } as never);

const grams = ({ parts }: KeptDrink, drinkG: number) =>
  Object.fromEntries(parts.map(({ id, mgPerKg }) => [id, Number(((mgPerKg.value * drinkG) / 1e6).toFixed(6))]));

beforeEach(() => {
  shelf.records.value = new Map();
});

describe('what is in a drink that was dosed', () => {
  /** 100 mL of 1.25 g/mL with 4 g of one vial and 8 g of another: 137 g, 115 mL. */
  const drink = (ids: readonly [string, string], more: object = {}): Tasting =>
    newRecord('tasting', {
      base: { name: 'syrup', volumeMl: 100, brix: 50, abv: 0, densityGPerMl: 1.25 },
      doses: ids.map((id, i) => ({ vial: `v-${id}`, code: id, drops: null, massG: exact(4 * (i + 1)) })),
      reached: [
        { material: 'a', name: 'a', mgPerKg: exact(1e6 / 137) },
        { material: 'b', name: 'b', mgPerKg: exact(2e6 / 137) },
      ],
      verdict: '',
      liking: null,
      uses: [],
      ...more,
    } as never);

  test('are materials and solvents, each once, in a drink as dense as both', () => {
    takeIn([vial('a'), vial('b')]);
    const kept = partsOfTasting(drink(['a', 'b']));
    expect(grams(kept, 137)).toEqual({ a: 1, b: 2, [glycol]: 9 });
    expect(kept.parts.map(({ carrier }) => carrier)).toEqual([undefined, undefined, true]);
    expect(kept.drink.density).toBeCloseTo(137 / 115, 12);
  });

  test('ethanol is in its strength, not among what is judged', () => {
    const food = { density: { gPerMl: 0.8, atC: 20, source: '' }, food: true, dryOff: 'minutes' };
    takeIn([vial('a'), vial('b', { solvent: { id: 'ethanol-96', name: 'ethanol', ...food } })]);
    const kept = partsOfTasting(drink(['a', 'b']));
    expect(grams(kept, 137)).toEqual({ a: 1, b: 2, [glycol]: 3 });
    expect(kept.drink.abv).toBeCloseTo((100 * 6 * 0.9386) / 0.789 / 115, 2); // 96 % vol is 93.9 % by mass
    expect(kept.mostAbv).toBe(kept.drink.abv);
  });

  test('bottles stand beside the material that came from them', () => {
    const from = (id: string) => ({ uses: [{ id, massG: 1 }] });
    takeIn([bottle('b-a', 'a'), bottle('b-b', 'b'), vial('a', from('b-a')), vial('b', from('b-b'))]);
    const { parts } = partsOfTasting(drink(['a', 'b']));
    expect(parts.map(({ bottles }) => bottles?.map(({ id }) => id))).toEqual([['b-a'], ['b-b'], undefined]);
  });

  test('it is cloudy where a vial in it is an emulsion', () => {
    const gum = { beside: [{ id: 'gum-arabic', name: 'gum arabic', cas: '9000-01-5', share: 0.5 }] };
    takeIn([vial('a'), vial('b', gum)]);
    const kept = partsOfTasting(drink(['a', 'b']));
    expect(kept.traits).toEqual({ 'trait.cloudy': 'yes' });
    expect(grams(kept, 137)).toEqual({ a: 1, b: 2, [glycol]: 5, 'gum-arabic': 4 });
    expect(kept.parts.find(({ id }) => id === 'gum-arabic')).toMatchObject({ cas: '9000-01-5', carrier: true });
    takeIn([vial('b')]);
    expect(partsOfTasting(drink(['a', 'b'])).traits).toEqual({ 'trait.cloudy': 'no' });
  });
});

describe('what is in a batch', () => {
  const weighed = (id: string, massG: number, more: Partial<Weighed> = {}): Weighed => ({
    into: 'concentrate',
    id,
    name: id,
    source: null,
    lot: '',
    plannedG: massG,
    massG: exact(massG),
    ...more,
  });

  /** Two litres of 1.05 g/mL, 2100 g, with 5 g of the 20 g of concentrate that were made: 2 g of it a, in glycol. */
  const batch = (more: readonly Weighed[] = [], facts: object = {}): Batch =>
    newRecord('batch', {
      code: 'B1',
      name: 'trial',
      formula: { id: 'f', name: 'f', version: 1 },
      lines: [],
      asked: { carrier: glycol },
      weighed: [
        weighed('a', 2),
        weighed(glycol, 18),
        ...more,
        weighed('sugar', 200, { into: 'syrup' }),
        weighed('concentrate', 5, { into: 'drink' }),
      ],
      drink: {
        litres: exact(2),
        brix: exact(9),
        abv: exact(0),
        densityGPerMl: exact(1.05),
        emulsion: false,
      },
      reached: [{ material: 'a', name: 'a', mgPerKg: exact(0.5e6 / 2100), mgPerL: exact(250) }],
      checks: [],
      jurisdiction: 'EU',
      madeOn: '2026-11-30',
      notes: '',
      uses: [],
      ...facts,
    } as never);
  const reached = (g: number) => ({ material: 'a', name: 'a', mgPerKg: exact((g * 1e6) / 2100), mgPerL: exact(1) });
  const held = (made: Batch) => grams(partsOfBatch(made), 2100);

  test('of the concentrate counts what was poured of it; sugar, water and the concentrate itself are no parts', () => {
    expect(held(batch())).toEqual({ a: 0.5, [glycol]: 4.5 });
    const acid = weighed('citric-acid', 3, { into: 'syrup' });
    expect(held(batch([acid]))).toEqual({ a: 0.5, [glycol]: 4.5, 'citric-acid': 3 });
    expect(partsOfBatch(batch([acid])).parts.at(-1)).toMatchObject({ cas: '77-92-9', carrier: true });
    const sweet = weighed('sucralose', 0.3, { into: 'syrup' });
    expect(partsOfBatch(batch([sweet])).parts.at(-1)).toMatchObject({ cas: '56038-13-2', carrier: true });
  });

  test('without a concentrate in it, nothing of one is in it', () => {
    const made = batch();
    expect(held({ ...made, weighed: made.weighed.filter(({ id }) => id !== 'concentrate') })[glycol]).toBe(0);
    const syrup = made.weighed.filter(({ into }) => into !== 'concentrate');
    const none = { ...made, weighed: [...syrup, weighed(glycol, 3, { into: 'syrup' })] };
    expect(held(none)[glycol]).toBe(3);
    expect(held({ ...made, weighed: [weighed(glycol, 0)] })[glycol]).toBe(0);
  });

  test('what a material was diluted with to be weighed counts as the carrier; the purity of its bottle is its own', () => {
    expect(held(batch([], { reached: [reached(0.2)] }))).toEqual({ a: 0.2, [glycol]: 4.8 }); // 0.5 g, of it 0.2 a
    takeIn([bottle('b-a', 'a', { purity: 0.5 })]);
    const weighedA = (made: Batch) => made.weighed.map((one) => (one.id === 'a' ? { ...one, source: 'b-a' } : one));
    const pure = batch([], { reached: [reached(0.2)] });
    expect(held({ ...pure, weighed: weighedA(pure) })).toEqual({ a: 0.2, [glycol]: 4.6 }); // 0.4 g at 50 %
    const half = batch([], { reached: [reached(0.25)] });
    expect(held({ ...half, weighed: weighedA(half) })).toEqual({ a: 0.25, [glycol]: 4.5 });
    const none = { ...pure, asked: {} };
    expect(held(none)).toEqual({ a: 0.2, [glycol]: 4.5 });
  });

  test('of a vial what it is in counts, and nothing else is taken for a dilution', () => {
    takeIn([vial('a')]);
    const made = batch([], { reached: [reached(0.125)] });
    const fromVial = made.weighed.map((one) => (one.id === 'a' ? { ...one, source: 'v-a' } : one));
    expect(held({ ...made, weighed: fromVial })).toEqual({ a: 0.125, [glycol]: 4.875 });
  });

  test('two weighings of one material are one part', () => {
    const made = batch([weighed('a', 2, { name: 'a, more' })], { reached: [reached(0.8)] });
    // 22 g of concentrate were made: of a 4 g, 0.909 g in the drink
    expect(held(made)[glycol]).toBeCloseTo((18 * 5) / 22 + (4 * 5) / 22 - 0.8, 5);
  });

  test('it is carbonated by any gas, without sugar at 0 °Brix alone, cloudy by an emulsion', () => {
    const traits = (facts: object) => partsOfBatch(batch([], { drink: { ...batch().drink, ...facts } })).traits;
    const gas = (volumes: number) => ({ gas: { volumes, gaugeBar: 0, atC: 4 } });
    expect([gas(0.5), gas(0), {}].map((one) => traits(one)['trait.carbonated'])).toEqual(['yes', 'no', 'no']);
    expect([0, 0.5].map((brix) => traits({ brix: exact(brix) })['trait.no added sugar'])).toEqual(['yes', 'no']);
    expect([true, false].map((emulsion) => traits({ emulsion })['trait.cloudy'])).toEqual(['yes', 'no']);
  });

  test('its density and strength are those that were reached', () => {
    expect(partsOfBatch(batch()).drink).toEqual({ abv: 0, density: 1.05 });
  });
});
