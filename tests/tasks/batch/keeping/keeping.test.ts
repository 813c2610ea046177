import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../../src/records/kind/batch';
import { shelf, takeIn } from '../../../../src/records/shelf';
import { batch } from '../../../../src/tasks/batch/task';
import { slotsOf } from '../../../../src/tasks/engine/card';
import type { Offer } from '../../../../src/tasks/engine/task';
import { keysOf, recipeOf, runOf, stepOf, weighAll, wordsIn } from '../batchRuns';
import { batchShelf, clearPlan } from '../batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

type Typed = Record<string, string>;
/** Mixed at once: in a syrup the free acid of much sorbate would crystallise. */
const run = (typed: Typed = {}) => runOf({ ...clearPlan, 'throw.n': '0', ...typed });
const said = (section: string, typed: Typed = {}) => wordsIn(run(typed), section);
const dangers = (typed: Typed = {}) =>
  recipeOf(run(typed))
    .card!.sections!.flatMap((one) => one.dangers ?? [])
    .join(' ');
const titles = (typed: Typed = {}) => recipeOf(run(typed)).card!.sections!.map(({ title }) => title);
const names = (typed: Typed = {}) => recipeOf(run(typed)).ask!.map(({ name }) => name);
const slotOf = (name: string, typed: Typed = {}) =>
  slotsOf(run(typed), recipeOf(run(typed))).find(({ field }) => field.name === name)!;
const phIn = (typed: Typed = {}) => Number(/‹pH ([\d.]+)›/.exec(said('Acid', typed))![1]);

describe('each of what can go wrong is refused or warned of', () => {
  test('pH 5 with sorbate', () => {
    const typed = { ph: '5', sorbate: '250' };
    expect(dangers(typed)).toMatch(/pH 5.0 is above 4.6, which is low acid.*licensed practice/);
    expect(said('Keeping', typed)).toMatch(/At pH 5.0 only 37 % of the sorbic acid works: it does not keep this drink/);
    expect(dangers({ acid: 'none', sorbate: '250' })).toMatch(/low acid/); // computed
  });

  test('benzoate with ascorbic acid', () => {
    expect(dangers({ benzoate: '150', ascorbic: '200' })).toMatch(/can form benzene/);
    expect(dangers({ sorbate: '250', ascorbic: '200' })).toBe('');
  });

  test('four volumes in a bottle rated 5 bar, at 40 °C: the page cannot be left, and says what the bottle bears', () => {
    const typed = { gas: '4', 'bottle.bar': '5', sorbate: '250' };
    const { state, wrong, mend } = slotOf('bottle.bar', typed);
    expect(state).toBe('impossible');
    expect(wrong).toMatch(/At 40 °C it reaches (more than 9|\d\.\d) bar, in a bottle rated for 5 bar|can burst/);
    expect(keysOf(run(typed))).toContain('recipe');
    expect(recipeOf(run(typed)).problem).toBe(wrong);
    const less = (mend as Offer).type!;
    expect(Number(less['gas'])).toBeGreaterThan(1.2);
    expect(Number(less['gas'])).toBeLessThan(3);
    expect(slotOf('bottle.bar', { ...typed, ...less }).state).toBe('filled');
    expect(slotOf('bottle.bar', { ...typed, 'bottle.bar': '10' }).state).toBe('filled');
  });

  test('sugar and no protection', () => {
    expect(dangers()).toMatch(/There is sugar in it and nothing that stops yeast.*27 volumes/);
    for (const kept of [{ sorbate: '250' }, { treated: 'bottle' }, { treated: 'hot' }, { treated: 'cold' }])
      expect(dangers(kept)).toBe('');
    expect(dangers({ treated: 'bottle', gas: '3' })).toMatch(/can burst in the bath/);
  });
});

describe('acid', () => {
  test('is said as pH, titratable acid and ratio, and follows what is asked', () => {
    expect(phIn()).toBeCloseTo(2.6, 1); // 0.0104 mol/L of citric acid alone: 2.61
    expect(said('Acid')).toMatch(/It titrates as ‹2 g\/L› of citric acid; °Brix over acid ‹52›/);
    expect(said('Acid')).toMatch(/neither equal in pH nor equally sour/);
    expect(phIn({ acid: 'phosphoric-acid' })).toBeLessThan(phIn() - 0.2);
    expect(phIn({ alkalinity: '200' })).toBeGreaterThan(phIn() + 0.2);
    expect(phIn({ 'salt.g': '1' })).toBeGreaterThan(phIn() + 0.5);
    expect(phIn({ ph: '3.4' })).toBe(3.4);
    expect(said('Acid', { ph: '3.4' })).toMatch(/Measured and computed are far apart/);
  });

  test('a target pH offers the salt that reaches it, and that reaches it', () => {
    const { offer } = slotOf('ph.target', { 'ph.target': '3.2' });
    expect(offer!.words).toMatch(/^Take [\d.]+ g\/L of the salt$/);
    expect(phIn({ 'ph.target': '3.2', ...offer!.type })).toBeCloseTo(3.2, 1);
    const lower = slotOf('ph.target', { 'ph.target': '2.4' }).offer!;
    expect(lower.words).toMatch(/of acid$/);
    expect(phIn(lower.type as Typed)).toBeCloseTo(2.4, 1);
    expect(slotOf('ph.target', { 'ph.target': '1.5', acidity: '0.5' }).offer).toBeUndefined();
  });

  test('salt, vitamin C and solutions of acid are weighed, and are in the batch with its pH', () => {
    const typed = { ...clearPlan, 'throw.n': '0', acid: 'lactic-acid', 'salt.g': '0.5', ascorbic: '200', sorbate: '250', 'sweet.1': 'sucralose', 'sweet.1.mg': '100', although: 'a test' }; // prettier-ignore
    const made = batch.keep(weighAll(typed))[0] as Batch;
    const grams = (id: string) => made.weighed.find((one) => one.id === id)?.massG.value;
    expect(grams('trisodium-citrate')).toBeCloseTo(10, 1); // 20 L
    expect(grams('ascorbic-acid')).toBeCloseTo(4, 2);
    expect(grams('sucralose')).toBeCloseTo(2, 2);
    expect(grams('lactic-acid')).toBeCloseTo((40 * 1.4066) / 0.8, 0); // as it is weighed, 80 %
    expect(made.keeping!.phComputed).toBeCloseTo(Number(/‹pH ([\d.]+)›/.exec(wordsIn(runOf(typed), 'Acid'))![1]), 0);
    expect(made.keeping!.said.some(({ words }) => words.includes('sorbic acid works'))).toBe(true);
  });
});

describe('keeping', () => {
  test('heat is counted as for the kind of drink, from its log too, and never called enough by itself', () => {
    const heated = { treated: 'bottle', 'heat.c': '62', 'heat.min': '20', 'heat.kind': 'beer' };
    expect(said('Keeping', heated)).toMatch(/‹38.8› units of heat/);
    const log = { ...heated, 'heat.log': '0 62, 20 62' };
    expect(said('Keeping', log)).toMatch(/‹38.8› units of heat/);
    expect(names(log)).not.toContain('heat.c');
    expect(said('Keeping', { ...heated, 'heat.kind': 'juice', 'heat.c': '72' })).toMatch(/Inside of what is published for apple juice.*no promise/);
    expect(slotOf('heat.log', { ...heated, 'heat.log': '0 62, 20' }).state).toBe('impossible');
    expect(slotOf('heat.log', { ...heated, 'heat.log': '20 62, 0 62' }).wrong).toMatch(/only increase/);
  }); // prettier-ignore

  test('hot filling is held beside the table for acid food', () => {
    expect(said('Keeping', { treated: 'hot' })).toMatch(/Inside of what is published for filling acid food hot: at least ‹66 °C/);
    expect(said('Keeping', { treated: 'hot', 'fill.c': '60' })).toMatch(/Outside of what is published/);
    expect(said('Keeping', { treated: 'hot', ph: '4.55' })).toMatch(/published up to pH 4.5/);
  }); // prettier-ignore

  test('a best-before is that of the person, with the reason, and is in the batch alone', () => {
    const typed = { ...clearPlan, best: '2027-03-01', 'best.why': 'kept warm for six weeks', although: 'a test' };
    const made = batch.keep(weighAll(typed))[0] as Batch;
    expect(made.keeping).toMatchObject({ bestBefore: '2027-03-01', why: 'kept warm for six weeks' });
    takeIn([made]);
    expect(slotOf('best').state).toBe('empty');
    expect(wordsIn(runOf({ ...clearPlan, best: '2027-03-01' }), 'Keeping')).toMatch(/add how you know it/);
  });
});

describe('what is asked', () => {
  test('is nothing of gas for a still drink, nothing of sweeteners without them, and chips stay open', () => {
    expect(titles()).toEqual(['Drink', 'Syrup', 'Acid', 'Keeping', 'Concentrate', 'Weighing', 'Label of the drink']);
    expect(titles({ gas: '3' })).toContain('Gas');
    expect(titles({ 'sweet.1': 'sucralose', 'sweet.1.mg': '150' })).toContain('Sweet without sugar');
    expect(names()).not.toContain('heat.c');
    expect(names()).not.toContain('bottle.bar');
    expect(keysOf(run()).length).toBeGreaterThan(3); // nothing of it keeps the page from being left
  });

  test('sweeteners: how sweet, what is lacking, and an amount that must be said', () => {
    const sweet = { brix: '0', 'sweet.1': 'sucralose', 'sweet.1.mg': '100', 'sweet.2': 'acesulfame-k', 'sweet.2.mg': '150' }; // prettier-ignore
    expect(said('Sweet without sugar', sweet)).toMatch(/‹74.5 to 105 g\/L› of sugar/); // 100·550 + 150·130 to 100·750 + 150·200 mg
    expect(said('Sweet without sugar', sweet)).toMatch(/‹1.03\d g\/mL› instead of 0.998 and ‹1.29 times›/);
    expect(slotOf('sweet.1.mg', { 'sweet.1': 'sucralose' }).state).toBe('empty');
    expect(stepOf(run({ 'sweet.1': 'sucralose' }), 'recipe').card!.slots!['sweet.1.mg']!.optional).toBeUndefined();
  });

  test('gas counts sugar and alcohol, and says where that is not known', () => {
    expect(said('Gas', { gas: '3', sorbate: '200' })).toMatch(/holds 85 % of what water does/);
    expect(said('Gas', { gas: '2', abv: '30', spirit: '96', 'spirit.food': 'yes', brix: '5' })).toMatch(/Counted as water/);
  }); // prettier-ignore
});
