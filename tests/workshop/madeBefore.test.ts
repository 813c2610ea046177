import { beforeEach, describe, expect, test } from 'vitest';
import type { Tasting } from '../../src/records/kind/drink';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { batch } from '../../src/tasks/batch/task';
import { madeBefore } from '../../src/workshop/madeBefore';
import { weighAll } from '../tasks/batch/batchRuns';
import { batchShelf, clearPlan } from '../tasks/batch/batchShelf';
import { vialOf } from '../tasks/count/countShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

const madeOn = <R extends AnyRecord>(record: R, day: string): R => ({ ...record, made: `${day}T00:00:00.000Z` });
const trial = (id: string, formula: string) => ({ ...vialOf(id, 0.01, { material: 'linalool' }), from: [formula] });
const dosed = (vial: string) => ({ vial, code: vial, drops: 1, massG: { value: 0.02, sources: [] } });
const tasting = (vials: readonly string[], mgPerKg: number, facts: object = {}): Tasting =>
  newRecord('tasting', {
    from: [...vials],
    doses: vials.map(dosed),
    reached: [{ material: 'linalool', name: 'linalool', mgPerKg: { value: mgPerKg, sources: [] } }],
    base: { name: 'soda', volumeMl: 100, brix: 8, abv: 0.5, densityGPerMl: 1.03 },
    verdict: '',
    liking: null,
    uses: [],
    ...facts,
  });

describe('the last drink of a formula', () => {
  test('is none where nothing was made of it, whatever else was tasted', () => {
    takeIn([trial('t', 'other'), tasting(['t'], 30)]);
    expect(madeBefore('f1')).toBeNull();
  });

  test('is the newest of batches and tastings of any of its versions', () => {
    const second = { ...batchShelf().find(({ id }) => id === 'f1')!, id: 'f1-2', version: 2 };
    const made = batch.keep(weighAll(clearPlan))[0]!;
    takeIn([second as never, trial('t', 'f1-2'), madeOn(tasting(['t'], 30), '2026-05-01')]);
    expect(madeBefore('f1')).toMatchObject({ name: 'soda', mgPerKg: 30, brix: 8, abv: 0.5, densityGPerMl: 1.03 });
    takeIn([madeOn(made, '2026-06-01')]);
    expect(madeBefore('f1')!.mgPerKg).toBeCloseTo(50, 0);
    expect(madeBefore('f1')!.brix).toBeCloseTo(10, 1);
  });

  test('is not one that was dosed from several vials, nor a glass of a ladder that was not the best', () => {
    const glass = (best: boolean) => ({ glass: { code: 'K', blind: false, best } });
    takeIn([trial('t', 'f1'), trial('u', 'f1'), tasting(['t', 'u'], 30), tasting(['t'], 40, glass(false))]);
    expect(madeBefore('f1')).toBeNull();
    takeIn([tasting(['t'], 20, glass(true))]);
    expect(madeBefore('f1')!.mgPerKg).toBe(20);
  });
});
