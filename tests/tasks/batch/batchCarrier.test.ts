import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import { ancestors, descendants } from '../../../src/records/lineage';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import type { Supply } from '../../../src/records/kind/supply';
import type { Vial } from '../../../src/records/kind/vial';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { batch } from '../../../src/tasks/batch/task';
import { refusalOf } from '../../../src/workshop/drinkable/grade';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { fieldOf, keysOf, recipeOf, runOf, stepOf, weighAll, wordsIn } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';
import { startWalking } from '../walking';

const glycol = (id: string, facts: Partial<Supply> = {}): Supply => ({
  ...newRecord('supply', {
    id,
    name: 'propylene glycol',
    sort: 'solvent',
    solvent: 'propylene-glycol',
    unit: 'g',
    amount: 500,
    supplier: 'Saltmarsh Supplies',
    lot: `L-${id}`,
    grade: 'fit for drinks',
  }),
  ...facts,
});
const { 'carrier.food': _, ...plan } = clearPlan; // nothing was answered about its bottle yet
const asked = (typed: Record<string, string>) => fieldOf(runOf(typed), lot)!;
const asksFood = (typed: Record<string, string>) =>
  recipeOf(runOf(typed)).ask!.some(({ name }) => name.startsWith('carrier.food'));
const kept = (typed: Record<string, string>) => batch.keep(weighAll(typed))[0] as Batch;
const carrierIn = (made: Batch) => made.weighed.find(({ id }) => id === 'propylene-glycol')!;
const lot = 'lot.propylene-glycol';
const LOTS = ['nutmeg', 'linalool', 'maltol', 'vanillin'].map((id) => `lot.${id}`);

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([...batchShelf(), glycol('pg')]);
});

describe('the bottle that the carrier comes from', () => {
  test('is chosen already where there is one, and its word on the grade is not asked for again', () => {
    expect(asked(plan)).toMatchObject({ preset: 'pg' });
    expect(asked(plan).options!.map(({ label: words }) => words)).toEqual([
      'propylene glycol, lot L-pg',
      'Not from the Shelf',
    ]);
    expect(asksFood(plan)).toBe(false);
    const walker = startWalking(batch, plan);
    walker.next();
    expect(walker.state().presets[lot]).toBe('pg'); // what stood on the screen is what was chosen
  });

  test('gives the grams that were weighed, and its lot stands on the sheet and in the trace', () => {
    const made = kept(plan);
    takeIn([made]);
    const { massG, source, lot: words } = carrierIn(made);
    expect({ source, words }).toEqual({ source: 'pg', words: 'Saltmarsh Supplies, lot L-pg' });
    expect(massG.value).toBeCloseTo(20 - (50 * 20 * 1.0381) / 1000, 2); // 1 g/L, less the formula
    expect(made.uses).toContainEqual(
      expect.objectContaining({ id: 'pg', lot: 'L-pg', how: 'weighed', massG: massG.value }),
    );
    expect(leftOf(glycol('pg'))!.value).toBeCloseTo(500 - massG.value, 9);
    expect(ancestors(made.id).map(({ record }) => record.id)).toContain('pg');
    expect(descendants('pg').map(({ record }) => record.id)).toEqual([made.id]);
  });

  test('says so where it is weighed when by the book there is too little in it', () => {
    const words = () => stepOf(runOf({ ...plan, [lot]: 'pg' }), 'c.propylene-glycol').more!;
    expect(words().join(' ')).not.toContain('your records');
    takeIn([glycol('pg', { amount: 12 })]);
    expect(words()).toContain('According to your records only 12 g are left in it.');
  });

  test('is not chosen by itself past its date, or with less in it than the concentrate takes; the reason stands beside it', () => {
    for (const [facts, why] of [
      [{ useBy: '2001-02-03' }, 'past its date (Feb 3, 2001)'],
      [{ amount: 12 }, '12 g left'],
    ] as const) {
      takeIn([glycol('pg', facts)]);
      const { preset, options } = asked(plan);
      expect(preset).toBe('');
      expect(options!.find(({ value }) => value === 'pg')!.hint).toContain(why);
      takeIn([glycol('pg', { ...facts, amount: 500, useBy: '2099-01-01' })]);
      expect(asked(plan).preset).toBe('pg');
    }
  });

  test('gives what thinned the small ones, too', () => {
    const made = kept({ ...plan, fine: '0.01' }); // vanillin is diluted with the carrier first
    const carrier = made.uses.find(({ id }) => id === 'pg')!.massG;
    expect(carrier).toBeGreaterThan(carrierIn(made).massG.value + 1);
  });

  test('has to be named where several will do; smell only and empty ones are no choice of their own', () => {
    takeIn([glycol('pg2')]);
    expect(problemsOf(recipeOf(runOf(plan)), runOf(plan))[lot]).toContain('choose one');
    expect(kept({ ...plan, [lot]: 'pg2' }).uses.map(({ id }) => id)).toContain('pg2');
    takeIn([glycol('pg2', { grade: 'smell only' }), glycol('pg3', { amount: 0 })]);
    expect(asked(plan).preset).toBe('pg');
  });

  test('may be none of the Shelf: then its grade is asked, and stock is not changed', () => {
    expect(asksFood({ ...plan, [lot]: 'none' })).toBe(true);
    const made = kept({ ...plan, [lot]: 'none', 'carrier.food': 'yes' });
    expect(carrierIn(made)).toMatchObject({ source: null, lot: '' });
    expect(made.uses.map(({ id }) => id)).not.toContain('pg');
  });

  test('is not made up for a run that was past that question', () => {
    expect(carrierIn(kept(clearPlan)).source).toBeNull();
  });

  test('is refused when it is smell only, in the words that bottles are refused with', () => {
    takeIn([glycol('pg', { grade: 'smell only' })]);
    expect(asked(plan).preset).toBe('none');
    const run = runOf({ ...plan, [lot]: 'pg' });
    const refusal = 'The bottle of propylene glycol (Saltmarsh Supplies, lot L-pg) is not fit for drinks: smell only';
    expect(recipeOf(run).problem).toContain(refusal);
    expect(recipeOf(run).card!.slots![lot]!.wrong).toContain(refusal);
    expect(() => batch.keep(weighAll(run.typed))).toThrow(refusal);
  });

  test('whose label nobody has read is asked about, and its answer counts', () => {
    const { grade: __, ...unread } = glycol('pg');
    takeIn([unread]);
    const typed = { ...plan, [lot]: 'pg' };
    expect(asksFood(typed)).toBe(true);
    expect(() => batch.keep(weighAll({ ...typed, 'carrier.food': 'no' }))).toThrow('never goes into a drink');
    expect(carrierIn(kept({ ...typed, 'carrier.food': 'yes' })).source).toBe('pg');
  });

  test('of another carrier is another question', () => {
    const spirit = { ...plan, carrier: 'ethanol-96' };
    expect(fieldOf(runOf(spirit), 'lot.ethanol-96')).toBeUndefined();
    expect(fieldOf(runOf({ ...plan, make: 'emulsion' }), lot)).toBeUndefined();
  });
});

describe('the concentrate that is left over', () => {
  const spared = { ...plan, spare: '25' };

  test('shares its bottle with the batch, and no gram is counted twice', () => {
    const unnamed = glycol('later', { grade: 'smell only', made: '2001-02-03T10:00:00Z' });
    takeIn([glycol('pg', { made: '2001-01-03T10:00:00Z' }), unnamed]); // what no one names counts off the later one
    const [made, vial] = batch.keep(weighAll({ ...spared, [lot]: 'pg' })) as [Batch, Vial];
    takeIn([made, vial]);
    const weighed = carrierIn(made).massG.value;
    const taken = [made, vial].map(({ uses }) => uses.find(({ id }) => id === 'pg')!.massG);
    expect(taken[0]! + taken[1]!).toBeCloseTo(weighed, 6);
    expect(leftOf(glycol('pg'))!.value).toBeCloseTo(500 - weighed, 6);
    expect(leftOf(unnamed)!.value).toBeCloseTo(500, 6);
    expect(ancestors(vial.id).map(({ record }) => record.id)).toContain('pg');
  });

  test('is made of what it names to the last gram, what thinned the small ones among it', () => {
    const [, vial] = batch.keep(weighAll({ ...spared, fine: '0.01' })) as [Batch, Vial];
    const named = vial.uses.reduce((sum, { massG }) => sum + massG, 0);
    expect(named).toBeCloseTo(vial.massG.value, 6);
  });

  test('keeps no longer than that bottle, and becomes smell only when the bottle is found to be', () => {
    takeIn([glycol('pg', { useBy: '2001-02-03' })]);
    const [, vial] = batch.keep(weighAll({ ...spared, [lot]: 'pg' })) as [Batch, Vial]; // chosen all the same
    expect(vial.useBy).toBe('2001-02-03');
    takeIn([vial]);
    expect(refusalOf(vial)).toBeNull();
    takeIn([glycol('pg', { grade: 'smell only' })]);
    expect(refusalOf(vial)).toContain('diluted from a bottle of propylene glycol that is not fit for drinks');
  });
});

describe('the batch made again', () => {
  test('begins with the bottles, the word on what is fit for drinks, and the rules; then the same grams of the same version', () => {
    const made = kept({ ...plan, [lot]: 'none', 'carrier.food': 'yes' });
    const later = { ...shelf.records.value.get('f1')!, id: 'f2', version: 2, lines: [] };
    takeIn([made, later as never]);
    const run = newRecord('run', { id: 'run', task: 'batch', kept: [made.id], title: '' });
    const { typed, newer } = repeatOf(batch, run, runOf({ ...plan, [lot]: 'none', 'carrier.food': 'yes' }));
    expect(typed['what']).toBe('f1');
    expect(newer).toMatchObject({ then: 'version 1', now: 'version 2', typed: { what: 'f2' } });
    expect(typed['carrier.food']).toBeUndefined(); // it may be another bottle
    const again = { ...typed, [lot]: 'none' };
    expect(keysOf(runOf(again)).slice(0, 2)).toEqual(['recipe', 'c.vanillin']);
    const { slots } = recipeOf(runOf(again)).card!;
    const open = recipeOf(runOf(again)).ask!.filter(({ name }) => !slots![name]?.fixed);
    expect(open.map(({ name }) => name)).toEqual([lot, 'carrier.food.propylene-glycol', ...LOTS]);
    const second = kept({ ...again, 'carrier.food': 'yes' });
    expect(second.weighed.map(({ id, source, plannedG }) => [id, source, plannedG])).toEqual(
      made.weighed.map(({ id, source, plannedG }) => [id, source, plannedG]),
    );
  });

  test('takes the bottle of today where that of then is put away, and says so', () => {
    const made = kept(plan);
    takeIn([made, glycol('pg', { archived: '2027-01-01T00:00:00Z' }), glycol('pg2')]);
    const run = newRecord('run', { id: 'run', task: 'batch', kept: [made.id], title: '' });
    const { typed } = repeatOf(batch, run, { ...runOf(plan) });
    expect(typed).toMatchObject({ carrier: 'propylene-glycol', [lot]: 'pg2' });
    expect(wordsIn(runOf(typed), 'Weighing')).toContain(
      'propylene glycol: Saltmarsh Supplies, lot L-pg then, ‹Saltmarsh Supplies, lot L-pg2› now.',
    );
    expect(wordsIn(runOf({ ...typed, [lot]: 'none' }), 'Weighing')).toContain('‹not from the Shelf› now.');
  });
});
