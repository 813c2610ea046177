import { beforeEach, describe, expect, test } from 'vitest';
import { describe as inWords } from '../../../src/app/describe/describe';
import { recordTable } from '../../../src/app/record/paper';
import { batchTable } from '../../../src/app/sheet/batchTable';
import { sheetRows } from '../../../src/app/sheet/sheetRows';
import type { Batch } from '../../../src/records/kind/batch';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import type { Run } from '../../../src/records/kind/run';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf } from '../../../src/records/shelf';
import { spoiltBy } from '../../../src/tasks/batch/plan/drinkAsked';
import { batch } from '../../../src/tasks/batch/task';
import { areSmelled, pickable } from '../../../src/tasks/blind/samples';
import { blind } from '../../../src/tasks/blind/task';
import { instanceOf, sourceFor } from '../../../src/tasks/count/planInstance';
import { count } from '../../../src/tasks/count/task';
import { dilute } from '../../../src/tasks/dilute/task';
import { dose } from '../../../src/tasks/dose/task';
import { slotsOf } from '../../../src/tasks/engine/card';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { labelSays } from '../../../src/workshop/drinkable/grade';
import { type Graded } from '../../../src/workshop/drinkable/gradeCause';
import { toRelabel } from '../../../src/workshop/drinkable/mark';
import { sourcesOf } from '../../../src/workshop/sources';
import { runOf as batchRun, weighAll } from '../../tasks/batch/batchRuns';
import { batchShelf, clearPlan } from '../../tasks/batch/batchShelf';
import { answerAll, begin, rightCode, toFirstCup } from '../../tasks/blind/sittings';
import {
  MARK,
  NEVER,
  SMELL,
  bottle,
  change,
  dosing,
  drink,
  fitShelf,
  grade,
  kept,
  label,
  ownSolvent,
  pack,
  put,
  runOf,
  shelve,
  smellOnly,
  stepAt,
  there,
  why,
} from './gradeShelf';

beforeEach(() => shelve(fitShelf()));

/** A plan of 17 drops of CARD, all of it into one drink; one drop has fallen. */
const intoDrink = { formula: 'f', purpose: 'drink', ppm: '20', drinkMl: '200', dropper: 'typical', plan: 'v-card=17' };
const named = { name: 'Orchard 1', code: 'T7', size: '10' };
const counting = (typed: object = {}, drops: Record<string, number> = { 'drops.v-card': 1 }, at = 'count.v-card') =>
  runOf({ ...intoDrink, ...named, ...typed }, drops, at);
test('while everything in it is fit, a count and a dose are kept', () => {
  expect(kept(count, counting())[0]).toMatchObject({ kind: 'vial', grade: 'fit for drinks' });
  expect(kept(dose, dosing())[0]).toMatchObject({ kind: 'tasting' });
});

describe('a count into a drink, under way', () => {
  const barred = () => change('pack', SMELL);

  test('1: its solvent becomes smell only after the first drop: counting stops, with the way on', () => {
    barred();
    const step = stepAt(count, counting());
    expect(step.say).toBe('Stop: ‹CARD 1 % w/w› is smell only now.');
    expect(step.pad).toBeUndefined();
    expect(step.problem).toContain('was diluted from a bottle of ethanol 96 % that is not fit for drinks');
    expect(step.offers!.map(({ words }) => words)).toEqual(['Continue, to smell only']);
    for (const at of ['truth', 'count.v-card'])
      expect(stepAt(count, counting({}, undefined, at)).problem).toContain(NEVER);
    expect(() => kept(count, counting())).toThrow(NEVER);
  });

  test('2: taken on to smell, nothing is lost, and what is kept is smell only', () => {
    barred();
    const on = counting(stepAt(count, counting()).offers![0]!.type!, { 'drops.v-card': 17 });
    expect(stepAt(count, on).pad).toMatchObject({ target: 17 });
    expect(stepAt(count, on).cautions).toEqual([why('v-card')]);
    expect(kept(count, on)[0]).toMatchObject({ grade: 'smell only' });
  });

  test('3: begun to smell, turned into a drink by going back', () => {
    barred();
    const smelled = counting({ purpose: 'smell' });
    expect(stepAt(count, smelled).problem).toBeUndefined();
    for (const purpose of ['drink', 'taste']) {
      const turned = counting({ purpose });
      expect(
        count
          .steps(turned)
          .filter(({ key }) => /^(count|truth)/.test(key))
          .every((step) => step.problem),
      ).toBe(true);
      expect(() => kept(count, turned)).toThrow(NEVER);
    }
  });

  test('4: a vial that is still to come becomes smell only: it can be planned without, and is not planned with', () => {
    barred();
    const step = stepAt(count, counting({}, {}));
    expect(step.offers!.map(({ words, go }) => [words, go])).toContainEqual(['Plan it without', 'card']);
    expect(instanceOf(counting()).components[0]!.stocks.map(({ id }) => id)).toEqual(['b-card']);
  });

  test('5: planned anew without the vial that has dripped: what is in is in', () => {
    barred();
    const anew = counting({ plan: 'b-card=3' }, { 'drops.v-card': 1, 'drops.b-card': 3 }, 'count.b-card');
    expect(stepAt(count, anew).say).toBe('Stop: ‹CARD 1 % w/w› is smell only now.');
    expect(() => kept(count, anew)).toThrow(NEVER);
    expect(kept(count, { ...anew, typed: { ...anew.typed, purpose: 'smell' } })[0]).toMatchObject(SMELL);
  });

  test('6: counted by hand from a vial that is put away meanwhile', () => {
    barred();
    change('v-card', { archived: '2026-11-30T10:00:00.000Z' });
    const byHand = {
      formula: 'hand',
      'pick.v-card': 'yes',
      'plan.v-card': '5',
      'pick.v-rhu': 'yes',
      'plan.v-rhu': '5',
    };
    const run = counting(byHand, { 'drops.v-card': 5, 'drops.v-rhu': 5 });
    expect(kept(count, run)[0]).toMatchObject(SMELL);
  });

  test('7: counted from something that is erased meanwhile', () => {
    const run = counting({}, { 'drops.v-card': 17, 'drops.gone': 1 });
    expect(stepAt(count, run).problem).toContain('no longer on the Shelf');
    expect(() => kept(count, run)).toThrow('no longer on the Shelf');
  });

  test('8: made exactly again, of vials that are smell only now', () => {
    barred();
    const again = counting({ exactly: 'trial' }, {});
    expect(stepAt(count, again).problem).toContain(NEVER);
    expect(stepAt(count, again).offers!.map(({ words }) => words)).toEqual(['Continue, to smell only']);
    expect(() => kept(count, counting({ exactly: 'trial' }))).toThrow(NEVER);
  });

  test('9: advice on a next dilution names nothing that is smell only', () => {
    expect(sourceFor(counting(), 'card')).toBe('b-card');
    change('b-card', MARK);
    expect(sourceFor(counting(), 'card')).toBeUndefined();
    expect(sourceFor(counting({ purpose: 'smell' }), 'card')).toBe('b-card');
  });
});

describe('a dose, and a series of glasses, under way', () => {
  test('10: the bottle becomes smell only after the drops: the glass is poured away', () => {
    change('b-card', SMELL);
    const step = stepAt(dose, dosing());
    expect(step).toMatchObject({ key: 'spoilt', problem: why('v-card') });
    expect(step.offers![0]!.start).toEqual({
      task: 'dose',
      typed: { base: 'new', 'base.name': 'tonic', 'base.ml': '100', 'base.slack': '2' },
    });
    expect(() => kept(dose, dosing())).toThrow(NEVER);
  });

  test('11: another vial is chosen for drops that have fallen from this one', () => {
    const slotOf = (run: Parameters<typeof slotsOf>[0]) =>
      slotsOf(run, stepAt(dose, run)).find(({ field }) => field.name === 'vial')!;
    expect(slotOf(dosing({}, { drops: 5 }, 'vial')).state).toBe('fixed');
    expect(slotOf(dosing({}, {}, 'vial')).state).toBe('filled');
    expect(slotOf(dosing({ dropper: 'scale', massG: '0.1' }, {}, 'vial')).state).toBe('fixed');
  });

  test('12: before the first drop another vial may be chosen, and nothing is left behind', () => {
    change('b-card', SMELL);
    const step = stepAt(dose, dosing({}, {}));
    expect(step).toMatchObject({ key: 'glass.1', problem: why('v-card') });
    expect(step.counting).toBeUndefined();
    expect(step.card!.slots!['vial']!.wrong).toBe(why('v-card'));
    expect(step.ask![0]!.options!.find(({ value }) => value === 'v-card')!.against).toContain('never in a drink');
    expect(stepAt(dose, dosing({ vial: 'v-rhu' }, {})).counting).toBeDefined();
  });

  const second = { 'more.1': 'yes', 'vial.2': 'v-rhu' };
  test('13: a second vial is looked at as hard as the first', () => {
    change('v-rhu', MARK);
    const step = stepAt(dose, dosing(second, { drops: 5 }, 'glass.2'));
    expect(step).toMatchObject({ key: 'glass.2', problem: why('v-rhu') });
    expect(step.counting).toBeUndefined();
    expect(() => kept(dose, dosing(second, { drops: 5, 'drops.2': 2 }))).toThrow(NEVER);
  });

  test('14: the second vial is taken back after its drops', () => {
    change('v-rhu', MARK);
    const back = dosing({ ...second, 'more.1': 'no' }, { drops: 5, 'drops.2': 2 }, 'glass.1');
    expect(stepAt(dose, back).key).toBe('spoilt');
    expect(() => kept(dose, back)).toThrow(NEVER);
    expect(kept(dose, dosing({ ...second, 'more.1': 'no' }, { drops: 5 }))[0]).toMatchObject({ kind: 'tasting' });
  });

  test('15: the vial is erased after its drops', () => {
    const run = dosing({ vial: 'v-gone' });
    expect(stepAt(dose, run).problem).toContain('no longer on the Shelf');
    expect(() => kept(dose, run)).toThrow('no longer on the Shelf');
  });

  test('16: a ladder of glasses', () => {
    const ladder = { mode: 'ladder', lowest: '5', glasses: '2', factor: '2', blind: 'no' };
    const run = dosing({ ...ladder, blank: 'no' }, { 'rung.1': 2 }, 'rung.2');
    expect(stepAt(dose, run).key).toBe('rung.2');
    change('pack', MARK);
    expect(stepAt(dose, run).key).toBe('spoilt');
    expect(() => kept(dose, run)).toThrow(NEVER);
  });

  test('17: a drink that is dosed exactly again', () => {
    change('b-card', SMELL);
    const again = dosing({ exactly: 'drink', 'again.drops': '5' }, {});
    expect(stepAt(dose, again)).toMatchObject({ key: 'glass.1', problem: why('v-card') });
    expect(stepAt(dose, again).counting).toBeUndefined();
  });

  test('18: what is weighed in without a dropper', () => {
    change('b-card', SMELL);
    const weighed = dosing({ dropper: 'scale', massG: '0.1', readability: '0.01' }, {});
    expect(stepAt(dose, weighed).key).toBe('spoilt');
    expect(stepAt(dose, dosing({ dropper: 'scale' }, {}))).toMatchObject({ key: 'glass.1', problem: why('v-card') });
  });
});

describe('a batch, under way', () => {
  const glycol = (facts: object = {}) =>
    pack({ id: 'pg', name: 'propylene glycol', solvent: 'propylene-glycol', ...facts });
  beforeEach(() => shelve([...batchShelf(), glycol()]));
  const { 'carrier.food': _, ...plan } = clearPlan;
  const weighed = () => weighAll({ ...plan, 'lot.nutmeg': 'b-nutmeg', 'lot.propylene-glycol': 'pg' });

  test('19: a line from a bottle that is smell only', () => {
    change('b-nutmeg', SMELL);
    const run = batchRun({ ...plan, 'lot.nutmeg': 'b-nutmeg' });
    expect(stepAt(batch, { ...run, at: 'scale' })).toMatchObject({ key: 'recipe' });
    expect(stepAt(batch, { ...run, at: 'scale' }).problem).toContain(NEVER.slice(0, 10));
    expect(sourcesOf('nutmeg').every(({ refusal }) => refusal !== null)).toBe(true);
    expect(() => kept(batch, run)).toThrow('smell only');
  });

  test('20: a carrier from a pack that is smell only', () => {
    change('pg', MARK);
    const run = batchRun({ ...plan, 'lot.propylene-glycol': 'pg' });
    expect(stepAt(batch, { ...run, at: 'weigh' })).toMatchObject({ key: 'recipe' });
    expect(stepAt(batch, run).problem).toContain('smell only');
    expect(() => kept(batch, run)).toThrow('smell only');
  });

  test('21: its bottle becomes smell only after it was weighed', () => {
    const run = weighed();
    change('b-nutmeg', MARK);
    expect(stepAt(batch, { ...run, at: 'name' })).toMatchObject({ key: 'spoilt' });
    const { typed } = stepAt(batch, run).offers![0]!.start!;
    expect(typed).toMatchObject({ what: 'f1', litres: '20', carrier: 'propylene-glycol' });
    expect(Object.keys(typed).filter((key) => /^(mass|lot)\./.test(key))).toEqual([]);
    expect(() => kept(batch, run)).toThrow(NEVER);
  });

  test('22: another bottle is chosen for what was weighed from this one', () => {
    const states = (run: ReturnType<typeof batchRun>) =>
      slotsOf(run, batch.steps(run)[0]!)
        .filter(({ field }) => field.name.startsWith('lot.'))
        .map(({ state }) => state);
    expect(new Set(states(weighed()))).toEqual(new Set(['fixed']));
    expect(new Set(states(batchRun(plan)))).toEqual(new Set(['filled']));
  });

  test('23: its bottle becomes smell only, and is put away, after it was weighed', () => {
    const run = weighed();
    change('b-nutmeg', { ...SMELL, archived: '2026-11-30T10:00:00.000Z' });
    expect(stepAt(batch, run)).toMatchObject({ key: 'spoilt' });
    expect(() => kept(batch, run)).toThrow(NEVER);
  });

  test('24: its carrier becomes smell only after it was weighed, or is erased', () => {
    const run = weighed();
    change('pg', SMELL);
    expect(stepAt(batch, run)).toMatchObject({ key: 'spoilt' });
    shelf.records.value = new Map([...shelf.records.value].filter(([id]) => id !== 'pg'));
    expect(stepAt(batch, run).problem).toContain('no longer on the Shelf');
    expect(() => kept(batch, run)).toThrow('no longer on the Shelf');
  });

  test('25: an own solvent without a bottle is its carrier, and is marked afterwards', () => {
    put([ownSolvent()]);
    const run = weighAll({ ...clearPlan, carrier: 'own', 'carrier.food': 'yes', 'carrier.food.own': 'yes' });
    const [made] = kept(batch, run) as [Batch];
    put([made]);
    expect(grade(made.id)).toBe('fit for drinks');
    change('own', MARK);
    expect(grade(made.id)).toBe('smell only');
    expect(stepAt(batch, run)).toMatchObject({ key: 'spoilt' });
  });

  test('26: kept, and then its bottle is marked: page, label, sheet and tables say so, its rest too', () => {
    const [made, rest] = kept(batch, weighAll({ ...plan, spare: '25', 'lot.propylene-glycol': 'pg' })) as [Batch, Vial];
    put([made, rest]);
    const words = () => [
      inWords(made).grade,
      label(made.id),
      sheetRows(made)
        .map((row) => row.words)
        .join('\n'),
      batchTable(made),
      recordTable(made),
    ];
    expect(words().map((text) => /smell only/i.test(text ?? ''))).toEqual([false, false, false, false, false]);
    expect(label(made.id)).toMatch(/fit for drinks/i);
    change('b-nutmeg', MARK);
    expect(words().map((text) => /smell only/i.test(text ?? ''))).toEqual([true, true, true, true, true]);
    expect(words().some((text) => /fit for drinks\b(?!:)/.test(text ?? '') && !/not fit/.test(text ?? ''))).toBe(false);
    expect(smellOnly(made.id, rest.id)).toEqual([made.id, rest.id]);
    expect(
      toRelabel(there('b-nutmeg'))
        .map(({ id }) => id)
        .sort(),
    ).toEqual(['b-nutmeg', made.id, rest.id].sort());
  });

  test('27: the batch itself is marked: the concentrate that is left over from it goes into no drink either', () => {
    const [made, rest] = kept(batch, weighAll({ ...plan, spare: '25', 'lot.propylene-glycol': 'pg' })) as [Batch, Vial];
    put([made, rest, drink('d', rest.id)]);
    change(made.id, MARK);
    expect(smellOnly(made.id, rest.id, 'd')).toEqual([made.id, rest.id, 'd']);
    expect(why(rest.id)).toContain('was marked smell only (wrong bottle)');
  });

  test('28: a concentrate is marked, and is no source of another batch', () => {
    const [made, rest] = kept(batch, weighAll({ ...plan, spare: '25', 'lot.propylene-glycol': 'pg' })) as [Batch, Vial];
    put([made, rest, drink('d', rest.id)]);
    change(rest.id, MARK);
    expect(smellOnly(made.id, rest.id, 'd')).toEqual([rest.id, 'd']);
  });

  test('29: a pack whose label no one has read, without an answer', () => {
    change('pg', { grade: undefined });
    expect(labelSays(there<Graded>('pg'))).toBeNull();
    const { asked, ...made } = kept(
      batch,
      weighAll({ ...clearPlan, 'lot.propylene-glycol': 'pg', 'carrier.food.pg': 'yes' }),
    )[0] as Batch;
    put([{ ...made, asked }]);
    expect(grade(made.id)).toBe('fit for drinks');
    const silent = Object.fromEntries(Object.entries(asked).filter(([key]) => !key.startsWith('carrier.food')));
    put([{ ...made, asked: silent }]);
    expect(why(made.id)).toContain('no one has called food grade');
    put([{ ...made, asked: { ...asked, carrier: 'triacetin' } }]);
    expect(grade(made.id)).toBe('smell only');
  });

  test('30: isopropanol as a carrier, in a batch of a backup made by hand', () => {
    const [made] = kept(batch, weighed()) as [Batch];
    const weighedNow = made.weighed.map((one) =>
      one.id === 'propylene-glycol' ? { ...one, id: 'isopropanol-99', source: null } : one,
    );
    put([{ ...made, weighed: weighedNow }]);
    expect(grade(made.id)).toBe('smell only');
  });

  test('what was given up with a vessel is not in the drink, and stops nothing', () => {
    const run = weighed();
    change('b-nutmeg', MARK);
    const again = { at: 'c.nutmeg', vessels: ['concentrate'], was: [], taken: [], poured: null, slips: [] };
    expect(spoiltBy({ ...run, typed: { ...run.typed, begun: JSON.stringify([again]) } })).toBeNull();
    change('b-nutmeg', { smellOnly: undefined });
    const [made] = kept(batch, run) as [Batch];
    put([{ ...made, uses: [...made.uses, { id: 'b-linalool-nose', massG: 1 }] }]);
    expect(grade(made.id)).toBe('smell only');
    const lost = [{ id: 'b-linalool-nose', massG: 1, why: 'the vessel was begun again' }];
    put([{ ...made, uses: [...made.uses, { id: 'b-linalool-nose', massG: 1 }], lost }]);
    expect(grade(made.id)).toBe('fit for drinks');
    const left = (massG: number) => put([{ ...made, uses: [...made.uses, { id: 'b-linalool-nose', massG }] }]);
    left(1e-9); // what adding up leaves of what was lost
    expect(grade(made.id)).toBe('fit for drinks');
    left(2e-9);
    expect(grade(made.id)).toBe('smell only');
  });

  test('31: a bottle that was weighed and is named nowhere else', () => {
    const [made] = kept(batch, weighed()) as [Batch];
    put([{ ...made, uses: [], from: [] }]);
    expect(grade(made.id)).toBe('fit for drinks');
    change('b-vanillin', SMELL);
    expect(grade(made.id)).toBe('smell only');
  });
});

describe('a blind test', () => {
  test('32: a drink that was tasted from a vial that is smell only now', () => {
    const run = begin('triangle', { 'from.0': 'drink', 'from.1': 'v-low' }).state();
    expect(areSmelled(run)).toBe(false);
    change('b-rhu', SMELL);
    expect(areSmelled(run)).toBe(true);
    expect(pickable().find(({ id }) => id === 'drink')!.smellOnly).toBe(true);
    expect(pickable().find(({ id }) => id === 'v-low')!.smellOnly).toBe(false);
  });

  test('33: a sample becomes smell only between two sets: it is said, and all is smelled from there on', () => {
    const walk = begin('triangle', { tries: '3', 'from.0': 'v-card', 'from.1': 'v-low' });
    toFirstCup(walk);
    expect(walk.step().say).toMatch(/^Taste/);
    change('v-card', MARK);
    expect(walk.step()).toMatchObject({ key: 'smell-now', problem: expect.stringContaining('none is tasted') });
    expect(() => walk.next()).toThrow('none is tasted');
    walk.type('smelled', 'yes');
    expect(walk.step().say).toMatch(/^Smell/);
    answerAll(walk, (design, i) => [rightCode(design, i)]);
    expect(walk.keep()[0]).toMatchObject({ kind: 'test' });
  });

  test('34: from the beginning one that is smell only is said once, on the sheet', () => {
    change('v-card', MARK);
    const walk = begin('triangle', { tries: '3', 'from.0': 'v-card', 'from.1': 'v-low' });
    toFirstCup(walk);
    expect(walk.step().say).toMatch(/^Smell/);
  });

  test('35: drops of a ladder come from a vial that becomes smell only', () => {
    const ladder = {
      unit: 'drops',
      ladderVial: 'v-card',
      weakest: '1',
      levels: '4',
      factor: '2',
      cupG: '50',
      tries: '1',
    };
    const walk = begin('threshold', ladder);
    expect(walk.step().key).not.toBe('');
    expect(areSmelled(walk.state())).toBe(false);
    change('b-card', MARK);
    expect(areSmelled(walk.state())).toBe(true);
    const drops = blind.steps({ ...walk.state(), at: 'card' }).flatMap(({ ask = [] }) => ask);
    expect(drops.find(({ name }) => name === 'ladderVial')!.options!.map(({ value }) => value)).not.toContain('v-card');
  });

  test('36: a sample that was picked and is erased', () => {
    expect(areSmelled(begin('triangle', { 'from.0': 'gone' }).state())).toBe(true);
  });

  test('37: a test that was smelled is made again', () => {
    change('v-card', MARK);
    const walk = begin('triangle', { 'from.0': 'v-card', 'from.1': 'v-low' });
    const { typed } = repeatOf(blind, ended('blind', []), walk.state());
    expect(areSmelled(runOf(typed))).toBe(true);
  });
});

const ended = (task: string, made: readonly AnyRecord[]): Run =>
  newRecord('run', { id: 'r', task, kept: made.map(({ id }) => id), title: '', endedAt: '2026-11-30T10:00:00Z' });

describe('what is made again', () => {
  test('38: takes a lot that is fit, and says what it takes', () => {
    put([bottle('card', { id: 'b2', lot: 'new' })]);
    change('b-card', MARK);
    const made = there<Vial>('v-card');
    const typed = { bottle: 'b-card', strength: '1', basis: '% w/w', solvent: 'ethanol-96' };
    const { typed: again, differences } = repeatOf(dilute, ended('dilute', [made]), runOf(typed));
    expect(again['bottle']).toBe('b2');
    expect(differences[0]!.words).toContain('is smell only');
  });

  test('39: where no other is there, what is made is smell only', () => {
    change('b-card', MARK);
    const typed = {
      bottle: 'b-card',
      strength: '1',
      basis: '% w/w',
      size: '10',
      solvent: 'pack',
      way: 'mass',
      measure: 'scale',
    };
    const run = runOf({ ...typed, 'material.g': '0.1', 'solvent.g': '9.9', readability: '0.001' });
    expect(kept(dilute, run)[0]).toMatchObject({ kind: 'vial', ...SMELL });
    change('b-card', { smellOnly: undefined });
    expect(kept(dilute, run)[0]).toMatchObject({ grade: 'fit for drinks' });
    change('pack', MARK);
    expect(kept(dilute, run)[0]).toMatchObject(SMELL);
  });
});
