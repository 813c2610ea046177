import { beforeEach, describe, expect, test } from 'vitest';
import type { Formula } from '../../../src/records/kind/formula';
import type { Bottle } from '../../../src/records/kind/material';
import { find, newRecord, takeIn } from '../../../src/records/shelf';
import { certificate } from '../../../src/tasks/certificate/task';
import { freshRun, type RunState } from '../../../src/tasks/engine/fold';
import { formula } from '../../../src/tasks/formula/task';
import { besides, costOf, usedLines, versionsOf } from '../../../src/workshop/formulaBook';
import { batchShelf } from '../batch/batchShelf';
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
