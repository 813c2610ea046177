import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import type { RunEvent } from '../../../src/records/kind/run';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import type { Supply } from '../../../src/records/kind/supply';
import type { Vial } from '../../../src/records/kind/vial';
import { dilute } from '../../../src/tasks/dilute/task';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { refusalOf } from '../../../src/workshop/drinkable/grade';
import { material, pipette } from '../count/countShelf';
import { asLeft } from '../walking';

const bottle = newRecord('bottle', {
  id: 'b',
  material: 'card',
  supplier: 'Saltmarsh',
  lot: 'L1',
  grade: 'fit for drinks',
});
const spirit: Supply = newRecord('supply', {
  id: 'e',
  name: 'ethanol',
  sort: 'solvent',
  solvent: 'ethanol-96',
  unit: 'g',
  amount: 800,
  supplier: 'Heron Lane',
  lot: 'E-1',
  grade: 'fit for drinks',
});
const byDrops = { bottle: 'b', strength: '1', basis: '% w/v', size: '15', way: 'drops', dropper: 'pip' };
const poured = { solvent: 'ethanol-96', food: 'yes', measure: 'syringe' };

/** A run with these answers and that many drops, as its steps were left. */
function walked(typed: Record<string, string>, drops: number): RunState {
  const events = [
    ...Object.entries(typed).map(([key, text]) => ({ type: 'typed' as const, key, text })),
    { type: 'count' as const, key: 'source', by: drops },
  ];
  return asLeft(dilute, fold(events.map((one, seq): RunEvent => ({ run: 'r', seq, at: '', ...one }))));
}
const vialOf = (run: RunState) => dilute.keep(run)[0] as Vial;
const repeated = (run: RunState, vial: Vial) => {
  takeIn([vial]);
  return repeatOf(dilute, newRecord('run', { id: 'r', task: 'dilute', kept: [vial.id], title: '' }), run);
};

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('card'), bottle, spirit, ...pipette]);
});

describe('what went into a dilution', () => {
  test('is there with drops, mL, lots and dropper, from a bottle of solvent or none', () => {
    const [source, solvent] = vialOf(
      walked({ ...byDrops, ...poured, 'solvent.own': 'yes', 'solvent.ml': '14.2' }, 7),
    ).uses;
    expect(source).toMatchObject({
      id: 'b',
      how: 'counted',
      drops: 7,
      code: 'CARD',
      strength: 'neat',
      lot: 'L1',
      supplier: 'Saltmarsh',
      dropper: { id: 'pip', name: 'Pipette 1' },
    });
    expect(source!.u).toBeGreaterThan(0);
    expect(solvent).toMatchObject({ id: 'ethanol-96', how: 'poured', ml: 14.2 });
    const weighed = { ...byDrops, solvent: 'e', measure: 'scale', 'solvent.g': '11.5' };
    const [, named] = vialOf(walked(weighed, 7)).uses;
    expect(named).toMatchObject({ id: 'e', how: 'weighed', massG: 11.5, lot: 'E-1', supplier: 'Heron Lane' });
  });

  test('weighs together what the vial weighs, to the last milligram, with a rescue or none', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 40 }), fc.boolean(), fc.boolean(), (drops, rescue, onScale) => {
        const solvent = onScale ? { solvent: 'e', measure: 'scale', 'solvent.g': '11.5', 'rescue.g': '3.2' } : poured;
        const vial = vialOf(walked({ ...byDrops, ...solvent, overshoot: rescue ? 'rescue' : 'keep' }, drops));
        const grams = vial.uses.reduce((sum, { massG }) => sum + massG, 0);
        expect(Math.abs(grams - vial.massG.value)).toBeLessThan(1e-9);
        expect(vial.uses[0]!.drops).toBe(drops);
      }),
    );
  });

  test('a solvent without a bottle still counts off the pack of its sort, and keeps nothing out of a drink', () => {
    const before = leftOf(spirit)!.value;
    const vial = {
      ...vialOf(walked({ ...byDrops, ...poured }, 7)),
      made: new Date(Date.parse(spirit.made) + 1000).toISOString(),
    };
    takeIn([vial]);
    expect(leftOf(spirit)!.value).toBeCloseTo(before - vial.uses[1]!.massG, 9);
    expect(refusalOf(vial)).toBeNull();
  });

  test('a drop too many is told with what was done about it', () => {
    const planned = dilute.steps(walked({ ...byDrops, ...poured }, 0)).find(({ key }) => key === 'drops')!.pad!.target!;
    const slip = (overshoot: string) =>
      dilute.doneOf!(walked({ ...byDrops, ...poured, overshoot }, planned + 1), 0).slips;
    expect(slip('rescue')).toEqual([
      { id: 'b', what: 'CARD neat', planned, counted: planned + 1, unit: 'drops', way: 'Rescued with more solvent' },
    ]);
    expect(slip('keep')![0]!.way).toBe('Left as it is');
    expect(dilute.doneOf!(walked({ ...byDrops, ...poured }, planned), 0).slips).toBeUndefined();
  });
});

describe('a vial made again', () => {
  test('asks whether the solvent is food grade where no bottle of the Shelf says so: it may be another one', () => {
    const keysOf = (solvent: Record<string, string>) => {
      const run = walked({ ...byDrops, ...solvent }, 9);
      return dilute.steps(walked(repeated(run, vialOf(run)).typed, 0)).map(({ key }) => key);
    };
    expect(keysOf(poured).slice(0, 2)).toEqual(['card', 'drops']);
    expect(keysOf({ solvent: 'e', measure: 'syringe' })[0]).toBe('drops');
  });

  test('begins with the pouring, and is the same drops in the same solvent, whatever was planned', () => {
    const run = walked({ ...byDrops, ...poured, 'solvent.own': 'yes', 'solvent.ml': '14.2' }, 11);
    const vial = vialOf(run);
    const { typed, differences } = repeated(run, vial);
    expect(differences).toEqual([]);
    const [, drops] = dilute.steps(walked(typed, 0)); // after the word on the solvent
    expect([drops!.key, drops!.pad?.target]).toEqual(['drops', 11]);
    expect(drops!.say).toContain('Pour ‹14.2 mL›');
    const again = vialOf(walked({ ...typed, food: 'yes' }, 11));
    expect(again.uses.map(({ id, massG }) => [id, massG])).toEqual(
      vial.uses.map(({ id, massG }) => [id, expect.closeTo(massG, 9)]),
    );
  });

  test('with drops that were weighed again since, it is still as many drops, and that is said', () => {
    const run = walked({ ...byDrops, ...poured }, 9);
    const neat = { ...(pipette[1] as object), id: 'cal3', liquid: { id: 'card', name: 'card oil' } };
    const vial = vialOf(run);
    takeIn([neat as never]);
    const again = dilute.steps(walked(repeated(run, vial).typed, 0));
    expect(again.find(({ key }) => key === 'drops')!.pad!.target).toBe(9);
  });

  test('of the first version takes the drops from its run and the solvent from its mass', () => {
    const run = walked({ ...byDrops, ...poured }, 8);
    const vial = vialOf(run);
    const old: Vial = { ...vial, uses: [{ id: 'b', massG: vial.uses[0]!.massG }] };
    const again = vialOf(walked(repeated(run, old).typed, 8));
    expect(again.massG.value).toBeCloseTo(vial.massG.value, 9);
    expect(again.uses[0]!.drops).toBe(8);
  });
});
