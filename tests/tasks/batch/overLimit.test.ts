import { beforeEach, describe, expect, test } from 'vitest';
import { batchTable } from '../../../src/app/sheet/batchTable';
import { sheetRows } from '../../../src/app/sheet/sheetRows';
import { describe as described } from '../../../src/app/describe/describe';
import { overNotices } from '../../../src/app/describe/overFacts';
import { labelOf } from '../../../src/app/describe/labelOf';
import type { Batch } from '../../../src/records/kind/batch';
import { usualSettings } from '../../../src/records/kind/settings';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { madeOf, makingOf } from '../../../src/tasks/batch/progress';
import { planOf } from '../../../src/tasks/batch/plan/plan';
import { batch } from '../../../src/tasks/batch/task';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { overLines, overNow } from '../../../src/workshop/drinkable/overNow';
import { partsOfBatch } from '../../../src/workshop/drinkable/partsOfDrink';
import { gradeOf, recipeOf, runOf, stepOf, weighAll } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

const WHY = { although: 'a trial, not for sale' };
const keep = (typed: Record<string, string>) => batch.keep(weighAll({ ...clearPlan, ...typed }));
const kept = (typed: Record<string, string>) => keep(typed)[0] as Batch;
const wordsOn = (record: Batch | Vial) =>
  labelOf(record, 'vial')
    .content.paragraphs.flat()
    .map(({ text }) => text.replaceAll('\u00a0', ' '))
    .join(' | ');

describe('a batch over a limit', () => {
  test.each([
    [{ benzoate: '200' }, /^over the EU limit of benzoates, as benzoic acid: 200 mg\/L of 150 mg\/L$/],
    [{ dosage: '2' }, /^over the EU limit of propane-1,2-diol \(E 1520\): 19\d0 mg\/L of 1000 mg\/L$/],
    [{ dose: '100' }, /^over the EU limit of safrole: 1\.12 ± 0\.01 mg\/kg of 1 mg\/kg$/],
  ])(
    '%j is said with value and maximum on page, label, sheet and table, in place of "fit for drinks"',
    (more, words) => {
      const made = kept({ ...more, ...WHY });
      takeIn([made]);
      const [line] = overLines(made);
      expect(line).toMatch(words);
      const said = line!.slice(1);
      expect(overNotices(made)).toEqual([`O${said}.`]);
      expect(wordsOn(made)).toContain('OVER A LIMIT');
      expect(wordsOn(made)).toContain(line);
      expect(wordsOn(made)).not.toContain('fit for drinks');
      expect(sheetRows(made).map((row) => row.words)).toEqual(
        expect.arrayContaining(['Not fit for drinks', `O${said}.`]),
      );
      expect(batchTable(made)).toContain(`not fit for drinks,`);
      expect(batchTable(made)).toContain(said);
    },
  );

  test('as planned, nothing of it is said, and its label says fit for drinks', () => {
    const made = kept({});
    expect(overNow(made)).toEqual([]);
    expect(overNotices(made)).toEqual([]);
    expect(wordsOn(made)).toMatch(/fit for drinks/i);
    expect(sheetRows(made).some(({ words }) => words === 'Not fit for drinks')).toBe(false);
  });

  test('it is worked out now: what was found on the day is history, either way', () => {
    const made = kept({ benzoate: '200', ...WHY });
    expect(overNow({ ...made, checks: [] })).toHaveLength(1);
    const clean = { ...kept({}), checks: [{ state: 'over', what: 'x', words: 'over the limit', source: '' }] };
    expect(overNow(clean)).toEqual([]);
  });

  test('made for the US it is judged by both markets: 200 mg/L of benzoic acid is fine there, not in the EU', () => {
    const made = kept({ benzoate: '200', jurisdiction: 'US' });
    expect(made.although).toBeUndefined(); // the rules of its market do not bar it
    expect(overLines(made)).toEqual([expect.stringContaining('EU limit of benzoates')]);
    takeIn([{ ...usualSettings, jurisdiction: 'US' } as never]);
    expect(overLines(made)).toEqual([]);
    const european = kept({ benzoate: '200', jurisdiction: 'EU', ...WHY });
    expect(overLines(european)).toEqual([expect.stringContaining('EU limit of benzoates')]);
  });

  test('a certificate typed for the lot counts then and now; so does one that the bottle gets later', () => {
    const typed = { 'cert.nutmeg.94-59-7': '0,1' };
    expect(overNow(kept({ dose: '100', ...typed }))).toEqual([]);
    const made = kept({ dose: '100', ...WHY });
    expect(overNow(made)).toHaveLength(1);
    const published = { ...made.asked, 'cert.nutmeg.94-59-7': '2.8' }; // % as the table has it
    expect(overLines({ ...made, asked: published })).toEqual(overLines(made));
    const asked = { ...made.asked, 'cert.nutmeg.94-59-7': '1,000' }; // of two readings the decimal: no oil holds 1000 %
    expect(overNow({ ...made, asked })).toEqual([]);
    const constituents = [{ cas: '94-59-7', name: 'safrole', share: 0.001 }];
    takeIn([{ ...batchShelf().find(({ id }) => id === 'b-nutmeg')!, constituents } as never]);
    expect(overNow(made)).toEqual([]);
  });

  test('what a left-over concentrate is over is said with the dosage', () => {
    const records = keep({ dosage: '2', spare: '25', ...WHY });
    takeIn(records);
    const [made, vial] = records as [Batch, Vial];
    expect(overLines(vial)[0]).toMatch(/^at 2 g\/L, as in B\d: over the EU limit of propane-1,2-diol/);
    expect(overNotices(vial)).toEqual([expect.stringMatching(/^At 2 g\/L, as in B\d: over the EU/)]);
    expect(wordsOn(vial)).toContain('OVER A LIMIT');
    const finer = keep({ dosage: '1.2345', spare: '25', ...WHY });
    takeIn(finer);
    expect(overLines(finer[1]!)[0]).toMatch(/^at 1\.23 g\/L, as in B\d: over/);
    takeIn(records);
    expect(overNow({ ...vial, sort: 'dilution' })).toEqual([]);
    expect(overNow(made).length).toBe(1);
  });

  test.each([
    [clearPlan, 'a solution'],
    [{ ...clearPlan, spare: '25', benzoate: '100', sorbate: '100' }, 'some of it left over'],
    [{ ...clearPlan, fine: '0.01' }, 'amounts that are diluted to be weighed'],
    [{ ...clearPlan, make: 'emulsion', agent: 'agent-8050-30-4', dosage: '2', gum: '1.5' }, 'an emulsion'],
  ])('what is in it is found again from the record as it was in the run: %# %s', (typed) => {
    const run = weighAll(typed);
    const made = madeOf(makingOf(run)!)!;
    const { parts, drink } = partsOfBatch(batch.keep(run)[0] as Batch);
    const amounts = (all: typeof parts) =>
      Object.fromEntries(all.filter(({ id }) => id !== 'water').map(({ id, mgPerKg }) => [id, mgPerKg.value]));
    const [then, now] = [amounts(made.parts), amounts(parts)];
    expect(Object.keys(now).sort()).toEqual(Object.keys(then).sort());
    for (const [id, mgPerKg] of Object.entries(then))
      expect([id, now[id]! / mgPerKg]).toEqual([id, expect.closeTo(1, 3)]);
    expect(drink).toEqual({ abv: made.abv.value, density: made.densityGPerMl.value });
    expect(parts.map(({ id, cas }) => [id, cas]).filter(([, cas]) => cas)).toEqual(
      expect.arrayContaining(made.parts.flatMap(({ id, cas }) => (cas ? [[id, cas]] : []))),
    );
  });
});

describe('what a kept drink is', () => {
  const cloudy = { make: 'emulsion', agent: 'agent-8050-30-4', dosage: '2', gum: '1.5' };
  const traits = (typed: Record<string, string>) => partsOfBatch(kept(typed)).traits;

  test('cloudy by its emulsion, carbonated by its gas, without sugar by its °Brix, until it was said otherwise', () => {
    expect(traits({})).toEqual({ 'trait.cloudy': 'no', 'trait.carbonated': 'no', 'trait.no added sugar': 'no' });
    expect(traits(cloudy)['trait.cloudy']).toBe('yes');
    const made = kept({});
    const still = { ...made.drink, brix: { value: 0, sources: [] }, gas: { volumes: 3, gaugeBar: 3, atC: 20 } };
    expect(partsOfBatch({ ...made, drink: still }).traits).toMatchObject({
      'trait.carbonated': 'yes',
      'trait.no added sugar': 'yes',
    });
    expect(traits({ 'trait.mint': 'yes', 'trait.cloudy': 'yes' })).toMatchObject({
      'trait.mint': 'yes',
      'trait.cloudy': 'yes',
    });
  });

  test('the bottle behind a vial that it was made from counts with its certificate, and so does what the vial is in', () => {
    const bottle = batchShelf().find(({ id }) => id === 'b-nutmeg')!;
    const vial = {
      ...(keep({ spare: '25' })[1] as Vial),
      id: 'v-nutmeg',
      sort: 'dilution',
      from: ['b-nutmeg'],
      contents: [{ material: 'nutmeg', name: 'nutmeg oil', strength: { value: 0.5, sources: [] } }],
      uses: [{ id: 'b-nutmeg', massG: 2.5 }],
      massG: { value: 5, sources: [] },
    };
    takeIn([vial as never]);
    const made = kept({});
    const weighed = made.weighed.map((one) => (one.id === 'nutmeg' ? { ...one, source: 'v-nutmeg' } : one));
    const { parts } = partsOfBatch({ ...made, weighed });
    expect(parts.find(({ id }) => id === 'nutmeg')!.bottles!.map(({ id }) => id)).toEqual([bottle.id]);
    const glycol = (of: Batch) => partsOfBatch(of).parts.find(({ id }) => id === 'propylene-glycol')!.mgPerKg.value;
    const nutmeg = made.reached.find(({ material }) => material === 'nutmeg')!.mgPerKg.value;
    expect(glycol({ ...made, weighed }) - glycol(made)).toBeCloseTo(nutmeg / 2, 0); // half of what was weighed of it
  });
});

describe('going on over a limit', () => {
  test('asks why, at the plan and as weighed; a tap or a word answers, and is kept and told', () => {
    const over = { ...clearPlan, benzoate: '200' };
    for (const key of ['recipe', 'name']) {
      const step = stepOf(weighAll(over), key);
      expect([key, step.problem]).toEqual([key, 'Over a limit: tap or type a reason, or change the drink.']);
      const told = stepOf(weighAll({ ...over, ...WHY }), key);
      expect([told.problem, problemsOf(told, runOf({ ...over, ...WHY }))]).toEqual([undefined, {}]);
    }
    const made = kept({ benzoate: '200', ...WHY });
    expect(made.although).toBe(WHY.although);
    expect(made.asked['although']).toBeUndefined(); // the next batch gives its own
    expect(described(made).facts).toContainEqual(['Continued over a limit', WHY.although]);
    expect(sheetRows(made).map(({ words }) => words)).toContain(`Continued over a limit: ${WHY.although}`);
    expect(batchTable(made)).toContain('\r\ncontinued over a limit,');
  });

  test('without one nothing is kept, however the run came to its end; blanks are no reason', () => {
    expect(() => keep({ benzoate: '200' })).toThrow(/over the EU limit of benzoates.*go back/);
    expect(() => keep({ benzoate: '200', although: '  ' })).toThrow('go back');
  });

  test('a drink that is over nothing is not asked, and keeps no reason that was typed before', () => {
    expect(recipeOf(runOf(clearPlan)).problem).toBeUndefined();
    expect(stepOf(weighAll(clearPlan), 'name').problem).toBeUndefined();
    expect(kept(WHY).although).toBeUndefined();
  });
});

describe('a value at its limit', () => {
  test.each(['150'])(
    'typed %s mg/L of 150 is at the limit, not over: weigh list and limit share one ratio',
    (benzoate) => {
      const run = runOf({ ...clearPlan, benzoate });
      expect(gradeOf(run)).toBe('EU rules: at the limit');
      expect(planOf(run)!.syrup.find(({ goods }) => goods.id === 'sodium-benzoate')!.mass).toBeCloseTo(
        (20 * 0.15 * 144.1) / 122.12,
        9,
      );
      expect(kept({ benzoate }).checks.find(({ what }) => what.startsWith('benzoates'))).toMatchObject({ state: 'at' });
      expect(overNow(kept({ benzoate }))).toEqual([]);
    },
  );

  test('250 mg/L of sorbic acid beside benzoic acid is at its limit too, and 151 of 150 is over', () => {
    const state = (typed: Record<string, string>, what: string) =>
      kept({ ...typed, ...WHY }).checks.find((one) => one.what.startsWith(what))!.state;
    expect(state({ sorbate: '250', benzoate: '10' }, 'sorbates beside')).toBe('at');
    expect(state({ sorbate: '300' }, 'sorbates, as')).toBe('at');
    expect(state({ benzoate: '151' }, 'benzoates')).toBe('over');
  });

  test('just over it, the figures do not read alike', () => {
    expect(overLines(kept({ benzoate: '150.3', ...WHY }))).toEqual([
      expect.stringMatching(/: 150\.[23]\d* mg\/L of 150 mg\/L$/),
    ]);
  });
});

test('a batch of the first version that says nothing of a reason opens, and says what it is over', () => {
  const { although: _, ...old } = kept({ benzoate: '200', ...WHY });
  expect(overNow(newRecord('batch', { ...old, code: undefined } as never))).toHaveLength(1);
});
