import fc from 'fast-check';
import { expect, test } from 'vitest';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { planOf } from '../../../src/tasks/batch/plan/plan';
import { stagesOf } from '../../../src/tasks/batch/plan/stages';
import { outcome } from '../../../src/workshop/attempt';
import { keysOf, recipeOf, runOf } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

const IDS = ['nutmeg', 'linalool', 'maltol', 'vanillin'] as const;

test('whatever formula, drink and carrier: what the page lets through is dissolved at every stage, or made as an emulsion that can be', () => {
  const asked = fc.record({
    shares: fc.tuple(...IDS.map(() => fc.double({ min: 0.01, max: 1, noNaN: true }))),
    dose: fc.constantFrom('1', '10', '60', '300', '3000'),
    abv: fc.constantFrom('0', '5', '20', '40'),
    brix: fc.constantFrom('0', '10'),
    'throw.n': fc.constantFrom('0', '1', '5'),
    carrier: fc.constantFrom('ethanol-96', 'propylene-glycol', 'water', 'mct', 'glycerol'),
    make: fc.constantFrom('clear', 'emulsion'),
    dosage: fc.constantFrom('0.5', '1', '4'),
    sorbate: fc.constantFrom('0', '250'),
    into: fc.constantFrom('syrup', 'drink'),
  });
  let [passed, refused] = [0, 0];
  fc.assert(
    fc.property(asked, ({ shares, ...typed }) => {
      shelf.records.value = new Map();
      const lines = IDS.map((id, i) => ({ material: id, name: id, share: shares[i]! }));
      takeIn([...batchShelf(), newRecord('formula', { id: 'any', name: 'Any', root: 'any', version: 1, notes: '', lines })]); // prettier-ignore
      const run = runOf({ ...clearPlan, ...typed, what: 'any', although: 'a test', 'spirit.food': 'yes' });
      const stuck = Object.values(recipeOf(run).card!.slots!).some(({ wrong }) => wrong);
      if (stuck || !outcome(() => planOf(run)).value) return void refused++;
      passed++;
      expect(stagesOf(run).map(({ name, stage }) => [name, stage.verdict])).not.toContainEqual([expect.anything(), 'stays cloudy']); // prettier-ignore
      const plan = planOf(run)!;
      if (plan.emulsion) {
        expect(plan.emulsion.gum / (plan.emulsion.gum + plan.emulsion.water)).toBeLessThanOrEqual(0.3 * (1 + 1e-9));
        expect(keysOf(run)).toContain('e.fine');
        expect(plan.drink.abv).toBeLessThanOrEqual(20);
      }
    }),
    { numRuns: 60 },
  );
  console.info(`random batches: ${passed} let through, ${refused} refused with a way out`);
  expect(Math.min(passed, refused)).toBeGreaterThan(5);
});
