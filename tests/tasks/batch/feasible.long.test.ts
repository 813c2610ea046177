import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import { batch } from '../../../src/tasks/batch/task';
import { loadsOf, stepOf } from '../../../src/tasks/batch/vessel/pour';
import { makingOf } from '../../../src/tasks/batch/progress';
import { recipeStep } from '../../../src/tasks/batch/recipeStep';
import { attempt, Refused } from '../../../src/workshop/attempt';
import { faultsOf, runWith, wanted, weighings } from './feasible';
import { weighAll } from './batchRuns';

const sum = (all: readonly number[]) => all.reduce((grams, one) => grams + one, 0);

test('three hundred random formulas, drinks and scales: nothing is asked that cannot be weighed or fit its vessel', () => {
  const counted = { made: 0, refused: 0, diluted: 0, parts: 0 };
  fc.assert(
    fc.property(wanted, (one) => {
      const run = runWith(one);
      if (recipeStep(run, null, false).problem !== undefined || attempt(() => makingOf(run)) instanceof Refused)
        return void counted.refused++;
      counted.made++;
      expect(faultsOf(run)).toEqual([]);
      const { vessel, syrup } = makingOf(run)!;
      const all = [...vessel.pours, ...syrup.pours];
      if (all.some(({ stock }) => stock)) counted.diluted++;
      if (all.some((pour) => weighings(pour).some(({ grams, scale }) => loadsOf(run, grams, scale) > 1)))
        counted.parts++;
    }),
    { numRuns: 300, endOnFailure: true },
  );
  console.log(`Random batches: ${JSON.stringify(counted)}`);
  expect(Math.min(...Object.values(counted))).toBeGreaterThan(5);
});

test('some of them weighed to the last gram: the drink is what was asked for, and what left the bottles is in it or lost', () => {
  let made = 0;
  fc.assert(
    fc.property(wanted, (one) => {
      const run = runWith(one);
      if (recipeStep(run, null, false).problem !== undefined || attempt(() => makingOf(run)) instanceof Refused) return;
      made++;
      const done = weighAll(run.typed as Record<string, string>);
      const record = batch.keep(done)[0] as Batch;
      const within = 3 * Number(run.typed['tolerance']) * 0.01; // each weighing is good to that, and so are sums of a few
      const near = (now: number, asked: number, floor: number) =>
        expect(Math.abs(now - asked)).toBeLessThan(within * asked + floor + 1e-9);
      const litres = Number(run.typed['litres']) / (1 - Number(run.typed['loss']) / 100);
      near(record.drink.litres.value, litres, 0);
      if (run.typed['brix'] !== '0') near(record.drink.brix.value, Number(run.typed['brix']), 0);
      near(sum(record.reached.map(({ mgPerKg }) => mgPerKg.value)), Number(run.typed['dose']), 0);
      const steps = 5 * stepOf(run, 'coarse') + 20 * stepOf(run, 'fine');
      const intoDrink = sum(
        record.weighed.filter(({ into }) => into !== 'concentrate').map(({ massG }) => massG.value),
      );
      near(intoDrink, litres * 1000 * record.drink.densityGPerMl.value, steps);
      for (const { id, massG } of record.uses) {
        const lost = sum((record.lost ?? []).filter((one) => one.id === id).map((one) => one.massG));
        const weighed = record.weighed.filter(({ source }) => source === id);
        const own = sum(weighed.map((one) => one.massG.value * (one.share ?? 1)));
        if (id.startsWith('b-')) expect(massG - lost).toBeLessThan(own * (1 + 1e-6) + 1e-9);
        expect(massG).toBeGreaterThan(0);
      }
    }),
    { numRuns: 16, seed: 6, endOnFailure: true },
  );
  console.log(`Weighed to the end: ${made}`);
  expect(made).toBeGreaterThan(2);
});
