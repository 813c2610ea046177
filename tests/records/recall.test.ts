import { beforeEach, describe, expect, test } from 'vitest';
import { expanded, measured, type Measured } from '../../src/core/number/measured';
import type { AnyRecord } from '../../src/records/kind/kinds';
import type { Vial } from '../../src/records/kind/vial';
import { ancestors, descendants, partsOf, toldApart } from '../../src/records/lineage';
import { amountIn, holdingsOf, sharingLots } from '../../src/records/recall';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { carriersOf } from '../../src/workshop/thing/carrier';
import { refusalOf } from '../../src/workshop/drinkable/grade';
import { ethanol, material, vialOf } from '../tasks/count/countShelf';

const bottle = (of: string, facts: object = {}) =>
  newRecord('bottle', {
    id: `b-${of}`,
    from: [of],
    material: of,
    supplier: 'made up',
    lot: `L-${of}`,
    grade: 'fit for drinks',
    ...facts,
  });
/** 10 g of a 1 % dilution: 0.1 g of a bottle, its strength known to ± 2 % (k = 2), and 9.9 g of the pack of ethanol. */
const dilution = (of: string): Vial => ({
  ...vialOf(of, 0.01),
  id: `v-${of}`,
  from: [`b-${of}`, 'spirit', `run-${of}`],
  uses: [
    { id: `b-${of}`, massG: 0.1 },
    { id: 'spirit', massG: 9.9 },
  ],
});
const spirit = newRecord('supply', {
  id: 'spirit',
  name: 'ethanol 96 %',
  sort: 'solvent',
  solvent: 'ethanol-96',
  unit: 'g',
  amount: 800,
  supplier: 'made up',
  lot: 'E-1',
});
/** A trial of 2 g of one dilution and 3 g of another, as a count stores it. */
const trial: Vial = {
  ...vialOf('t', 0.01, { massG: 5 }),
  from: ['v-card', 'v-rhu', 'f2', 'pip', 'run-t'],
  contents: [
    { material: 'card', name: 'card oil', strength: measured(0.004, 0.00008, { id: 'c', words: '' }) },
    { material: 'rhu', name: 'rhu oil', strength: measured(0.006, 0.00006, { id: 'r', words: '' }) },
  ],
  uses: [
    { id: 'v-card', massG: 2 },
    { id: 'v-rhu', massG: 3 },
  ],
};
const drink = newRecord('tasting', {
  id: 'drink',
  from: ['t', 'base', 'run-drink'],
  base: { name: 'tonic', volumeMl: 100, brix: 8, abv: 0, densityGPerMl: 1.03 },
  doses: [{ vial: 't', code: 'T', drops: null, massG: measured(0.5, 0.005, { id: 'scale', words: '' }) }],
  reached: [],
  verdict: '',
  liking: null,
  uses: [{ id: 't', massG: 0.5 }],
});
const strip = (of: string, takenOutAt: string | null) => ({
  vial: `v-${of}`,
  code: of.toUpperCase(),
  dips: 1,
  dippedAt: '2026-05-01T10:00:00.000Z',
  takenOutAt,
});
const layering = newRecord('layering', {
  id: 'lay',
  from: ['v-card', 'v-hex', 'v-lin'],
  name: 'CARD + HEX',
  strips: [strip('card', null), strip('hex', null), strip('lin', '2026-05-01T11:00:00.000Z')],
  readings: [],
  verdict: { liking: 7, decision: 'formula', words: '' },
});
const formula = (version: number, from: string, materials: string[]) =>
  newRecord('formula', {
    id: `f${version}`,
    from: [from],
    name: 'Tide',
    root: 'f1',
    version,
    notes: '',
    lines: materials.map((id) => ({ material: id, name: id, share: 1 })),
  });
const ids = (relatives: readonly { record: AnyRecord }[]) => relatives.map(({ record }) => record.id).sort();
const before = (id: string) => toldApart(ancestors(id), ancestors(id, 'is in it'));
const inMg = (grams: Measured | null) => grams!.value * 1000;

beforeEach(() => {
  shelf.records.value = new Map();
  for (const of of ['card', 'rhu', 'hex', 'lin']) takeIn([material(of), bottle(of), dilution(of)]);
  takeIn([spirit, layering, formula(1, 'lay', ['card', 'hex']), formula(2, 'f1', ['card', 'rhu']), trial, drink]);
  takeIn([newRecord('dropper', { id: 'pip', name: 'Pipette 1', tip: 'glass' })]);
});

describe('what is in a drink, told from what led to it', () => {
  test('a strip that was taken out, the layering of its formula and a line that was swapped away are not in it', () => {
    const told = before('drink');
    expect(ids(told['is in it'])).toEqual(['b-card', 'b-rhu', 'card', 'rhu', 'spirit', 't', 'v-card', 'v-rhu'].sort());
    expect(ids(told['led to it'])).toEqual(
      ['b-hex', 'b-lin', 'f1', 'f2', 'hex', 'lay', 'lin', 'pip', 'v-hex', 'v-lin'].sort(),
    );
    for (const lot of ['b-hex', 'b-lin']) {
      expect(amountIn(lot, drink)!.value).toBe(0);
      expect(ids(holdingsOf(lot))).not.toContain('drink');
      expect(ids(descendants(lot))).toContain('drink');
    }
  });

  test('a batch of the formula of a tasting holds what was weighed, not the tasting', () => {
    const none = measured(1, 0, { id: '', words: '' });
    const batch = newRecord('batch', {
      id: 'batch',
      from: ['drink', 'b-card', 'run-batch'],
      name: 'Tide, 20 L',
      formula: { id: 'drink', name: 'tonic', version: null },
      lines: [],
      asked: {},
      uses: [{ id: 'b-card', massG: 0.9 }],
      lost: [{ id: 'b-card', massG: 0.1, why: 'a rest' }],
      weighed: [],
      drink: { litres: none, brix: none, abv: none, densityGPerMl: none, emulsion: false },
      reached: [],
      checks: [],
      jurisdiction: 'EU',
      madeOn: '2026-05-02',
      notes: '',
    });
    takeIn([batch]);
    expect(partsOf(batch).map(({ id, grams }) => [id, grams?.value])).toEqual([['b-card', 0.8]]);
    expect(ids(before('batch')['is in it'])).toEqual(['b-card', 'card']);
    expect(ids(before('batch')['led to it'])).toContain('drink');
  });

  test('a smell-only vial of a strip that was taken out bars nothing; one that is in it does, however far down', () => {
    expect(refusalOf(trial)).toBeNull();
    takeIn([bottle('lin', { grade: 'smell only' }), bottle('hex', { grade: 'smell only' })]);
    expect(refusalOf(trial)).toBeNull();
    takeIn([bottle('rhu', { grade: 'smell only' })]);
    expect(refusalOf(trial)).toContain('comes from a bottle that is not fit for drinks');
    expect(carriersOf(trial).map(({ id }) => id)).toEqual(['ethanol-96']);
  });

  test('of an old record that took nothing by name, what it says it came from is in it, of an amount no one wrote down', () => {
    const old = { ...trial, id: 'old', uses: [] };
    takeIn([old, bottle('card', { grade: 'smell only' })]);
    expect(ids(before('old')['is in it'])).toEqual(expect.arrayContaining(['v-card', 'v-rhu', 'b-card', 'b-rhu']));
    expect(ids(before('old')['led to it'])).toEqual(expect.arrayContaining(['f2', 'lay', 'b-hex']));
    expect(amountIn('b-card', old)).toBeNull();
    expect(refusalOf(old)).toContain('not fit for drinks');
  });

  test('the other copy of a vial does not hold the first', () => {
    const copy = { ...trial, id: 't2', name: 'Tide (other copy)', from: [...trial.from, 't'] };
    takeIn([copy]);
    expect(ids(before('t2')['is in it'])).not.toContain('t');
    expect(ids(before('t2')['led to it'])).toContain('t');
    const barred: AnyRecord = { ...trial, grade: 'smell only' };
    takeIn([barred]);
    expect(refusalOf(copy)).not.toBeNull(); // what is smell only in the one is so in the other
  });
});

describe('what else holds this lot', () => {
  // By hand: 0.1 g in 10 g; 2 g of that in 5 g; 0.5 g of that in the drink: 100 mg, 20 mg, 20 × 0.5 / 5 = 2 mg.
  test('is told with its milligrams through vial and trial to the drink, checked by hand', () => {
    const held = holdingsOf('b-card');
    expect(held.map(({ record, grams }) => [record.id, Number(inMg(grams).toFixed(9))])).toEqual([
      ['v-card', 100],
      ['t', 20],
      ['drink', 2],
    ]);
  });

  test('with the ± of the strengths and weighings on the way', () => {
    const [vial, inTrial, inDrink] = holdingsOf('b-card').map(({ grams }) => expanded(grams!) / grams!.value);
    expect(vial).toBeCloseTo(0.02, 9); // strength ± 1 % standard
    expect(inTrial).toBeCloseTo(0.04, 9); // strength ± 2 % standard
    expect(inDrink).toBeCloseTo(2 * Math.hypot(0.02, 0.01), 9); // and 0.5 g ± 1 % standard
  });

  test('of a pack of solvent adds up over all ways: 9.9 g in a vial, 1.98 + 2.97 g in the trial, a tenth of it in the drink', () => {
    const grams = (id: string) => amountIn('spirit', shelf.records.value.get(id)!)!.value;
    expect(grams('v-hex')).toBeCloseTo(9.9, 12);
    expect(grams('t')).toBeCloseTo(4.95, 12);
    expect(grams('drink')).toBeCloseTo(0.495, 12);
  });

  test('of a solvent of one’s own that came from no pack is the rest of the vial', () => {
    const own = newRecord('solvent', {
      id: 'own',
      name: 'neutral spirit',
      density: { gPerMl: 0.8, atC: 20, source: 'test' },
      food: true,
      dryOff: 'minutes',
    });
    const vial = { ...dilution('card'), solvent: { ...ethanol, id: 'own' }, uses: [{ id: 'b-card', massG: 0.1 }] };
    takeIn([own, vial]);
    expect(amountIn('own', vial)!.value).toBeCloseTo(9.9, 12);
  });

  test('lists the others by lot, with what they hold, and leaves out what only led to something', () => {
    const shared = sharingLots('v-rhu').map(({ lot, others }) => [lot.id, ids(others)]);
    expect(shared).toEqual([['spirit', ['v-card', 'v-hex', 'v-lin']]]);
    expect(
      sharingLots('v-hex')
        .find(({ lot }) => lot.id === 'spirit')!
        .others.map(({ record }) => record.id),
    ).toContain('drink');
  });

  test('ends in a circle of a damaged backup', () => {
    const circle: AnyRecord = { ...dilution('card'), uses: [{ id: 't', massG: 1 }] };
    takeIn([circle]);
    expect(amountIn('b-rhu', drink)!.value).toBeGreaterThan(0);
  });
});
