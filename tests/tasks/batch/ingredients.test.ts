import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import type { Bottle } from '../../../src/records/kind/material';
import { find, newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { describeBatch } from '../../../src/app/describe/describeBatch';
import { labelOf } from '../../../src/app/describe/labelOf';
import { batch } from '../../../src/tasks/batch/task';
import { planOf } from '../../../src/tasks/batch/plan/plan';
import { allergensIn } from '../../../src/workshop/drinkable/allergensIn';
import { partsOfBatch } from '../../../src/workshop/drinkable/partsOfDrink';
import { costLines } from '../../../src/workshop/made/cost';
import { acidPerLitre, plannedOf } from '../../../src/workshop/made/measured';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { startWalking } from '../walking';
import { fieldOf, keysOf, recipeOf, runOf, weighAll, wordsIn } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

const material = (id: string, name: string, preparation: string) =>
  newRecord('material', {
    id,
    name,
    code: id.slice(0, 4).toUpperCase(),
    sort: 'natural',
    form: 'liquid',
    cautions: [],
    preparation,
  } as never);
const bottle = (id: string, of: string, facts: Partial<Bottle>) =>
  newRecord('bottle', {
    id,
    material: of,
    supplier: 'Saltmarsh Supplies',
    lot: `L-${id}`,
    grade: 'fit for drinks',
    amountG: 5000,
    ...facts,
  } as never);
const spirit = (id: string, facts: object = {}) =>
  newRecord('supply', {
    id,
    name: 'ethanol 96 %',
    sort: 'solvent',
    solvent: 'ethanol-96',
    grade: 'fit for drinks',
    unit: 'g',
    amount: 4000,
    supplier: 'Saltmarsh Supplies',
    lot: `L-${id}`,
    ...facts,
  } as never);

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
  takeIn([
    material('lemon', 'lemon juice', 'juice'),
    bottle('b-lemon', 'lemon', { holds: { brix: 8, acid: 0.06 }, allergens: [] }),
    material('gentian', 'gentian tincture', 'tincture'),
    bottle('b-gentian', 'gentian', { holds: { abv: 0.6 }, allergens: ['nuts', 'sulphites'] }),
    material('cinchona', 'cinchona extract', 'extract'),
    bottle('b-cinchona', 'cinchona', {
      holds: { solids: 0.1 },
      constituents: [{ cas: '130-95-0', name: 'quinine', share: 0.02 }],
    }),
    spirit('e1'),
  ]);
});

/** 20 L of a bitter lemonade of 5 % vol with 30 g of lemon juice and 10 g of gentian tincture in a litre. */
const plan = {
  ...clearPlan,
  abv: '5',
  'throw.n': '3',
  acidity: '3',
  'own.1': 'lemon',
  'own.1.g': '30',
  'own.2': 'gentian',
  'own.2.g': '10',
};
const kept = (typed: Record<string, string>) => batch.keep(weighAll({ ...typed, although: 'a test' }))[0] as Batch;
const weighedOf = (made: Batch, id: string) =>
  made.weighed.filter((one) => one.id === id).reduce((sum, one) => sum + one.massG.value, 0);

describe('ingredients of one’s own', () => {
  test('are not asked where the Shelf has none, nor what is in the formula', () => {
    expect(fieldOf(runOf(plan), 'own.1')!.options!.map(({ value }) => value)).toEqual([
      'cinchona',
      'gentian',
      'lemon',
      'none',
    ]);
    shelf.records.value = new Map();
    takeIn(batchShelf());
    expect(fieldOf(runOf(clearPlan), 'own.1')).toBeUndefined();
  });

  test('bring sugar, acid and alcohol to the drink, which is as strong, sweet and sour as was asked for', () => {
    const made = kept(plan);
    expect(made.drink.brix.value).toBeCloseTo(10, 2);
    expect(made.drink.abv.value).toBeCloseTo(5, 2);
    expect(made.drink.litres.value).toBeCloseTo(20, 2);
    const sour = weighedOf(made, 'citric-acid') + 0.06 * weighedOf(made, 'lemon');
    expect(sour / 20).toBeCloseTo(3, 2);
    expect(weighedOf(made, 'lemon')).toBeCloseTo(600, 0);
    expect(made.weighed.filter(({ own }) => own).map(({ id, source, lot, into }) => [id, source, lot, into])).toEqual([
      ['lemon', 'b-lemon', 'Saltmarsh Supplies, lot L-b-lemon', 'syrup'],
      ['gentian', 'b-gentian', 'Saltmarsh Supplies, lot L-b-gentian', 'syrup'],
    ]);
    expect(made.reached.map(({ material: id }) => id)).not.toContain('lemon');
    expect(acidPerLitre(made).value).toBeCloseTo(3, 2);
    expect(wordsIn(runOf(plan), 'Ingredients')).toContain(
      'They bring ‹0.0918 °Brix›, ‹1.8 g/L› of acid, ‹0.66 % ABV› to the drink.',
    );
  });

  test('every gram of the drink is in one line, wherever they go', () => {
    for (const into of ['syrup', 'drink']) {
      const now = planOf(runOf({ ...plan, 'own.1.into': into }))!;
      const lines = [...now.syrup, ...now.late, ...now.concentrate];
      const all = lines.reduce((sum, { mass }) => sum + mass, now.water);
      expect(all).toBeCloseTo(now.batch.drink.mass, 6);
      expect(now.late.map(({ goods }) => goods.id)).toEqual(into === 'drink' ? ['lemon'] : []);
    }
    const made = kept({ ...plan, 'own.1.into': 'drink' });
    expect(made.drink.brix.value).toBeCloseTo(10, 2);
    expect(made.weighed.at(-1)).toMatchObject({ id: 'lemon', into: 'drink' });
  });

  test('go down on the Shelf with the spirit, by lot', () => {
    const made = kept(plan);
    takeIn([made]);
    expect(leftOf(find('bottle', 'b-lemon')!)!.value).toBeCloseTo(5000 - weighedOf(made, 'lemon'), 6);
    expect(leftOf(find('bottle', 'b-gentian')!)!.value).toBeCloseTo(5000 - weighedOf(made, 'gentian'), 6);
    const spirits = made.weighed.find(({ id }) => id === 'spirit')!;
    expect(spirits).toMatchObject({ source: 'e1', lot: 'Saltmarsh Supplies, lot L-e1' });
    expect(leftOf(find('supply', 'e1')!)!.value).toBeCloseTo(4000 - spirits.massG.value, 6);
  });

  test('cost what their bottles cost', () => {
    takeIn([bottle('b-lemon', 'lemon', { holds: { brix: 8, acid: 0.06 }, pricePerG: 0.01 })]);
    const made = kept({ ...plan, loss: '2' });
    const line = costLines(made).find(({ id }) => id === 'b-lemon')!;
    expect(line.amount * line.price!).toBeCloseTo((600 / 0.98) * 0.01, 1);
    expect(plannedOf(made).litres).toBeCloseTo(20 / 0.98, 9);
  });

  test('name what a label has to name, from their bottles up', () => {
    const made = kept(plan);
    takeIn([made]);
    expect(allergensIn(made)).toEqual({ known: ['nuts', 'sulphites'], all: false });
    expect(describeBatch(made).facts!.find(([name]) => name === 'Allergens')![1]).toBe(
      'nuts, sulphites; not all bottles were looked at',
    );
    expect(JSON.stringify(labelOf(made, 'vial'))).toContain('contains nuts, sulphites');
    expect(wordsIn(runOf(plan), 'Ingredients')).toContain('A label names ‹nuts, sulphites›.');
  });

  test('are judged by what is in them: quinine of an extract, over its limit', () => {
    const bitter = { ...clearPlan, 'own.1': 'cinchona', 'own.1.g': '10', although: 'a test' };
    const made = kept(bitter);
    const over = made.checks.find(({ what }) => what.includes('quinine'))!;
    expect(over).toMatchObject({ state: 'over' });
    const mgPerKg =
      (weighedOf(made, 'cinchona') * 0.02 * 1e6) / (made.drink.litres.value * 1000 * made.drink.densityGPerMl.value);
    expect(over.words).toContain(`${mgPerKg.toFixed(0)} ± `);
    takeIn([made]);
    expect(partsOfBatch(made).parts.find(({ id }) => id === 'cinchona')!.mgPerKg.value).toBeCloseTo(mgPerKg / 0.02, 3);
  });

  test('that bring more sugar or acid than the drink is to have are refused, with the way out', () => {
    const sour = { ...plan, acidity: '1' };
    expect(recipeOf(runOf(sour)).problem).toContain(
      'The ingredients alone bring 1.800 g/L of acid: ask for that much, or take less of them',
    );
    expect(keysOf(runOf(sour))).toEqual(['recipe']);
    expect(recipeOf(runOf({ ...plan, brix: '0.05' })).problem).toContain('°Brix of sugar');
  });

  test('are what they were last time for the same formula, and made again with the lots of then', () => {
    const made = kept(plan);
    takeIn([made]);
    const again = runOf({});
    expect(fieldOf(again, 'own.1')!.preset).toBe('lemon');
    expect(fieldOf(again, 'own.2.g')!.preset).toBe('10');
    const run = newRecord('run', { id: 'run', task: 'batch', kept: [made.id], title: '' });
    const { typed } = repeatOf(batch, run, runOf(plan));
    expect(typed).toMatchObject({ 'own.1': 'lemon', 'lot.lemon': 'b-lemon', 'lot.spirit': 'e1' });
  });

  test('in a vessel that is begun again are counted as lost, and no gram goes missing', () => {
    const walker = startWalking(batch, { ...plan, although: 'a test', 'carrier.food': 'yes' });
    while (walker.step().key !== 's.gentian') {
      const whole = walker.step().offers?.find(({ words }) => /xactly/.test(words));
      for (const [name, text] of Object.entries(whole?.type ?? {})) walker.type(name, text);
      walker.next();
    }
    const before = Number(walker.state().typed['mass.s.lemon']);
    const begin = walker.step().offers!.find(({ words }) => words.startsWith('Begin this vessel'))!;
    for (const [name, text] of Object.entries(begin.type!)) walker.type(name, text);
    const made = batch.keep(weighAll({ ...walker.state().typed }))[0] as Batch;
    const used = made.uses.find(({ id }) => id === 'b-lemon')!.massG;
    expect(made.lost!.find(({ id }) => id === 'b-lemon')!.massG).toBeCloseTo(before, 6);
    expect(used).toBeCloseTo(before + weighedOf(made, 'lemon'), 6);
  });
});

describe('the spirit of a drink', () => {
  test('comes from the bottle used last, with its strength; one that is denatured is refused', () => {
    expect(fieldOf(runOf(plan), 'lot.spirit')!.preset).toBe('e1');
    expect(fieldOf(runOf(plan), 'spirit')).toBeUndefined();
    expect(fieldOf(runOf(plan), 'spirit.food')).toBeUndefined(); // its label says so
    takeIn([spirit('e2')]);
    expect(fieldOf(runOf(plan), 'lot.spirit')!.preset).toBe(''); // either will do
    takeIn([kept({ ...plan, 'lot.spirit': 'e1' })]);
    expect(fieldOf(runOf(plan), 'lot.spirit')!.preset).toBe('e1');
    takeIn([spirit('e1', { grade: 'smell only' })]);
    expect(() => kept({ ...plan, 'lot.spirit': 'e1' })).toThrow('smell only');
  });

  test('is typed where it is none of the Shelf, as a run of an older version has it', () => {
    const typed = { ...plan, spirit: '40', 'spirit.food': 'yes' };
    expect(fieldOf(runOf(typed), 'lot.spirit')!.preset).toBe('none');
    const made = kept(typed);
    expect(made.weighed.find(({ id }) => id === 'spirit')).toMatchObject({ source: null, name: 'spirit, 40 % ABV' });
    expect(made.drink.abv.value).toBeCloseTo(5, 2);
  });
});
