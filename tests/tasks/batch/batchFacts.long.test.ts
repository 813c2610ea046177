import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balanceOf } from '../../../src/records/balance';
import type { Batch } from '../../../src/records/kind/batch';
import { find, newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { batch } from '../../../src/tasks/batch/task';
import { recordsOf } from '../../../src/tasks/engine/recordsOf';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { seeded } from '../../core/seeded';
import { leftBottle, madeByHand } from './batchHand';
import { weighAll } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

const MATERIALS = ['nutmeg', 'linalool', 'maltol', 'vanillin'];
const MG = 0.001;
const pg = newRecord('supply', {
  id: 'b-propylene-glycol',
  name: 'propylene glycol',
  sort: 'solvent',
  solvent: 'propylene-glycol',
  grade: 'fit for drinks',
  unit: 'g',
  amount: 1000,
  supplier: 'made up',
  lot: 'pg',
});

const plans = fc.record({
  seed: fc.integer(),
  fine: fc.constantFrom('0.001', '0.01'),
  spare: fc.constantFrom('0', '25', '150'),
  left: fc.constantFrom('keep', 'away'),
});

/** A batch by a hand that slips, as the engine stores it. */
function made({ seed, ...asked }: { seed: number; fine: string; spare: string; left: string }) {
  shelf.records.value = new Map();
  takeIn([...batchShelf(), pg]);
  const did = madeByHand({ ...clearPlan, ...asked, 'lot.propylene-glycol': pg.id }, seeded(seed));
  const state = did.walker.state();
  const records = recordsOf(batch, 'r', { state, events: [], endedAt: '2027-02-01T10:00:00.000Z' });
  takeIn(records);
  return { did, state, records, made: records[0] as Batch };
}

describe('a batch, with whatever slips, ways on and vessels begun again', () => {
  test('what is stored is what was done: what is in it, what was over, and every gram that left a bottle', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { did, made: batch } = made(plan);
        const last = (vessel: string) =>
          Math.max(...did.weighed.filter((one) => one.vessel === vessel).map(({ attempt }) => attempt));
        const isIn = did.weighed.filter(({ vessel, attempt }) => attempt === last(vessel));
        const told = batch.weighed.map(({ id, massG }) => [id, massG.value]);
        expect([...told].sort()).toEqual(isIn.map(({ id, massG }) => [id, massG]).sort());
        const slips = (batch.done!.slips ?? []).map(({ counted, way }) => [counted, way]);
        expect([...slips].sort()).toEqual(did.slips.map(({ massG, way }) => [massG, way]).sort());
        for (const id of [...MATERIALS, 'propylene-glycol']) {
          const taken = leftBottle(did, id, 'propylene-glycol');
          const thing = find('bottle', `b-${id}`) ?? find('supply', `b-${id}`)!;
          const { full, left, isIn: inThings, lost } = balanceOf(thing)!;
          const sum = (all: readonly { amount: number }[]) => all.reduce((grams, { amount }) => grams + amount, 0);
          expect(Math.abs(full - left - taken)).toBeLessThan(MG / 1000);
          expect(Math.abs(full - left - sum(inThings) - sum(lost))).toBeLessThan(MG / 1000);
          for (const { amount } of [...inThings, ...lost]) expect(amount).toBeGreaterThan(0);
        }
        const drinkG = batch.drink.litres.value * 1000 * batch.drink.densityGPerMl.value;
        for (const { material, mgPerKg } of batch.reached) {
          const { isIn: inThings } = balanceOf(find('bottle', `b-${material}`)!)!;
          const grams = inThings.find(({ record }) => record.id === batch.id)!.amount;
          expect(Math.abs(grams / ((mgPerKg.value / 1e6) * drinkG) - 1)).toBeLessThan(0.002); // the rest of a pour within the scale's ±
        }
      }),
      { numRuns: 15 },
    );
  });

  test('made again it is the plan as it was asked for, from the same lots, and nothing of what went wrong', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { state, records, made: first } = made(plan);
        const run = newRecord('run', { id: 'r', task: 'batch', kept: records.map(({ id }) => id), title: '' });
        const { typed, differences } = repeatOf(batch, run, state);
        expect(differences).toEqual([]);
        expect(Object.keys(typed).filter((key) => /^(begun|mass\.|over\.)/.test(key))).toEqual([]);
        const second = batch.keep(weighAll({ ...typed, 'carrier.food': 'yes' }))[0] as Batch;
        const fresh = batch.keep(
          weighAll({ ...clearPlan, ...plan, seed: '', 'lot.propylene-glycol': pg.id }),
        )[0] as Batch;
        const grams = ({ weighed }: Batch) => weighed.map(({ id, source, massG }) => [id, source, massG.value]);
        expect(grams(second)).toEqual(grams(fresh));
        expect(second.formula).toEqual(first.formula);
      }),
      { numRuns: 8 },
    );
  });
});
