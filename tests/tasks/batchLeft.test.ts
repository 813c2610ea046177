import { beforeEach, describe, expect, test } from 'vitest';
import { expanded } from '../../src/core/measured';
import type { Batch } from '../../src/records/batch';
import type { AnyRecord } from '../../src/records/kinds';
import { ancestors } from '../../src/records/lineage';
import { shelf, takeIn } from '../../src/records/shelf';
import type { Vial } from '../../src/records/vial';
import { batch } from '../../src/tasks/batch/task';
import { dose } from '../../src/tasks/dose/task';
import { bottlesOf, carriersOf } from '../../src/tasks/carrier';
import { refusalOf } from '../../src/tasks/fitForDrinks';
import { freshRun, type RunState } from '../../src/tasks/fold';
import { batchShelf, clearPlan } from './batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

/** Weighs what is asked for, exactly, until nothing more is asked. */
function weighAll(typed: Record<string, string>): RunState {
  const run = { ...freshRun, typed };
  const next = batch.steps(run).flatMap(({ offers = [] }) => offers.filter(({ words }) => /xactly/.test(words)))[0];
  return next ? weighAll({ ...typed, ...next.type }) : run;
}

const lastStep = (run: RunState) => batch.steps({ ...run, at: 'name' }).find(({ key }) => key === 'name')!;
const asked = (run: RunState) => lastStep(run).ask!.map(({ name }) => name);
const massTaken = (records: readonly AnyRecord[], id: string) =>
  records
    .flatMap((record) => ('uses' in record ? record.uses : []))
    .reduce((sum, use) => sum + (use.id === id ? use.massG : 0), 0);

describe('the concentrate that is left over', () => {
  const plan = { ...clearPlan, spare: '25' };

  test('a quarter more is made, as much is poured as the drink needs, and the rest becomes a vial without a word', () => {
    const run = weighAll(plan);
    expect(asked(run)).toEqual(['name', 'notes', 'left', 'left.code']);
    expect(lastStep(run).more!.join(' ')).toMatch(/‹5\.00\d* ± [\d.]+ g› of the concentrate are left/);
    const [made, vial] = batch.keep(run) as [Batch, Vial];
    expect(made.weighed.find(({ id }) => id === 'concentrate')!.massG.value).toBeCloseTo(20, 2);
    expect(made.reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0)).toBeCloseTo(50, 0);
    expect(vial).toMatchObject({ kind: 'vial', code: 'C1', name: 'Orchard, concentrate', grade: 'fit for drinks' });
    expect(vial.massG.value).toBeCloseTo(5, 2);
    expect(expanded(vial.massG)).toBeGreaterThan(0);
  });

  test('its strengths are those weighed, with ±: 50 mg/kg at 1 g/L is 51.9 mg/g, two fifths of it nutmeg', () => {
    const [, vial] = batch.keep(weighAll(plan)) as [Batch, Vial];
    const nutmeg = vial.contents.find(({ material }) => material === 'nutmeg')!.strength;
    expect(nutmeg.value).toBeCloseTo((0.4 * 50 * 1.0381) / 1000, 4); // mg/kg × kg/L over 1000 mg/L, w = c/(1000 D)
    expect(expanded(nutmeg)).toBeGreaterThan(0);
    expect(vial.label).toEqual({ value: 5.19, basis: '% w/w' });
    expect(carriersOf(vial)).toMatchObject([{ id: 'propylene-glycol' }]);
    expect(carriersOf(vial)[0]!.share).toBeCloseTo(1 - 0.0519, 3);
    expect(vial.densityGPerMl).toBeGreaterThan(1);
  });

  test('a slip while weighing is in its strengths', () => {
    const first = weighAll({ ...plan, 'mass.c.vanillin': '0.2', 'over.c.vanillin': 'keep' });
    const [, vial] = batch.keep(first) as [Batch, Vial];
    const vanillin = vial.contents.find(({ material }) => material === 'vanillin')!.strength.value;
    expect(vanillin).toBeCloseTo(0.2 / (25 + 0.2 - 0.1298), 5); // 0.1298 g were asked for, the rest was weighed as planned
  });

  test('it may go into a drink, and is traced over the batch to its lots and their certificates', () => {
    const records = batch.keep(weighAll(plan)) as [Batch, Vial];
    takeIn(records);
    const [made, vial] = records;
    expect(refusalOf(vial)).toBeNull();
    expect(
      bottlesOf(vial)
        .map(({ id }) => id)
        .sort(),
    ).toEqual(['b-linalool', 'b-maltol', 'b-nutmeg', 'b-vanillin']);
    const behind = ancestors(vial.id).map(({ record }) => record.id);
    expect(behind).toEqual(expect.arrayContaining([made.id, 'f1', 'b-linalool']));
  });

  test('a drink is dosed with it as with any vial: it is offered, and not refused', () => {
    const records = batch.keep(weighAll(plan)) as [Batch, Vial];
    takeIn(records);
    const steps = (vial: string) => dose.steps({ ...freshRun, typed: { vial } });
    const [first] = steps(records[1].id);
    expect(first!.ask![0]!.options!.map(({ value }) => value)).toContain(records[1].id);
    expect(first!.problem).toBeUndefined();
    expect(steps(records[1].id).length).toBeGreaterThan(1);
  });

  test('what batch and vial took together is what left the bottle, thinned stocks included', () => {
    for (const fine of ['0.001', '0.01']) {
      const run = weighAll({ ...plan, fine });
      const both = batch.keep(run);
      const [alone] = batch.keep({ ...run, typed: { ...run.typed, left: 'away' } });
      for (const id of ['b-nutmeg', 'b-vanillin']) expect(massTaken(both, id)).toBeCloseTo(massTaken([alone!], id), 9);
      const vial = both[1] as Vial;
      const neat = vial.contents.reduce((sum, { strength }) => sum + strength.value, 0) * vial.massG.value;
      expect(vial.uses.reduce((sum, { massG }) => sum + massG, 0)).toBeCloseTo(neat, 6); // bottles here are pure
    }
  });

  test('is not kept where that is chosen, and nothing is asked where all of it is in the drink', () => {
    const run = weighAll(plan);
    const away = { ...run, typed: { ...run.typed, left: 'away' } };
    expect(batch.keep(away)).toHaveLength(1);
    expect(asked(away)).toEqual(['name', 'notes', 'left']);
    const all = weighAll(clearPlan);
    expect(asked(all)).toEqual(['name', 'notes']);
    expect(batch.keep(all)).toHaveLength(1);
  });

  test('of an emulsion keeps in its water, and what a dose of it does not count is said', () => {
    const run = weighAll({ ...plan, make: 'emulsion', agent: 'agent-8050-30-4', dosage: '2' });
    expect(lastStep(run).more!.join(' ')).toContain('gum and weighting agent are not counted');
    const [, vial] = batch.keep(run) as [Batch, Vial];
    expect(vial.solvent).toMatchObject({ id: 'water', food: true });
  });
});
