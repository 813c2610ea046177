import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { batch } from '../../../src/tasks/batch/task';
import { fieldOf, keysOf, recipeOf, runOf, weighAll, wordsIn } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

/** The plan with only so many mg/kg of the oil and the linalool of the formula. */
const oils = (dose: string, more: Record<string, string> = {}) => {
  takeIn([
    newRecord('formula', {
      id: 'f2',
      name: 'Grove',
      root: 'f2',
      version: 1,
      notes: '',
      lines: [
        { material: 'nutmeg', name: 'nutmeg oil', share: 1 },
        { material: 'vanillin', name: 'vanillin', share: 1 },
      ],
    }),
  ]);
  return { ...clearPlan, what: 'f2', dose, ...more };
};
const wrongIn = (typed: Record<string, string>) =>
  Object.entries(recipeOf(runOf(typed)).card!.slots!).flatMap(([name, { wrong, mend }]) =>
    wrong ? [{ name, wrong, types: mend?.type }] : [],
  );

describe('every stage of a batch', () => {
  test('what the drink holds and the syrup does not goes into the drink, after the water', () => {
    const run = runOf(clearPlan); // 21 mg/L of an oil in the drink, 124 in the syrup
    expect(fieldOf(run, 'into')!.preset).toBe('drink');
    const keys = keysOf(run);
    expect(keys.indexOf('s.concentrate')).toBeGreaterThan(keys.indexOf('d.water'));
    const [made] = batch.keep(weighAll(clearPlan)) as [Batch];
    expect(made.weighed.find(({ id }) => id === 'concentrate')!.into).toBe('drink');
    expect(made.asked['into'] ?? 'drink').toBe('drink');
  });

  test('what both hold goes into the syrup, as ever', () => {
    expect(fieldOf(runOf({ ...clearPlan, dose: '0.5' }), 'into')!.preset).toBe('syrup');
    expect(fieldOf(runOf({ ...clearPlan, 'throw.n': '0' }), 'into')).toBeUndefined();
  });

  test('chosen against it, the syrup is refused with the way out', () => {
    const [first] = wrongIn({ ...clearPlan, into: 'syrup' });
    expect(first).toEqual({
      name: 'into',
      wrong: 'The syrup does not hold nutmeg oil, which is in it before the water: it would float on it as a ring.',
      types: { into: 'drink' },
    });
    expect(recipeOf(runOf({ ...clearPlan, into: 'syrup' })).problem).toBe(first!.wrong);
    expect(wrongIn(clearPlan)).toEqual([]);
  });

  test('a run that was begun in an older version goes on into its syrup', () => {
    const run = { ...runOf(clearPlan), done: { recipe: 1 } } as never;
    expect(keysOf(run).indexOf('s.concentrate')).toBeLessThan(keysOf(run).indexOf('d.water'));
  });

  test('a solution of more oil than the drink holds is refused: an emulsion, more alcohol or less of it', () => {
    const [first] = wrongIn(oils('90'));
    expect(first!.name).toBe('make');
    expect(first!.wrong).toMatch(
      /^The drink does not hold nutmeg oil: make an emulsion, or at least \d+ % ABV, or at most \d+(\.\d+)? mg\/kg\.$/,
    );
    expect(first!.types).toEqual({ make: 'emulsion' });
    const abv = /at least (\d+)/.exec(first!.wrong)![1]!;
    expect(wrongIn(oils('90', { abv, 'spirit.food': 'yes', 'throw.n': '0' }))).toEqual([]);
    const most = /at most ([\d.]+)/.exec(first!.wrong)![1]!;
    expect(wrongIn(oils(most))).toEqual([]);
  });

  test('a carrier that does not hold the concentrate is refused, with one that does', () => {
    const [first] = wrongIn(oils('5', { carrier: 'water' }));
    expect(first).toMatchObject({ name: 'carrier', types: { carrier: 'ethanol-96' } });
    expect(first!.wrong).toContain('does not hold nutmeg oil at this strength');
    expect(wrongIn(oils('5', { carrier: 'ethanol-96' }))).toEqual([]);
  });

  test('a carrier that the drink does not hold is refused too: MCT oil floats', () => {
    const [first] = wrongIn(oils('5', { carrier: 'mct' }));
    expect(first).toMatchObject({ name: 'carrier', types: { carrier: 'ethanol-96' } });
    expect(first!.wrong).toContain('The drink does not hold MCT oil');
  });

  test('the free acid of a preservative is held against the syrup, and a smaller throw mends it', () => {
    const keep = { ...clearPlan, dose: '1', sorbate: '250', 'throw.n': '6' };
    const [first] = wrongIn(keep);
    expect(first!.name).toBe('sorbate');
    expect(first!.wrong).toContain('In the syrup its free acid crystallises');
    expect(wrongIn({ ...keep, ...first!.types })).toEqual([]);
    expect(wrongIn({ ...keep, acid: 'none' })).toEqual([]); // without acid it stays a salt
  });

  test('each stage is told, the worst first', () => {
    const words = wordsIn(runOf(clearPlan), 'Concentrate');
    expect(words).toContain('It may stay dissolved in the drink');
    expect(words).toMatch(/nutmeg oil: ‹21 mg\/L› needed, the liquid holds \d/);
    expect(words).toContain('Whether the carrier holds it must be tried.');
  });
});
