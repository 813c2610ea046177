import { beforeEach, describe, expect, test } from 'vitest';
import { expanded } from '../../../src/core/number/measured';
import type { Batch } from '../../../src/records/kind/batch';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import { ancestors } from '../../../src/records/lineage';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { batch } from '../../../src/tasks/batch/task';
import { glassOf } from '../../../src/tasks/dose/glass';
import { judgeGlass } from '../../../src/tasks/dose/parts';
import { dose } from '../../../src/tasks/dose/task';
import { bottlesOf, carriersOf } from '../../../src/workshop/thing/carrier';
import { refusalOf } from '../../../src/workshop/drinkable/grade';
import { freshRun, type RunState } from '../../../src/tasks/engine/fold';
import { weighAll } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

const oneOil = newRecord('formula', {
  id: 'f2',
  name: 'Nutmeg alone',
  root: 'f2',
  version: 1,
  notes: '',
  lines: [{ material: 'nutmeg', name: 'nutmeg oil', share: 1 }],
});

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([...batchShelf(), oneOil]);
});

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
    const steps = (vial: string) => dose.steps({ ...freshRun, typed: { vial, 'base.name': 'soda' } });
    const [first] = steps(records[1].id);
    expect(first!.ask![0]!.options!.map(({ value }) => value)).toContain(records[1].id);
    expect(first!.card!.slots!['vial']!.wrong).toBeUndefined();
    expect(first!.counting).toBeDefined();
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

  test('of an emulsion keeps in its water, with gum and weighting agent in their true shares', () => {
    const [made, vial] = batch.keep(weighAll(cloudy)) as [Batch, Vial];
    expect(vial.solvent).toMatchObject({ id: 'water', food: true });
    const concentrate = made.weighed.filter(({ into }) => into === 'concentrate');
    const whole = concentrate.reduce((sum, { massG }) => sum + massG.value, 0);
    expect(vial.beside!.map(({ id }) => id)).toEqual(['agent-8050-30-4', 'gum-arabic']);
    for (const { id, share } of vial.beside!)
      expect(share).toBeCloseTo(concentrate.find((one) => one.id === id)!.massG.value / whole, 9);
    const neat = vial.contents.reduce((sum, { strength }) => sum + strength.value, 0);
    expect(carriersOf(vial).reduce((sum, { share }) => sum + share, neat)).toBeCloseTo(1, 9);
  });

  test('a dose of an emulsion is counted against the cap of its weighting agent, in a drink that it makes cloudy', () => {
    const records = batch.keep(weighAll(cloudy)) as [Batch, Vial];
    takeIn(records);
    const [, vial] = records;
    const share = vial.beside![0]!.share;
    const judged = judgeDose(vial.id, (1.5 * 0.1) / share); // g into a litre: half as much again as 100 mg/L of the agent
    const found = judged.findings.find(({ what }) => what.includes('E 445'))!;
    expect(found).toMatchObject({ state: 'over', max: 100, unit: 'mg/L' });
    expect(found.amount.value).toBeCloseTo(150, 0);
    expect(judged.has).toEqual(['cloudy']);
    expect(judged.ceilings.find(({ finding }) => finding === found)!.times).toBeCloseTo(1 / 1.5, 2);
    const still = judgeDose(vial.id, 1, { 'trait.cloudy': 'no' }).findings.find(({ what }) => what.includes('E 445'))!;
    expect(still.rule).toContain('not named for this kind of drink');
  });

  test('so is a dose of what was thinned from it, and a batch that is made from such a vial', () => {
    const records = batch.keep(weighAll({ ...cloudy, what: 'f2', although: 'a trial' })) as [Batch, Vial];
    const [, vial] = records;
    const thin = {
      ...vial,
      id: 'thin',
      code: 'THIN',
      from: [vial.id],
      uses: [{ id: vial.id, massG: 1 }],
      massG: { value: 4, sources: [] },
      contents: vial.contents.map((part) => ({ ...part, strength: { value: part.strength.value / 4, sources: [] } })),
      beside: undefined,
    };
    takeIn([...records, thin]);
    const { id, share, cas } = vial.beside![0]!;
    expect(carriersOf(thin).find((one) => one.id === id)).toMatchObject({ share: share / 4, cas });
    expect(judgeDose('thin', 1).findings.some(({ what }) => what.includes('E 445'))).toBe(true);
    const next = { ...clearPlan, what: 'f2', dose: '5', 'lot.nutmeg': vial.id, 'trait.cloudy': 'yes' };
    const checks = (batch.keep(weighAll(next))[0] as Batch).checks;
    expect(checks.find(({ what }) => what.includes('E 445'))!.words).toMatch(/mg\/L of 100 mg\/L/);
  });
});

const cloudy = { ...clearPlan, spare: '25', make: 'emulsion', agent: 'agent-8050-30-4', dosage: '2' };

/** What the rules say of that many grams of a vial in a litre of a drink without sugar. */
function judgeDose(vial: string, grams: number, typed: Record<string, string> = {}) {
  const drink = { 'base.name': 'soda', 'base.brix': '0', 'base.abv': '0', 'base.ml': '1000', 'base.slack': '0' };
  const run = { ...freshRun, typed: { vial, dropper: 'scale', massG: String(grams), ...drink, ...typed } };
  return judgeGlass(run, glassOf(run, 1)!)!;
}
