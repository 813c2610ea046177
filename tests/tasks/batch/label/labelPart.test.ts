import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../../src/records/kind/batch';
import { shelf, takeIn } from '../../../../src/records/shelf';
import { draftOf } from '../../../../src/workshop/drinkLabel/draft';
import { batchToLabel } from '../../../../src/workshop/drinkLabel/ofBatch';
import { plannedToLabel } from '../../../../src/tasks/batch/label/planned';
import { planOf } from '../../../../src/tasks/batch/plan/plan';
import { plannedDrink } from '../../../../src/tasks/batch/progress';
import { batch } from '../../../../src/tasks/batch/task';
import { recipeOf, runOf, weighAll, wordsIn } from '../batchRuns';
import { batchShelf, clearPlan } from '../batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

type Typed = Record<string, string>;
const plan = (typed: Typed = {}): Typed => ({ ...clearPlan, 'throw.n': '0', ...typed });
const said = (typed: Typed = {}) => wordsIn(runOf(plan(typed)), 'Label of the drink');
const sectionOf = (typed: Typed = {}) =>
  recipeOf(runOf(plan(typed))).card!.sections!.find(({ title }) => title === 'Label of the drink');

describe('the label of the drink', () => {
  test('follows the recipe, and asks for nothing that has to be there', () => {
    expect(sectionOf()!.sentence).toBe('A draft under EU law');
    expect(sectionOf({ 'label.ml': '330' })!.sentence).toBe('A draft under EU law, in bottles of {label.ml}');
    const { ask, card } = recipeOf(runOf(plan()));
    for (const name of ['label.name', 'label.ml']) {
      expect(ask!.map((field) => field.name)).toContain(name);
      expect(card!.slots![name]!.optional).toBe(true);
    }
    expect(said({ sorbate: '250' })).toMatch(/preservative: potassium sorbate/);
    expect(said()).not.toMatch(/preservative: potassium/);
    expect(said({ jurisdiction: 'US' })).toMatch(/Calories/);
    expect(said()).toMatch(/A draft, never the law/);
  });

  test('is not there while there is no plan', () => {
    expect(sectionOf({ litres: '' })).toBeUndefined();
  });

  test.each([
    [
      'a still lemonade',
      { benzoate: '150', sorbate: '250', 'salt.g': '0.5', 'label.name': 'Lemonade', 'label.ml': '500' },
    ],
    ['one thrown with water, with gas', { 'throw.n': '5', gas: '3', 'sweet.1': 'sucralose', 'sweet.1.mg': '100' }],
    ['a liqueur', { brix: '19', abv: '25', spirit: '96', 'spirit.food': 'yes' }],
  ])('of %s is the same when it is made as it was planned', (_, typed) => {
    const run = weighAll(plan(typed as Typed));
    const asPlanned = planOf(run)!;
    const planned = plannedToLabel(run, asPlanned, plannedDrink(asPlanned));
    const made = batch.keep(run).find((one): one is Batch => one.kind === 'batch')!;
    takeIn([made]);
    const kept = batchToLabel(made);
    const grams = ({ puts }: typeof kept) =>
      puts.reduce<Record<string, number>>(
        (sum, { id, gramsPerL }) => ({ ...sum, [id]: (sum[id] ?? 0) + gramsPerL }),
        {},
      );
    const [before, after] = [grams(planned), grams(kept)];
    for (const [id, amount] of Object.entries(before))
      if (amount > 0) expect(Math.abs(after[id]! / amount - 1), id).toBeLessThan(0.01);
    const words = (of: typeof kept) => draftOf(of).filter(({ what }) => !['Lot', 'Volume', 'Best before'].includes(what)).map(({ words }) => words); // prettier-ignore
    expect(words(kept)).toEqual(words(planned));
    expect(draftOf(kept).find(({ what }) => what === 'Lot')!.words).toMatch(/^L B\d/);
  });
});
