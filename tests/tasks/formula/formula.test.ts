import { beforeEach, describe, expect, test } from 'vitest';
import type { Formula } from '../../../src/records/kind/formula';
import type { Bottle } from '../../../src/records/kind/material';
import { find, newRecord, takeIn } from '../../../src/records/shelf';
import { certificate } from '../../../src/tasks/certificate/task';
import { freshRun, type RunState } from '../../../src/tasks/engine/fold';
import { formula } from '../../../src/tasks/formula/task';
import { besides, costOf, usedLines, versionsOf } from '../../../src/workshop/formulaBook';
import { batch } from '../../../src/tasks/batch/task';
import { doseBefore, madeBefore } from '../../../src/workshop/madeBefore';
import { recipeOf, weighAll, wordsIn } from '../batch/batchRuns';
import { batchShelf, clearPlan } from '../batch/batchShelf';
import { vialOf } from '../count/countShelf';

beforeEach(() => takeIn(batchShelf()));

const runOf = (typed: Record<string, string>): RunState => ({ ...freshRun, typed });
const kept = (typed: Record<string, string>) => formula.keep(runOf(typed))[0] as Formula;
const stepOf = (typed: Record<string, string>, key: string) =>
  formula.steps(runOf(typed)).find((one) => one.key === key)!;
const shares = ({ lines }: Formula) => Object.fromEntries(lines.map(({ material, share }) => [material, share]));

describe('a formula', () => {
  test('by hand: materials are added, and only those with parts are kept', () => {
    const typed = { from: 'hand', 'add.1': 'linalool', 'add.2': 'maltol', 'part.add.1': '3', 'part.add.2': '0' };
    const made = kept({ ...typed, name: 'By hand' });
    expect(shares(made)).toEqual({ linalool: 3 });
    expect(made).toMatchObject({ version: 1, root: made.id, from: [] });
    expect(stepOf({ from: 'hand' }, 'lines').problem).toContain('at least one material');
    expect(() => kept({ from: 'hand' })).toThrow('at least one material');
  });

  test('from a layering: strength times dips, in parts of a hundred', () => {
    const strip = (vial: string, dips: number) => ({ vial, code: vial, dips, dippedAt: null, takenOutAt: null });
    takeIn([
      vialOf('v1', 0.01, { material: 'linalool' }),
      vialOf('v2', 0.001, { material: 'maltol' }),
      newRecord('layering', {
        id: 'lay',
        name: 'Two',
        readings: [],
        strips: [strip('v1', 1), strip('v2', 2)],
        verdict: { liking: 8, decision: 'keep', words: '' },
      }),
    ]);
    const made = kept({ from: 'lay', name: 'Two' });
    expect(shares(made)['linalool']! / shares(made)['maltol']!).toBeCloseTo(0.01 / 0.002, 1);
    expect(made.from).toEqual(['lay']);
  });

  test('changed, it is a new version, and what changed stands side by side', () => {
    const typed = { from: 'f1', of: 'f1', 'part.linalool': '6', 'swap.vanillin': 'nutmeg', name: 'Orchard' };
    expect(stepOf(typed, 'name').more!.join(' ')).toContain('linalool: 30 % then, ‹46.2 %› now.');
    const made = kept(typed);
    expect(made).toMatchObject({ version: 2, root: 'f1', from: ['f1'] });
    expect(shares(made)).toEqual({ nutmeg: 5, linalool: 6, maltol: 2 }); // swapped parts add to what is there
    takeIn([made]);
    expect(versionsOf(made).map(({ version }) => version)).toEqual([1, 2]);
    expect(besides(find('formula', 'f1')!, made)).toContainEqual({
      name: 'vanillin',
      before: '10 %',
      after: 'taken out',
    });
    expect(find('formula', 'f1')!.version).toBe(1);
  });

  test('its notes are those of the version before until others are typed, and what is the same is no new version', () => {
    takeIn([{ ...find('formula', 'f1')!, notes: 'less peel' } as never]);
    expect(kept({ from: 'f1', of: 'f1', 'part.linalool': '6' }).notes).toBe('less peel');
    expect(stepOf({ from: 'f1', of: 'f1' }, 'name').problem).toContain('version 1 as it is');
    expect(() => kept({ from: 'f1', of: 'f1' })).toThrow('version 1 as it is');
    expect(kept({ from: 'f1', of: 'f1', notes: 'more peel' })).toMatchObject({ root: 'f1', notes: 'more peel' });
  });

  test('a swap with other parts says the dose at which the others keep their mg/kg; page and batch begin with it', () => {
    takeIn(batchShelf());
    const made = batch.keep(weighAll(clearPlan))[0]!; // 50 mg/kg of 4 + 3 + 2 + 1 parts
    const swap = { from: 'f1', of: 'f1', 'swap.vanillin': 'ethyl-vanillin', 'part.vanillin': '0.4' };
    takeIn([made, { ...find('material', 'vanillin')!, id: 'ethyl-vanillin', name: 'ethyl vanillin' }]);
    expect(stepOf(swap, 'name').more!.join(' ')).toContain('at ‹0.94 times› the dose');
    const next = kept(swap);
    takeIn([next]);
    const before = madeBefore('f1')!;
    expect(doseBefore(next.lines, before)).toMatchObject({ how: 'holds the others' });
    expect(doseBefore(next.lines, before).mgPerKg).toBeCloseTo(50 * 0.94, 1);
    expect(doseBefore(find('formula', 'f1')!.lines, before).how).toBe('as made');
    const dose = recipeOf(runOf({ what: next.id })).ask!.find(({ name }) => name === 'dose')!;
    expect(Number(dose.preset)).toBeCloseTo(47, 1);
    expect(wordsIn(runOf({ what: next.id }), 'Drink')).toContain('what stayed in the formula keeps its mg/kg');
  });

  test('parts that are no number are told, and nothing is lost', () => {
    const typed = { from: 'f1', 'part.linalool': '3x' };
    expect(stepOf(typed, 'lines').problem).toContain('parts of linalool');
  });
});

describe('what follows from a formula', () => {
  const use = { mgPerKg: 50, gramsPerL: 1, litres: 20, densityGPerMl: 1.04, glassMl: 100 };

  test('share, mg/kg, grams and share of the concentrate belong together: w = c/(1000 D)', () => {
    const [nutmeg] = usedLines(find('formula', 'f1')!, use);
    expect(nutmeg!.mgPerKg).toBeCloseTo(20, 9);
    expect(nutmeg!.grams).toBeCloseTo((20 * 1.04 * 20) / 1000, 9);
    expect(nutmeg!.inConcentrate).toBeCloseTo((20 * 1.04) / 1000, 9);
    expect(nutmeg!.bottles[0]).toContain('lot L-b-nutmeg');
  });

  test('cost of a litre: 52 mg at 2 a gram are 0.104; what has no price is named', () => {
    expect(costOf(find('formula', 'f1')!, use).cost).toBeCloseTo(0.104, 9);
    const bottle = batchShelf().find(({ id }) => id === 'b-maltol')! as Bottle;
    const { pricePerG: _, ...unpriced } = bottle;
    takeIn([unpriced]);
    expect(costOf(find('formula', 'f1')!, use).unpriced).toEqual(['maltol']);
  });

  test('drops are told of vials fit for drinks only', () => {
    takeIn([vialOf('nose', 0.01, { material: 'linalool', grade: 'smell only' })]);
    const [, linalool] = usedLines(find('formula', 'f1')!, use);
    expect(linalool!.drops.join()).not.toContain('NOSE');
  });
});

describe('the certificate of a bottle', () => {
  test('what is limited in that oil is asked, and kept on the bottle in its own unit', () => {
    const run = runOf({
      bottle: 'b-nutmeg',
      'share.94-59-7': '0,8',
      'own.name': 'limonene',
      'own.cas': '5989275',
      'own.share': '4',
    });
    expect(certificate.steps(run)[0]!.ask!.map(({ title }) => title)).toContain('safrole');
    const [bottle] = certificate.keep(run) as Bottle[];
    expect(bottle!.id).toBe('b-nutmeg');
    expect(bottle!.constituents).toEqual([
      { cas: '94-59-7', name: 'safrole', share: 0.008 },
      { cas: '5989-27-5', name: 'limonene', share: 0.04 },
    ]);
  });

  test('more than the whole oil is refused, and a mistyped CAS number is told', () => {
    expect(() =>
      certificate.keep(runOf({ bottle: 'b-nutmeg', 'share.94-59-7': '60', 'share.607-91-0': '60' })),
    ).toThrow('more than the whole oil');
    const own = certificate.steps(runOf({ bottle: 'b-nutmeg' }))[1]!.ask!.find(({ name }) => name === 'own.cas')!;
    expect(own.read('94-59-8')).toMatchObject({ ok: false });
  });
});
