import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import type { Formula } from '../../../src/records/kind/formula';
import { find, newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { answered } from '../../../src/tasks/batch/plan/drinkAsked';
import { batch } from '../../../src/tasks/batch/task';
import { slotsOf } from '../../../src/tasks/engine/card';
import { textOf } from '../../../src/tasks/engine/fields';
import type { RunState } from '../../../src/tasks/engine/fold';
import { toldOf } from '../../../src/tasks/engine/told';
import { fieldOf, keysOf, recipeOf, runOf, weighAll, wordsIn } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';
import { startWalking } from '../walking';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

const kept = (typed: Record<string, string>) => batch.keep(weighAll(typed))[0] as Batch;
const texts = (run: RunState, names: readonly string[]) =>
  Object.fromEntries(names.map((name) => [name, textOf(run, fieldOf(run, name)!)]));
const slotOf = (run: RunState, name: string) => slotsOf(run, recipeOf(run)).find(({ field }) => field.name === name)!;
const titles = (run: RunState) => recipeOf(run).card!.sections!.map(({ title }) => title);

const version = (facts: Partial<Formula>): Formula => ({ ...find('formula', 'f1')!, ...facts });
const other = () => version({ id: 'other', root: 'other', name: 'Other' });
/** A batch that differs from common practice in everything. */
const unusual: Record<string, string> = {
  ...clearPlan,
  litres: '5',
  brix: '7',
  'throw.n': '4',
  acid: 'malic-acid',
  acidity: '1.5',
  benzoate: '100',
  dosage: '0.8',
  spare: '10',
  gas: '3',
  tolerance: '2',
};

describe('what the page begins with', () => {
  test('is all as last time for this formula, of any version, also where nothing was typed then', () => {
    takeIn([kept(unusual), version({ id: 'f1-2', version: 2 })]);
    const run = runOf({});
    const { what: _, 'carrier.food': __, make: ___, ...asked } = unusual;
    expect(texts(run, Object.keys(asked))).toEqual(asked);
    expect(texts(run, ['what', 'make'])).toEqual({ what: 'f1-2', make: 'clear' });
    const walker = startWalking(batch, { 'carrier.food': 'yes', although: 'a test' });
    walker.next();
    takeIn([kept({ ...clearPlan, 'throw.n': '9' })]);
    expect(texts(walker.state(), ['throw.n'])).toEqual({ 'throw.n': '4' }); // what stood there when the page was left
  });

  test('is for another formula what belongs to the bench; dose, sugar, alcohol, gas and what keeps it are never those of another drink', () => {
    takeIn([kept(unusual), other()]);
    const run = runOf({ what: 'other' });
    expect(texts(run, ['litres', 'throw.n', 'dosage', 'carrier', 'fine', 'tolerance'])).toEqual({
      litres: '5',
      'throw.n': '4',
      dosage: '0.8',
      carrier: 'propylene-glycol',
      fine: '0.001',
      tolerance: '2',
    });
    expect(texts(run, ['dose', 'brix', 'abv', 'gas', 'benzoate', 'spare'])).toEqual({
      dose: '',
      brix: '',
      abv: '',
      gas: '0',
      benzoate: '0',
      spare: '0',
    });
    expect(slotOf(run, 'dose').state).toBe('empty');
  });

  test('is common practice in a run that was begun when every question was a step', () => {
    takeIn([kept(unusual)]);
    const older = { ...runOf({ what: 'f1' }), done: { what: '2026-05-01T08:00:00Z' } };
    expect(texts(older, ['litres', 'throw.n', 'fine'])).toEqual({ litres: '20', 'throw.n': '5', fine: '0.01' });
  });

  test('is what the batch was asked for, not what the scale and its carrier made of it', () => {
    takeIn([kept({ ...clearPlan, carrier: 'ethanol-96', 'carrier.food': 'yes' })]);
    expect(find('batch', [...shelf.records.value.keys()].at(-1))!.drink.abv.value).toBeGreaterThan(0.1);
    expect(texts(runOf({}), ['dose', 'abv'])).toEqual({ dose: '50', abv: '0' });
  });

  test('changes with the formula, though the page was left for another one before', () => {
    takeIn([other()]);
    const walker = startWalking(batch, { what: 'f1', carrier: 'propylene-glycol', 'carrier.food': 'yes' });
    for (const [name, text] of Object.entries({ dose: '50', brix: '10', abv: '0', fine: '0.001' }))
      walker.type(name, text);
    walker.next();
    expect(walker.state().presets['gas']).toBe('0');
    walker.back('recipe');
    const presets = { ...walker.state().presets, gas: '3' };
    const left = { ...walker.state(), presets };
    expect(texts(left, ['gas'])).toEqual({ gas: '3' });
    const changed = { ...left, typed: { ...left.typed, what: 'other' } };
    expect(texts(changed, ['gas'])).toEqual({ gas: '0' });
  });

  test('is never food grade by itself', () => {
    takeIn([kept(unusual)]);
    expect(slotOf(runOf({}), 'carrier.food.propylene-glycol').state).toBe('empty');
    expect(() => startWalking(batch).next()).toThrow('choose one');
  });

  test('is the carrier’s bottle of last time where several would do', () => {
    const glycol = (id: string) =>
      newRecord('supply', {
        id,
        name: 'propylene glycol',
        sort: 'solvent',
        solvent: 'propylene-glycol',
        unit: 'g',
        amount: 500,
        supplier: 'Saltmarsh Supplies',
        lot: `L-${id}`,
        grade: 'fit for drinks',
      });
    takeIn([glycol('pg1'), glycol('pg2')]);
    const { 'carrier.food': _, ...plan } = clearPlan;
    expect(slotOf(runOf(plan), 'lot.propylene-glycol').state).toBe('empty');
    takeIn([kept({ ...plan, 'lot.propylene-glycol': 'pg2' })]);
    expect(textOf(runOf(plan), fieldOf(runOf(plan), 'lot.propylene-glycol')!)).toBe('pg2');
    takeIn([{ ...glycol('pg2'), useBy: '2001-02-03' }, glycol('pg3')]);
    expect(slotOf(runOf(plan), 'lot.propylene-glycol').state).toBe('empty'); // past its date
  });
});

describe('the sections of the page', () => {
  test('are drink, syrup, concentrate or emulsion, and weighing, each with what it comes to', () => {
    expect(titles(runOf(clearPlan))).toEqual([
      'Drink',
      'Syrup',
      'Acid',
      'Keeping',
      'Concentrate',
      'Weighing',
      'Label of the drink',
    ]);
    expect(titles(runOf({ ...clearPlan, make: 'emulsion', dosage: '2' }))).toContain('Emulsion');
    expect(wordsIn(runOf(clearPlan), 'Drink')).toContain('It weighs ‹20.76 kg›, at ‹1.038 g/mL›'); // 20 L of 10 °Brix
    // 6 × 103.8 g of sugar in a litre of syrup, which weighs 1.234 kg by the sucrose law; the 20 g of concentrate are not in it
    expect(wordsIn(runOf(clearPlan), 'Syrup')).toContain('The syrup has ‹50.7 °Brix› and weighs ‹4091 g›');
    expect(wordsIn(runOf({ ...clearPlan, into: 'syrup' }), 'Syrup')).toContain('‹50.5 °Brix› and weighs ‹4111 g›');
    expect(wordsIn(runOf(clearPlan), 'Concentrate')).toContain('‹5.19 % w/w› of it is formula.');
    expect(wordsIn(runOf({ ...clearPlan, fine: '0.01' }), 'Weighing')).toMatch(/Diluted first.*vanillin to \d+ %/);
  });

  test('ask for no more than the drink needs: no throw of no syrup, no amount of no acid, no spirit of no alcohol', () => {
    const names = (typed: Record<string, string>) =>
      recipeOf(runOf({ ...clearPlan, ...typed })).ask!.map(({ name }) => name);
    expect(names({ 'throw.n': '0' })).not.toContain('throw.by');
    expect(slotOf(runOf({ ...clearPlan, 'throw.n': '0' }), 'throw.n').text).toBe('No syrup');
    expect(names({ acid: 'none' })).not.toContain('acidity');
    expect(names({})).not.toContain('spirit');
    expect(names({ abv: '5' })).toEqual(expect.arrayContaining(['spirit', 'spirit.food']));
    expect(names({})).not.toContain('gum');
    expect(names({ make: 'emulsion' })).not.toContain('carrier');
  });

  test('say where a sum cannot be mended but there: each refusal stands on its own slot, and nothing is led on to', () => {
    const wrong = (typed: Record<string, string>) => {
      const run = runOf({ ...clearPlan, ...typed });
      expect(keysOf(run)).toEqual(['recipe']);
      return slotsOf(run, recipeOf(run)).flatMap(({ field, state }) => (state === 'impossible' ? field.name : []));
    };
    expect(wrong({ brix: '70', abv: '60', spirit: '96', 'spirit.food': 'yes' })).toEqual(['abv']);
    expect(wrong({ dose: '5000' })).toEqual(['dosage']);
    expect(wrong({ abv: '30', spirit: '40', 'spirit.food': 'yes' })).toEqual(['throw.n']);
    expect(wrong({ 'lot.linalool': 'b-linalool-nose' })).toEqual(['lot.linalool']);
    expect(wrong({ 'carrier.food': 'no' })).toEqual(['carrier.food']);
  });

  test('a gas is said with the gauge where it is cold and in a warm bottle', () => {
    const words = wordsIn(runOf({ ...clearPlan, gas: '3' }), 'Gas');
    const [cold, warm] = [...words.matchAll(/‹([\d.]+) bar›/g)].map(([, bar]) => Number(bar));
    expect(cold).toBeGreaterThan(0.9);
    expect(warm! / cold!).toBeGreaterThan(2.5);
    expect(answered(runOf({ ...clearPlan, gas: '3' }), false).typed['trait.carbonated']).toBe('yes');
    expect(answered(runOf({ ...clearPlan, gas: '3', 'trait.carbonated': 'no' }), false).typed['trait.carbonated']).toBe(
      'no',
    );
  });

  test('a full match of densities is no ring, not one after no time', () => {
    const made = { ...clearPlan, make: 'emulsion', dosage: '2', 'trait.citrus oil': 'yes', agent: 'agent-8050-30-4' };
    const matched = runOf({ ...made, dose: '40' });
    const words = wordsIn(matched, 'Emulsion');
    expect(words).not.toContain('no time');
    expect(/: matched/.test(words)).toBe(/no ring/.test(words));
  });
});

test('the button names the first movement of the hand, and the Book tells all sections', () => {
  const run = runOf(clearPlan);
  expect(recipeOf(run).done).toBe('Weigh 0.104 g of VANI neat');
  expect(recipeOf(runOf({ ...clearPlan, fine: '0.01' })).done).toMatch(/^Weigh [\d.]+ g of VANI neat$/);
  expect(recipeOf(run).card!.answer).toMatchObject({
    big: '20 g',
    lines: [expect.stringMatching(/^concentrate into the drink: 4.09 kg of syrup/), expect.anything()],
  });
  const { big, lines } = recipeOf(runOf({ ...clearPlan, spare: '25' })).card!.answer!;
  expect([big, ...lines.slice(0, 2)]).toEqual([
    '25 g',
    expect.stringMatching(/^concentrate into the drink: 4.\d+ kg/),
    '20 g of it is for this batch.',
  ]);
  const { say } = toldOf(recipeOf(run), run);
  for (const words of ['20 L of Orchard at 50 mg/kg', 'Syrup: 1 part to 5 of water', 'in propylene glycol'])
    expect(say).toContain(words);
});
