import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makingOf } from '../../../src/tasks/batch/progress';
import { recipeStep } from '../../../src/tasks/batch/recipeStep';
import { attempt, Refused } from '../../../src/workshop/attempt';
import type { RunState } from '../../../src/tasks/engine/fold';
import { faultsOf, runWith, wanted } from './feasible';

const recipe = (run: RunState) => recipeStep(run, null, false);
const isMade = (run: RunState) =>
  recipe(run).problem === undefined && !(attempt(() => makingOf(run)) instanceof Refused);

describe('whatever is asked for', () => {
  const counted = { made: 0, refused: 0, mended: 0, ways: 0 };

  test('what is not refused can be weighed on the scales that there are, fits its vessel, and every mass closes', () => {
    fc.assert(
      fc.property(wanted, (one) => {
        const run = runWith(one);
        if (!isMade(run)) return void counted.refused++;
        counted.made++;
        expect(faultsOf(run)).toEqual([]);
      }),
      { numRuns: 30, seed: 18 },
    );
    expect(counted.made).toBeGreaterThan(8);
    expect(counted.refused).toBeGreaterThan(5);
  });

  test('what is refused for the scale or the vessel says a way out, which is one', () => {
    fc.assert(
      fc.property(wanted, (one) => {
        const run = runWith(one);
        for (const name of ['fine', 'litres']) {
          const { wrong, mend } = recipe(run).card!.slots![name]!;
          if (wrong === undefined || mend?.type === undefined) continue;
          counted.ways++;
          const after = recipe({ ...run, typed: { ...run.typed, ...mend.type } }).card!.slots![name]!;
          if (after.wrong === undefined) counted.mended++;
          expect(after.wrong).toBeUndefined();
        }
      }),
      { numRuns: 30, seed: 181 },
    );
    expect(counted.ways).toBeGreaterThan(5);
  });
});
