import { beforeEach, describe, expect, test } from 'vitest';
import { expanded } from '../../../src/core/number/measured';
import type { Batch } from '../../../src/records/kind/batch';
import type { Formula } from '../../../src/records/kind/formula';
import { find, newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { batch } from '../../../src/tasks/batch/task';
import { answered } from '../../../src/tasks/batch/plan/drinkAsked';
import { planOf } from '../../../src/tasks/batch/plan/plan';
import { makingOf } from '../../../src/tasks/batch/progress';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { fieldOf, gradeOf, keysOf, recipeOf, runOf, stepOf, weighAll, wordsIn } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';
import emulsions from '../../reference/emulsion.json' with { type: 'json' };
import { startWalking, type Walker } from '../walking';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

/** Walks on to a step, weighing exactly on the way. */
function walkTo(walker: Walker, key: string): void {
  for (let i = 0; i < 60 && walker.step().key !== key; i++) {
    const offer = walker.step().offers?.find(({ words }) => /xactly/.test(words));
    for (const [name, text] of Object.entries(offer?.type ?? {})) walker.type(name, text);
    walker.next();
  }
  expect(walker.step().key).toBe(key);
}

const kept = (run: RunState) => batch.keep(run)[0] as Batch;

describe('20 L of a clear drink', () => {
  test('every gram of the plan is in one line: concentrate 1 g/L, and the drink is what was asked for', () => {
    const plan = planOf(runOf(clearPlan))!;
    const concentrate = plan.concentrate.reduce((sum, { mass }) => sum + mass, 0);
    expect(concentrate).toBeCloseTo(20, 9);
    const syrup = plan.syrup.reduce((sum, { mass }) => sum + mass, 0);
    expect(syrup + concentrate + plan.water).toBeCloseTo(plan.batch.drink.mass, 6);
    expect(plan.batch.drink.mass / 20_000).toBeCloseTo(1.0381, 4); // 10 °Brix at 20 °C, published sucrose densities
  });

  test('weighed exactly, it holds 50 mg/kg, 10 °Brix and no alcohol, with the doubt of the scales', () => {
    const walker = startWalking(batch, clearPlan);
    walkTo(walker, 'result');
    walkTo(walker, 'name');
    const made = kept(walker.state());
    const sum = made.reached.reduce((all, { mgPerKg }) => all + mgPerKg.value, 0);
    expect(sum).toBeCloseTo(50, 0);
    expect(expanded(made.reached[0]!.mgPerKg)).toBeGreaterThan(0);
    const lines = made.reached[0]!.mgPerKg.sources.map(({ words }) => words);
    expect(lines).toContain('weighing nutmeg oil: readability of the scale');
    expect(new Set(lines).size).toBe(lines.length); // no two lines of the ± read alike
    expect(made.drink.brix.value).toBeCloseTo(10, 1);
    expect(made.drink.abv.value).toBe(0);
    expect(made.drink.litres.value).toBeCloseTo(20, 1);
  });

  test('the batch is traced to its lots, and they are used up by what was weighed', () => {
    const made = kept(weighAll(clearPlan));
    expect(made.from).toEqual(expect.arrayContaining(['f1', 'b-nutmeg', 'b-linalool', 'b-maltol', 'b-vanillin']));
    const nutmeg = made.weighed.find(({ id }) => id === 'nutmeg')!;
    expect(nutmeg.lot).toBe('Saltmarsh Supplies, lot L-b-nutmeg');
    expect(made.uses).toContainEqual(
      expect.objectContaining({ id: 'b-nutmeg', how: 'weighed', lot: 'L-b-nutmeg', massG: nutmeg.massG.value }),
    );
    expect(nutmeg.massG.value).toBeCloseTo((50 * 20 * 1.0381 * 0.4) / 1000, 2); // mg/kg × kg × share
  });

  test('as many mg/kg as drops of the same composition would give: ppm is mass over mass', () => {
    const made = kept(weighAll(clearPlan));
    const drink = made.weighed
      .filter(({ into }) => into !== 'concentrate')
      .reduce((all, { massG }) => all + massG.value, 0);
    const grams = made.weighed.find(({ into, id }) => into === 'concentrate' && id === 'linalool')!.massG.value;
    const whole = made.weighed
      .filter(({ into }) => into === 'concentrate')
      .reduce((all, { massG }) => all + massG.value, 0);
    const poured = made.weighed.find(({ id }) => id === 'concentrate')!.massG.value;
    const expected = ((grams / whole) * poured * 1e6) / drink;
    expect(made.reached.find(({ material }) => material === 'linalool')!.mgPerKg.value).toBeCloseTo(expected, 6);
  });
});

describe('what a batch is made from', () => {
  test('twice the drink takes twice of everything', () => {
    const [one, two] = ['20', '40'].map((litres) => planOf(runOf({ ...clearPlan, litres }))!);
    const masses = (plan: typeof one) => [...plan!.concentrate, ...plan!.syrup].map(({ mass }) => mass);
    masses(two).forEach((mass, i) => expect(mass / masses(one)[i]!).toBeCloseTo(2, 9));
    expect(two!.water / one!.water).toBeCloseTo(2, 9);
  });

  test('dose, sugar and alcohol come from the last batch of the same formula, of any version, and never from another drink', () => {
    const { brix: _brix, abv: _abv, dose: _dose, ...open } = clearPlan;
    takeIn([newRecord('base', { name: 'tonic', volumeMl: 250, brix: 9, abv: 8, densityGPerMl: 1.02 })]);
    const presets = (what: string) => {
      const run = runOf({ ...open, what });
      return [...['dose', 'brix', 'abv'].map((name) => fieldOf(run, name)!.preset), wordsIn(run, 'Drink')];
    };
    expect(presets('f1')).toEqual(['', '', '', '']);
    const made = kept(weighAll({ ...clearPlan, brix: '7' }));
    const second = { ...find('formula', 'f1')!, id: 'f1-2', version: 2 };
    takeIn([made, second]);
    expect(presets('f1-2')).toEqual([
      '50',
      '7',
      '0',
      expect.stringContaining(`Dose, sugar and alcohol as in ${made.name}.`),
    ]);
    takeIn([{ ...second, id: 'other', root: 'other', version: 1 } as Formula]);
    expect(presets('other')).toEqual(['', '', '', '']);
    const older = { ...runOf({ ...open, what: 'other' }), done: { drink: '2026-05-01T08:00:00Z' } };
    expect(fieldOf(older, 'brix')!.preset).toBe('9');
  });

  test('sugar told in g per litre is that much sugar, and stands there the other way round when it is switched', () => {
    const { offer } = recipeOf(runOf(clearPlan)).card!.slots!['brix']!;
    const run = runOf({ ...clearPlan, ...offer!.type });
    expect(fieldOf(run, 'sugar.l')!.preset).toBe('103.8'); // 10 °Brix at 1.0381 g/mL
    const made = kept(weighAll({ ...run.typed, 'sugar.l': '60' }));
    const grams = made.weighed.find(({ id }) => id === 'sugar')!.massG.value;
    expect(grams / 20).toBeCloseTo(60, 0);
    // the sucrose law gives 1.0213 g/mL there
    expect(wordsIn(runOf({ ...run.typed, 'sugar.l': '60' }), 'Drink')).toContain('‹5.875 °Brix›');
    expect(answered(runOf({ ...run.typed, 'sugar.l': '0' }), false).typed['trait.no added sugar']).toBe('yes');
  });

  test('a drink that was tasted brings its materials, its dose, its sugar and its alcohol', () => {
    const mgPerKg = (value: number) => ({ value, sources: [] });
    takeIn([
      newRecord('tasting', {
        id: 'liked',
        doses: [],
        verdict: 'good',
        liking: 8,
        uses: [],
        base: { name: 'tonic', volumeMl: 100, brix: 8, abv: 0.5, densityGPerMl: 1.03 },
        reached: [
          { material: 'linalool', name: 'linalool', mgPerKg: mgPerKg(30) },
          { material: 'maltol', name: 'maltol', mgPerKg: mgPerKg(10) },
        ],
      }),
    ]);
    const { what: _, dose: __, brix: ___, abv: ____, ...rest } = clearPlan;
    const run = runOf({ ...rest, what: 'liked', carrier: 'ethanol-96', spirit: '96', 'spirit.food': 'yes' });
    const made = kept(weighAll(run.typed));
    expect(made.reached.map((one) => Math.round(one.mgPerKg.value))).toEqual([30, 10]);
    expect(made.drink.brix.value).toBeCloseTo(8, 1);
    expect(made.drink.abv.value).toBeCloseTo(0.5, 1);
    expect(made.formula).toEqual({ id: 'liked', name: 'tonic with ', version: null });
  });
});

describe('too little for the scale', () => {
  const coarse = { ...clearPlan, fine: '0.01' }; // 1 % of a 0.01 g scale is 0.82 g

  test('is diluted with the carrier first, and the carrier is the less by it', () => {
    const making = makingOf(runOf(coarse))!;
    const vanillin = making.vessel.pours.find(({ goods }) => goods.id === 'vanillin')!;
    expect(vanillin.stock).not.toBeNull();
    expect(vanillin.target).toBeGreaterThanOrEqual(0.82);
    expect(making.vessel.pours.reduce((sum, { target }) => sum + target, 0)).toBeCloseTo(20, 9);
    expect(keysOf(runOf(coarse))).toContain('t.vanillin');
  });

  test('is diluted at most to 1 %: what is less yet is named, with the way that is left', () => {
    const words = wordsIn(runOf({ ...coarse, litres: '0.5', dose: '1' }), 'Weighing');
    expect(words).toMatch(/Too little for this scale.*vanillin/);
    expect(words).toContain('can be diluted on the Bench first');
  });

  test('what the scale would show nothing of is refused before anything is weighed, and never asked for as 0.00 g', () => {
    const run = runOf({ ...coarse, litres: '0.5', dose: '1' });
    expect(recipeOf(run).problem).toMatch(/^The scale would show nothing of .*vanillin.*: make more, take a finer/);
    expect(recipeOf(runOf(coarse)).problem).toBeUndefined();
    const weighing = stepOf(run, 'c.vanillin'); // a run that was paused here goes on
    expect(weighing.say).toMatch(/^Weigh ‹less than 0.01 g› of ‹VANI/);
    expect(weighing.offers).toEqual([]);
  });

  test('a stock that came out stronger is drawn less of, and the drink is as planned', () => {
    const made = kept(weighAll(coarse, (target, key) => (key === 'mass.t.vanillin' ? 1.1 * target : target)));
    const vanillin = made.reached.find(({ material }) => material === 'vanillin')!.mgPerKg.value;
    expect(Math.abs(vanillin / 5 - 1)).toBeLessThan(0.02);
    const stock = made.uses.find(({ id }) => id === 'b-vanillin')!;
    expect(stock.massG).toBeGreaterThan(0.82); // what went into the stock counts, not what was drawn of it
  });
});

const slotsIn = (run: RunState) => recipeOf(run).card!.slots!;

describe('too little for the scale, in the syrup', () => {
  const small = { ...clearPlan, although: 'a test', litres: '0.5', dose: '500', dosage: '20', benzoate: '120' };

  test('is diluted with its water, or goes on the fine scale, and the drink is as planned', () => {
    const run = runOf({ ...small, fine: '0.001' });
    const { pours } = makingOf(run)!.syrup;
    const byId = new Map(pours.map((pour) => [pour.goods.id, pour]));
    expect(byId.get('sodium-benzoate')!.stock).toMatchObject({ carrierG: expect.any(Number) }); // 0.07 g of 0.082
    expect(byId.get('sugar')!.scale).toBe('fine'); // 52 g of 82 on the large one
    expect(pours.some(({ tooSmall }) => tooSmall)).toBe(false);
    expect(keysOf(run)).toContain('w.sodium-benzoate');
    const made = kept(weighAll(small));
    const weighed = made.weighed.find(({ id }) => id === 'sodium-benzoate')!;
    const benzoic = ((weighed.massG.value * weighed.share! * 122.12) / 144.1 / made.drink.litres.value) * 1000;
    expect(Math.abs(benzoic / 120 - 1)).toBeLessThan(0.02);
    expect(made.drink.litres.value).toBeCloseTo(0.5, 3);
  });

  test('is refused where no dilution helps, with ways out that do', () => {
    const run = runOf({ ...small, fine: '0.01', dosage: '1' });
    const { wrong, mend } = slotsIn(run)['fine']!;
    expect(wrong).toMatch(/^Too little for the scale, diluted or not: .*the concentrate/);
    expect(mend!.words).toMatch(/^Make [\d.]+ L$/);
    expect(slotsIn(runOf({ ...run.typed, ...mend!.type }))['fine']!.wrong).toBeUndefined();
  });

  test('goes on as it was planned in a run of an older version that is past its recipe', () => {
    const older = { ...runOf({ ...small, fine: '0.001' }), done: { recipe: '2026-05-01T08:00:00Z' } };
    expect(makingOf(older)!.syrup.pours.every(({ stock }) => stock === null)).toBe(true);
    expect(
      makingOf({ ...older, typed: { ...older.typed, weighing: 'yes' } })!.syrup.pours.some(({ stock }) => stock),
    ).toBe(true);
  });
});

describe('a weighing that went over', () => {
  function weighOver(way: 'scale' | 'keep'): RunState {
    const walker = startWalking(batch, clearPlan);
    walkTo(walker, 'c.linalool');
    const target = Number(/‹([\d.]+) g›/.exec(walker.step().say)![1]);
    walker.type('mass.c.linalool', String(1.1 * target));
    expect(() => walker.next()).toThrow('Too much was added: choose how to continue.');
    expect(walker.step().offers!.map(({ words }) => words)).toEqual([
      expect.stringMatching(/^Scale all up by 9\.\d %, to 21\.\d+ L$/),
      'Keep 20 L; set the rest of the concentrate aside',
      expect.stringMatching(/^Keep it: \d.* % too much linalool$/),
      'Begin this vessel again',
    ]);
    walker.type('over.c.linalool', way);
    return weighAll({ ...walker.state().typed });
  }

  test('scaled up, more of what is in is asked for, and every mg/kg is as planned in 10 % more drink', () => {
    const run = weighOver('scale');
    expect(keysOf(run).filter((key) => key.endsWith('.linalool') && key !== 'c.linalool').length).toBeGreaterThan(0);
    const made = kept(run);
    expect(made.drink.litres.value).toBeCloseTo(22, 1);
    const [nutmeg, linalool] = made.reached;
    expect(Math.abs(nutmeg!.mgPerKg.value / 20 - 1)).toBeLessThan(0.01);
    expect(Math.abs(linalool!.mgPerKg.value / 15 - 1)).toBeLessThan(0.01);
    const taken = made.uses.find(({ id }) => id === 'b-maltol')!.massG;
    const weighed = made.weighed.filter(({ id }) => id === 'maltol').reduce((sum, { massG }) => sum + massG.value, 0);
    expect(taken).toBeCloseTo(weighed, 12);
  });

  test('is told with what was asked, what was weighed and what was done, as it was then', () => {
    const run = weighOver('scale');
    const [slip, ...others] = batch.done!(run, []).slips!;
    expect(slip).toMatchObject({ what: 'linalool', unit: 'g', way: 'All scaled up to it' });
    expect(slip!.counted / slip!.planned).toBeCloseTo(1.1, 2);
    expect(others).toEqual([]);
    expect(batch.done!(weighAll(clearPlan), [])).toEqual({});
  });

  test('in a run that was weighed before more could be mixed, what was drawn of a stock beyond what was made has left its bottles too', () => {
    const today = weighAll({ ...clearPlan, fine: '0.01', 'over.c.nutmeg': 'scale' }, (target, key) =>
      key === 'mass.c.nutmeg' ? 10 * target : target,
    );
    const typed = Object.entries(today.typed).filter(([key]) => !/^mass\.t\..*\.nutmeg/.test(key));
    const first = { ...today, typed: Object.fromEntries(typed) };
    const made = kept(first);
    const of = (id: string) => made.weighed.filter((one) => one.id === id);
    expect(of('vanillin').length).toBeGreaterThan(1); // weighed from its stock, and more of it after the slip
    const drawn = of('vanillin').reduce((sum, { massG }) => sum + massG.value, 0);
    const [neat, thin] = ['t.vanillin', 't.vanillin.thin'].map((key) => Number(first.typed[`mass.${key}`]));
    expect(drawn).toBeGreaterThan(neat! + thin!);
    const taken = made.uses.find(({ id }) => id === 'b-vanillin')!.massG;
    expect(taken).toBeCloseTo((drawn * neat!) / (neat! + thin!), 9);
  });

  test('kept, only that material is off, and the record says by how much', () => {
    const made = kept(weighOver('keep'));
    expect(made.drink.litres.value).toBeCloseTo(20, 1);
    expect(made.reached[1]!.mgPerKg.value / 15).toBeCloseTo(1.1, 1);
    expect(made.reached[0]!.mgPerKg.value / 20).toBeCloseTo(1, 1);
  });

  // On a scale of 0.01 g all four are diluted first; of linalool 0.8 g are mixed, 0.62 g drawn, and 0.31 g more are asked for.
  test('of a stock: where what is left of it is not enough, more is mixed in a step of its own, and all that was mixed is counted', () => {
    const slip = (target: number, key: string) => (key === 'mass.c.nutmeg' ? 1.5 * target : target);
    const run = weighAll(
      { ...clearPlan, fine: '0.01', 'over.c.nutmeg': 'scale', 'mass.t.linalool': '0.4', 'mass.t.linalool.thin': '0.4' },
      slip,
    );
    expect(keysOf(run)).toContain('t.linalool.nutmeg');
    expect(stepOf(run, 't.linalool.nutmeg').say).toContain('Dilute some more');
    const made = kept(run);
    const grams = (of: RegExp) =>
      Object.entries(run.typed).reduce((sum, [key, text]) => (of.test(key) ? sum + Number(text) : sum), 0);
    const taken = made.uses.find(({ id }) => id === 'b-linalool')!.massG;
    expect(taken).toBeCloseTo(grams(/^mass\.t\.linalool(\.nutmeg)?$/), 9);
    const lost = made.lost!.find(({ id }) => id === 'b-linalool')!;
    expect(lost.why).toBe('the rest of a dilution for the scale');
    const drinkG = made.drink.litres.value * 1000 * made.drink.densityGPerMl.value;
    const inDrink = (made.reached.find(({ material }) => material === 'linalool')!.mgPerKg.value / 1e6) * drinkG;
    expect(taken - lost.massG).toBeCloseTo(inDrink, 3);
    for (const { mgPerKg } of made.reached) expect(mgPerKg.value).toBeGreaterThan(0);
    expect(made.reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0)).toBeCloseTo(50, 0);
  });

  test('short is no slip: more is added, and the number is typed again', () => {
    const run = runOf({ ...clearPlan, 'mass.c.vanillin': '0.05' });
    expect(stepOf(run, 'c.vanillin').more!.join(' ')).toContain('short');
    expect(stepOf(run, 'c.vanillin').problem).toBeUndefined();
  });
});

describe('a weighing for the drink that went over', () => {
  /** Walks to a weighing, weighs `times` what is asked for, and takes a way out of it. */
  function over(key: string, times: number, how: { way: 'scale' | 'keep'; typed?: Record<string, string> }) {
    const walker = startWalking(batch, { ...clearPlan, ...how.typed });
    walkTo(walker, key);
    const target = Number(/‹([\d.]+) g›/.exec(walker.step().say)![1]);
    walker.type(`mass.${key}`, String(times * target));
    expect(() => walker.next()).toThrow('Too much was added: choose how to continue.');
    const open = walker.step();
    walker.type(`over.${key}`, how.way);
    return { open, run: weighAll({ ...walker.state().typed }) };
  }
  const doseOf = (made: Batch) => made.reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0);
  const gramsOf = (made: Batch, name: string) =>
    made.weighed.filter((one) => one.name.startsWith(name)).reduce((sum, { massG }) => sum + massG.value, 0);

  test('with concentrate to spare all is scaled up: more of what is in, and the drink is as planned in 5 % more', () => {
    const { open, run } = over('s.sugar', 1.05, { way: 'scale', typed: { spare: '25' } });
    expect(open.offers!.map(({ words }) => words)).toEqual([
      'Scale all up by 5 %, to 21 L',
      expect.stringMatching(/^Keep it: \d.* % too much sugar$/),
      'Begin this vessel again',
    ]);
    expect(open.more!.join(' ')).not.toContain('not enough');
    const made = kept(run);
    expect(keysOf(run)).toContain('s.water.s.sugar');
    expect(made.drink.litres.value).toBeCloseTo(21, 1);
    expect(made.drink.brix.value).toBeCloseTo(10, 2);
    expect(Math.abs(doseOf(made) / 50 - 1)).toBeLessThan(0.002);
    expect(gramsOf(made, 'citric acid')).toBeCloseTo(42, 1); // 2 g/L
    const vial = batch.keep(run)[1] as { massG: { value: number } };
    expect(vial.massG.value).toBeCloseTo(25 - 21, 1); // g: 25 made, 1 g/L of 21 L poured
  });

  test('without any to spare it is said before the choice what dose that leaves, and so it becomes', () => {
    const { open, run } = over('s.sugar', 1.05, { way: 'scale' });
    expect(open.more!.join(' ')).toContain('the concentrate is not enough: ‹47.6 mg/kg›');
    const made = kept(run);
    expect(made.drink.brix.value).toBeCloseTo(10, 2);
    expect(doseOf(made)).toBeCloseTo(50 / 1.05, 1);
    expect(gramsOf(made, 'the concentrate')).toBeCloseTo(20, 2); // g: no more than there is
  });

  test('too much water at the very end: everything before follows, the concentrate as far as it goes', () => {
    const made = kept(over('d.water', 1.02, { way: 'scale', typed: { spare: '1' } }).run);
    expect(gramsOf(made, 'the concentrate')).toBeCloseTo(20.2, 2);
    expect(made.drink.brix.value).toBeCloseTo(10, 2);
    expect(Math.abs(doseOf(made) / ((50 * 1.01) / 1.02) - 1)).toBeLessThan(0.002);
  });

  test('kept, only that is off, and the record says what the drink became', () => {
    const made = kept(over('s.sugar', 1.05, { way: 'keep' }).run);
    expect(made.drink.brix.value).toBeCloseTo((100 * (1.05 * 0.1)) / (1 + 0.05 * 0.1), 1);
    expect(Math.abs(doseOf(made) / (50 / 1.005) - 1)).toBeLessThan(0.002);
    expect(made.weighed.some(({ name }) => name.endsWith(', more'))).toBe(false);
  });

  test('what was asked for more goes into the sum: all that was weighed is in the drink', () => {
    const made = kept(over('s.citric-acid', 1.1, { way: 'scale', typed: { spare: '20' } }).run);
    const whole = made.weighed
      .filter(({ into }) => into !== 'concentrate')
      .reduce((sum, { massG }) => sum + massG.value, 0);
    expect(whole / made.drink.densityGPerMl.value / 1000).toBeCloseTo(made.drink.litres.value, 9); // mL per L
    expect(made.drink.litres.value).toBeCloseTo(22, 1);
  });
});

describe('limits', () => {
  test('nutmeg oil brings safrole over its limit at 100 mg/kg, and the reverse answer lets it pass', () => {
    const run = runOf({ ...clearPlan, dose: '100' });
    expect(gradeOf(run)).toBe('EU rules: over the limit'); // 100 × 40 % × 2.8 % (worst published) is 1.12 mg/kg of 1
    const offer = recipeOf(run).card!.advice!.offer!;
    expect(offer.words).toContain('nutmeg oil');
    const dose = Number(offer.type!['dose']);
    expect(dose / (1 / 0.4 / 0.028)).toBeLessThanOrEqual(0.98); // two per cent in hand for the weighing
    expect(dose / (1 / 0.4 / 0.028)).toBeGreaterThan(0.97);
    const lower = runOf({ ...clearPlan, ...offer.type });
    expect(gradeOf(lower)).not.toContain('over');
    expect(recipeOf(lower).card!.advice).toBeUndefined();
  });

  test('the certificate of the lot beats the worst published content', () => {
    takeIn([
      {
        ...batchShelf().find(({ id }) => id === 'b-nutmeg')!,
        constituents: [{ cas: '94-59-7', name: 'safrole', share: 0.001 }],
      } as never,
    ]);
    expect(gradeOf(runOf({ ...clearPlan, dose: '100' }))).not.toContain('over');
  });

  test('too much preservative is told, as its acid, and sugar and water are not judged', () => {
    const run = runOf({ ...clearPlan, benzoate: '200' });
    expect(gradeOf(run)).toContain('over the limit'); // EU 150 mg/L as benzoic acid
  });
});

describe('the emulsion branch', () => {
  const cloudy = { ...clearPlan, make: 'emulsion', agent: 'agent-8050-30-4', dosage: '2', gum: '1.5' };

  test('the emulsion is the concentrate: its mass is the dosage, and ester gum stays under its cap', () => {
    const plan = planOf(runOf(cloudy))!;
    expect(plan.concentrate.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(40, 9);
    expect(plan.emulsion!.agentMgPerL).toBeLessThanOrEqual(100 * (1 + 1e-12)); // E 445, 100 mg/L
    expect(wordsIn(runOf(cloudy), 'Emulsion')).toContain('a ring at the top after about');
  });

  test('an oil that water cannot hold makes the emulsion the usual answer', () => {
    const { make: _, ...open } = clearPlan;
    const run = runOf({ ...open, dose: '500' });
    expect(wordsIn(run, 'Emulsion')).toContain('It will not stay dissolved in the drink.');
    expect(fieldOf(run, 'oil')).toBeDefined();
    expect(fieldOf(run, 'carrier')).toBeUndefined();
  });

  test('an agent that no rule names is not offered, and why is said; US rules want citrus oil for ester gum', () => {
    expect(wordsIn(runOf(cloudy), 'Emulsion')).toContain('damar gum');
    const agents = (typed: Record<string, string>) => fieldOf(runOf({ ...cloudy, ...typed }), 'agent')!.options!.length;
    expect(agents({ jurisdiction: 'US' })).toBe(2); // none, SAIB
    expect(agents({ jurisdiction: 'US', 'trait.citrus oil': 'yes' })).toBe(3);
  });

  test('water and gum are weighed after the oils, into a vessel of their own, and the whole is kept as cloudy', () => {
    const made = kept(weighAll(cloudy));
    expect(made.drink.emulsion).toBe(true);
    const order = made.weighed.filter(({ into }) => into === 'concentrate').map(({ id }) => id);
    expect(order.slice(0, 2)).toEqual(['linalool', 'agent-8050-30-4']);
    expect(order.slice(-4)).toEqual(['vanillin', 'maltol', 'emulsion-water', 'gum-arabic']); // what is no oil is in the water
    const agent = made.weighed.find(({ id }) => id.startsWith('agent'))!;
    expect(agent.massG.value / 20).toBeLessThanOrEqual(0.1 * 1.01); // g/L
  });

  test('no room in the concentrate is said in one sentence, not thrown', () => {
    const run = runOf({ ...cloudy, dosage: '0.1' });
    expect(recipeOf(run).problem).toMatch(/need at least .* g\/L/);
    expect(emulsions.rows.length).toBeGreaterThan(0);
  });
});

describe('what may not go into a drink', () => {
  test('the smell-only bottle is shown, refused with the reason, and leads nowhere', () => {
    const run = runOf({ ...clearPlan, 'lot.linalool': 'b-linalool-nose' });
    expect(recipeOf(run).problem).toContain('is not fit for drinks: smell only, it never goes into a drink.');
    expect(keysOf(run)).toEqual(['recipe']);
    expect(() => batch.keep(run)).toThrow('smell only');
    expect(fieldOf(run, 'lot.linalool')!.options!.map(({ value }) => value)).toContain('b-linalool-nose');
  });

  test('a vial that comes from a smell-only one is refused too', () => {
    const sure = (value: number) => ({ value, sources: [] });
    const vial = (id: string, food: boolean, uses: { id: string; massG: number }[]) =>
      newRecord('vial', {
        id,
        code: id.toUpperCase(),
        name: 'linalool',
        sizeMl: 10,
        supplier: '',
        lot: '',
        uses,
        contents: [{ material: 'linalool', name: 'linalool', strength: sure(0.1) }],
        massG: sure(8),
        label: { value: 10, basis: '% w/w' },
        densityGPerMl: 0.8,
        madeOn: '2026-01-01',
        useBy: '',
        solvent: {
          id: food ? 'ethanol-96' : 'isopropanol-99',
          name: 'a solvent',
          food,
          dryOff: 'minutes',
          density: { gPerMl: 0.8, atC: 20, source: 'test' },
        },
        grade: 'fit for drinks',
      } as never);
    takeIn([vial('nose', false, []), vial('thin', true, [{ id: 'nose', massG: 1 }])]);
    const run = runOf({ ...clearPlan, 'lot.linalool': 'thin' });
    expect(recipeOf(run).problem).toContain('THIN 10 % w/w was made with NOSE 10 % w/w');
  });

  test('a carrier that is not food grade stops the batch', () => {
    const run = runOf({ ...clearPlan, 'carrier.food': 'no' });
    expect(recipeOf(run).problem).toContain('smell only');
    expect(() => batch.keep(run)).toThrow('never goes into a drink');
  });
});

describe('a drink with alcohol', () => {
  test('spirit makes up what the carrier does not bring, and the strength is kept', () => {
    const typed = { ...clearPlan, abv: '5', spirit: '40', 'spirit.food': 'yes', 'throw.n': '0', carrier: 'ethanol-96' };
    const made = kept(weighAll(typed));
    expect(made.drink.abv.value).toBeCloseTo(5, 1);
    expect(made.weighed.some(({ into }) => into === 'syrup')).toBe(false);
  });

  test('the carrier alone brings 1 g/L × 96 % vol: under 0.5 %, not under 0.05 %', () => {
    const run = weighAll({ ...clearPlan, carrier: 'ethanol-96' });
    const words = stepOf(run, 'result').more!.join(' ');
    expect(kept(run).drink.abv.value).toBeCloseTo(0.95 * 0.119, 2); // 0.119 % for 1 g/L of 96 % vol, 0.95 of it carrier
    expect(words).toContain('‹Over 0.05 % ABV›');
    expect(words).toContain('‹Under 0.5 % ABV›');
  });

  test('a syrup without room for its water is told where it can be mended', () => {
    const run = runOf({ ...clearPlan, abv: '30', spirit: '40', 'spirit.food': 'yes' });
    expect(recipeOf(run).card!.slots!['throw.n']!.wrong).toContain('no room for its water');
  });
});

describe('again, a year later', () => {
  test('with another lot the difference is said, and the plan is the same', () => {
    const first = kept(weighAll(clearPlan));
    const shelf = batchShelf();
    const spent = shelf.find(({ id }) => id === 'b-linalool')!;
    const fresh = { ...spent, id: 'b-linalool-27', lot: 'L-27' };
    takeIn([first, { ...spent, archived: '2027-05-04' } as never, fresh as never]);
    const again = { ...first.asked, what: first.formula.id, again: first.id };
    const words = wordsIn(runOf(again), 'Weighing');
    expect(words).toContain('this is different');
    expect(words).toContain('linalool: Saltmarsh Supplies, lot L-b-linalool then, ‹Saltmarsh Supplies, lot L-27› now.');
    const second = kept(weighAll(again));
    expect(second.from).toEqual(expect.arrayContaining([first.id, 'b-linalool-27']));
    second.reached.forEach((one, i) => expect(one.mgPerKg.value / first.reached[i]!.mgPerKg.value).toBeCloseTo(1, 2));
  });
});

describe('wrong input', () => {
  test.each([
    ['dose', '0', 'more than 0 mg/kg'],
    ['litres', '', 'still empty'],
    ['brix', 'sweet', 'is not a number'],
    ['dosage', '-1', 'more than 0 g/L'],
    ['gas', '12', 'at most 8 volumes'],
  ])('%s “%s” gets one sentence', (name, text, sentence) => {
    const run = runOf({ ...clearPlan, [name]: text });
    expect(problemsOf(recipeOf(run), run)[name]).toContain(sentence);
  });

  test('nothing is kept before the last thing is weighed', () => {
    expect(() => batch.keep(runOf(clearPlan))).toThrow('not weighed yet');
  });

  test('a dose beyond the concentrate is told at the concentrate', () => {
    const run = runOf({ ...clearPlan, dose: '5000', dosage: '1' });
    expect(recipeOf(run).card!.slots!['dosage']!.wrong).toBeTruthy();
    expect(() => batch.steps(run)).not.toThrow();
  });

  test('no step throws while a run is typed key by key', () => {
    const typed = Object.entries(clearPlan);
    for (let i = 0; i <= typed.length; i++)
      expect(() => batch.steps(runOf(Object.fromEntries(typed.slice(0, i))))).not.toThrow();
    expect(batch.steps(fold([])).length).toBeGreaterThan(0);
  });
});
