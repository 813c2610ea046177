import { beforeEach, describe, expect, test } from 'vitest';
import { judgePlan } from '../../../src/core/plan/judge';
import { bestPlan } from '../../../src/core/plan/bestPlan';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import type { Formula } from '../../../src/records/kind/formula';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { settled } from '../../../src/tasks/count/asked';
import { instanceOf } from '../../../src/tasks/count/planInstance';
import { plansOf } from '../../../src/tasks/count/plans';
import { count } from '../../../src/tasks/count/task';
import { material, pipette, vialOf } from './countShelf';
import { measured } from '../../../src/core/number/measured';
import { answer } from '../../../src/tasks/engine/answers';
import { fields } from '../../../src/tasks/count/fields';
import { recordsOf } from '../../../src/tasks/engine/recordsOf';
import { asLeft, startWalking, type Walker } from '../walking';

const parts = { gf: 55, rhu: 21, card: 6.5, hex: 1.7 };

/** A formula of four lines, and seven vials and a bottle it can be counted from. */
function stockTheShelf(): void {
  shelf.records.value = new Map();
  takeIn([
    ...pipette,
    ...Object.keys(parts).map(material),
    vialOf('gf1', 0.01, { material: 'gf' }),
    vialOf('rhu1', 0.01, { material: 'rhu' }),
    vialOf('card1', 0.01, { material: 'card' }),
    vialOf('card01', 0.001, { material: 'card' }),
    vialOf('hex01', 0.001, { material: 'hex' }),
    vialOf('hex05', 0.005, { material: 'hex', grade: 'smell only' }),
    newRecord('bottle', { id: 'bhex', material: 'hex', supplier: '', lot: '', grade: 'fit for drinks' }),
    newRecord('formula', {
      id: 'f',
      name: 'Orchard',
      root: 'f',
      version: 1,
      notes: '',
      lines: Object.entries(parts).map(([id, share]) => ({ material: id, name: `${id} oil`, share })),
    }),
  ]);
}

/** The card with its plan. */
function toPlans(purpose = 'taste', typed: Record<string, string> = {}): Walker {
  return startWalking(count, { formula: 'f', purpose, dropper: 'pip', ...typed });
}

const plansAt = (walk: Walker) => plansOf(settled(walk.state()));

/** At the first line of the recommended plan, or of the smallest on the list with at least that many drops. */
function toCounting(atLeast?: number): Walker {
  const walk = toPlans();
  const plans = plansAt(walk);
  const point = plans.ok && atLeast !== undefined ? plans.worth.find(({ drops }) => drops >= atLeast) : undefined;
  if (point) walk.type('point', String(point.drops));
  walk.next();
  return walk;
}

/** A vial whose strength is known to ± 40 %. */
function vague(id: string, of: string): Vial {
  const vial = vialOf(id, 0.01, { material: of });
  const strength = measured(0.01, 0.002, { id: `making:${id}`, words: 'making' });
  return { ...vial, contents: [{ ...vial.contents[0]!, strength }] } as Vial;
}

/** Whether this is the last step of the run, with all drops in. */
function isLast(walk: Walker): boolean {
  const { counter, wish } = asks(walk);
  walk.tap(counter, wish - (walk.state().drops[counter] ?? 0));
  return walk.keys().at(-1) === walk.step().key;
}

/** Counts all that is still to come as it is asked for. */
function countAll(walk: Walker): void {
  while (walk.step().pad && !isLast(walk)) walk.next();
}

/** What the pad asks for: counter and target. */
function asks(walk: Walker): { counter: string; wish: number; id: string } {
  const { counter, target: wish } = walk.step().pad!;
  return { counter, wish: wish!, id: counter.slice('drops.'.length) };
}

/** Counts the line at hand with that many drops too many or too few, and leaves the pad. */
function countLine(walk: Walker, off = 0): void {
  const { counter, wish } = asks(walk);
  walk.tap(counter, wish + off - (walk.state().drops[counter] ?? 0));
  walk.next();
}

function decide(walk: Walker, way: string): void {
  const [question] = walk.step().ask!;
  const option = question!.options!.find(({ value }) => value.split('|')[0] === way);
  if (!option) throw new Error(`no ${way} among ${question!.options!.map(({ value }) => value).join(', ')}`);
  walk.type(question!.name, option.value);
  walk.next();
}

function ways(walk: Walker): string[] {
  return walk.step().ask![0]!.options!.map(({ value }) => value.split('|')[0]!);
}

/** Worst error, fraction, of what is in the vial now, judged by the solver's own closed form. */
function errorNow(walk: Walker): number {
  const counted = Object.entries(walk.state().drops).map(([key, drops]) => [key.slice('drops.'.length), drops]);
  return judgePlan(instanceOf(settled(walk.state())), Object.fromEntries(counted)).objective;
}

beforeEach(stockTheShelf);

describe('from a formula to a plan', () => {
  test('every plan on the list is the best for its number of drops, and one is proposed', () => {
    const walk = toPlans();
    const plans = plansAt(walk);
    if (!plans.ok) throw new Error(plans.why);
    expect(plans.worth.length).toBeGreaterThan(3);
    expect(plans.worth).toContain(plans.proposed);
    expect(plans.chosen).toBe(plans.proposed);
    for (const point of plans.worth) {
      const limits = { ...plans.instance.limits, maxDrops: point.drops };
      const best = bestPlan({ ...plans.instance, limits });
      expect(best.ok && best.objective).toBeCloseTo(point.objective, 9);
    }
    expect(walk.step().ask!.find(({ name }) => name === 'point')!.preset).toBe(String(plans.proposed.drops));
    expect(walk.step().done).toMatch(/^Take (GF|RHU|CARD|HEX)/);
  });

  test('proposed is where more drops gain less than the vials are known, and what more would gain is said', () => {
    const walk = toPlans();
    const plans = plansAt(walk);
    if (!plans.ok) throw new Error(plans.why);
    const before = plans.worth.filter(({ drops }) => drops < plans.proposed.drops);
    for (const point of before) expect(point.objective).toBeGreaterThan(Math.min(plans.own, 0.1));
    // strengths that are each known to ± 2 %, and drops of one calibration, which cancel in the shares
    expect(plans.own).toBeGreaterThan(0.02);
    expect(plans.own).toBeLessThan(0.03);
    expect(walk.step().card!.advice!.words).toMatch(/^\d+ drops get within [\d.]+ %/);
    takeIn(Object.entries({ gf1: 'gf', rhu1: 'rhu', card1: 'card' }).map(([id, of]) => vague(id, of)));
    const vaguer = plansAt(walk);
    if (!vaguer.ok) throw new Error(vaguer.why);
    expect(vaguer.own).toBeGreaterThan(0.3);
    expect(vaguer.proposed.objective).toBeLessThanOrEqual(0.1); // known ever so little, no line is planned off by more
    expect(walk.step().card!.advice!.words).toContain('but the vials are only known to ±');
  });

  test('a vial that was chosen for a material is the one that is counted, and the next time as well', () => {
    const walk = toPlans('taste', { 'stock.card': 'card01' });
    const usedOf = (walk: Walker) => {
      const plans = plansAt(walk);
      return plans.ok ? plans.chosen.lines.find(({ componentId }) => componentId === 'card')!.stockIds : [];
    };
    expect(usedOf(walk)).toEqual(['card01']);
    walk.next();
    countAll(walk);
    takeIn(recordsOf(count, 'r', { state: asLeft(count, walk.state()), events: [], endedAt: '2026-11-01T10:00:00Z' }));
    expect(usedOf(startWalking(count, { formula: 'f' }))).toEqual(['card01']);
    takeIn([{ ...vialOf('card01', 0.001, { material: 'card' }), useBy: '2020-01-01' } as AnyRecord]);
    expect(usedOf(startWalking(count, { formula: 'f' }))).toEqual(['card1']);
  });

  test('what is smell only does not go into a trial that is tasted, however well it would fit', () => {
    const used = (walk: Walker) => {
      const plans = plansAt(walk);
      return plans.ok ? plans.instance.components.find(({ id }) => id === 'hex')!.stocks.map(({ id }) => id) : [];
    };
    expect(used(toPlans('taste'))).toEqual(['hex01', 'bhex']);
    expect(used(toPlans('smell'))).toEqual(['hex05', 'hex01', 'bhex']);
  });

  test('the plan that was taken stays, whatever comes onto the Shelf meanwhile', () => {
    const walk = toCounting();
    const before = walk.keys();
    takeIn([vialOf('gf02', 0.002, { material: 'gf' })]);
    expect(walk.keys()).toEqual(before);
  });

  test('a line without a vial is named, and the way to one is offered', () => {
    takeIn([material('iris')]);
    takeIn([newRecord('bottle', { id: 'biris', material: 'iris', supplier: '', lot: '', grade: 'smell only' })]);
    const formula = shelf.records.value.get('f') as Formula;
    const lines = [...formula.lines, { material: 'iris', name: 'iris oil', share: 1 }];
    takeIn([newRecord('formula', { ...formula, lines })]);
    const walk = toPlans();
    const { wrong, mend } = walk.step().card!.slots!['formula']!;
    expect(wrong).toContain('iris oil');
    expect(mend!.start).toMatchObject({ task: 'dilute' });
    expect(() => walk.next()).toThrow('iris oil');
  });

  test('a vial at fault is named by its code, a line by the name of its material', () => {
    const [, calibration] = pipette;
    takeIn([{ ...calibration!, spread: 1.2 } as AnyRecord]);
    expect(plansAt(toPlans())).toMatchObject({
      why: 'The drops of vial GF1 1 % w/w spread so far that one of them may hold nothing.',
      remedy: 'Calibrate the dropper of vial GF1 1 % w/w, or count its uncertainty fewer times.',
    });
    takeIn([...pipette, vialOf('gf1', 0.01, { material: 'gf', massG: 0 })]);
    expect(plansAt(toPlans())).toMatchObject({ remedy: 'Make more of gf oil.' });
  });

  test('a line that only smell-only vials hold is not said to have none', () => {
    takeIn([vialOf('hex01', 0.001, { material: 'hex', grade: 'smell only' })]);
    takeIn([newRecord('bottle', { id: 'bhex', material: 'hex', supplier: '', lot: '', grade: 'smell only' })]);
    const { wrong } = toPlans('taste').step().card!.slots!['formula']!;
    expect(wrong).toContain('HEX05 0.5 % w/w, HEX01 0.1 % w/w, HEX neat: smell only');
    expect(toPlans('smell').step().done).toMatch(/^Take/);
    // asked nothing, it is planned to smell: a trial to dose could not be counted
    expect(startWalking(count, { formula: 'f' }).step().done).toMatch(/^Take/);
  });

  test('too few drops allowed are told with the number that would do', () => {
    const { wrong, mend } = toPlans('taste', { most: '3' }).step().card!.slots!['formula']!;
    expect(wrong).toContain('4 drops');
    expect(mend).toEqual({ words: 'Allow 300 drops', type: { most: '300' } });
  });

  test('the dilution that would help most is handed over to Dilute with bottle and strength', () => {
    const walk = toPlans('taste', { advice: 'yes' });
    expect(walk.step().card!.advice!.words).toMatch(/^No single new dilution would come nearer in \d+ drops/);
    const all = plansAt(walk);
    walk.type('point', String(all.ok && all.worth[0]!.drops));
    const { words, offer } = walk.step().card!.advice!;
    const plans = plansAt(walk);
    expect(words).toContain('would help most');
    expect(Number(/: (\d+) drops, at most/.exec(words)![1])).toBeLessThanOrEqual(plans.ok ? plans.chosen.drops : 0);
    expect(offer!.start!.task).toBe('dilute');
    expect(Number(offer!.start!.typed['strength'])).toBeGreaterThan(0);
    expect(offer!.start!.typed['basis']).toBe('% w/w');
  });

  test('all of it into one drink reaches its ppm', () => {
    const walk = toPlans('drink', { ppm: '20', drinkMl: '100' });
    walk.next();
    countAll(walk);
    expect(walk.step()).toMatchObject({ key: 'truth', say: 'Fill the glass up to ‹100 mL›.' });
    const reached = walk.step().results!.find(({ label }) => label === 'All neat material in the drink')!;
    const { drops } = walk.state();
    // 100 mL of 0.9982 g/mL; drops of 15 mg from the vials
    const mg =
      15 *
      (0.01 * (drops['drops.gf1'] ?? 0) +
        0.01 * (drops['drops.rhu1'] ?? 0) +
        0.01 * (drops['drops.card1'] ?? 0) +
        0.001 * (drops['drops.card01'] ?? 0) +
        0.001 * (drops['drops.hex01'] ?? 0));
    expect(reached.amount.value).toBeCloseTo(mg / 0.09982067, 3);
    expect(Math.abs(reached.amount.value / 20 - 1)).toBeLessThan(0.1);
  });

  test('materials and parts typed by hand are planned alike, and become a formula', () => {
    const walk = startWalking(count, { formula: 'materials' });
    expect(() => walk.next()).toThrow('Pick at least one material.');
    for (const id of Object.keys(parts)) walk.type(`pick.${id}`, 'yes');
    expect(() => walk.next()).toThrow('still empty');
    for (const [id, share] of Object.entries(parts)) walk.type(`part.${id}`, String(share).replace('.', ','));
    walk.type('purpose', 'taste');
    walk.type('dropper', 'pip');
    expect(plansAt(walk)).toEqual(plansAt(toPlans()));
    walk.next();
    countAll(walk);
    const [trial, formula] = walk.keep() as [Vial, Formula];
    expect([trial.name, formula.name]).toEqual(['GF + RHU + CARD + HEX, trial 1', 'GF + RHU + CARD + HEX']);
    expect(formula.lines.map(({ material, share }) => [material, share])).toEqual(Object.entries(parts));
  });
});

describe('a formula that came of smelling', () => {
  const stockShown = (walk: Walker, of: string) => answer(settled(walk.state()), fields.stock(of));
  const smelled = (...vials: string[]) => {
    const strips = vials.map((vial) => ({ vial, code: vial, dips: 1, dippedAt: null, takenOutAt: null }));
    const verdict = { liking: 7, decision: 'keep', words: '' };
    const lines = Object.entries(parts).map(([id, share]) => ({ material: id, name: `${id} oil`, share }));
    takeIn([
      newRecord('layering', { id: 'l', name: '', strips, readings: [], verdict }),
      newRecord('formula', { id: 'f', name: 'Orchard', root: 'f', version: 1, notes: '', lines, from: ['l'] }),
    ]);
  };

  test('is counted from the vials that were smelled, not from a bottle; any may be chosen instead', () => {
    smelled('hex01', 'card01');
    const walk = toPlans();
    expect([stockShown(walk, 'hex'), stockShown(walk, 'card')]).toEqual(['hex01', 'card01']);
    expect(stockShown(walk, 'gf')).toBe('any'); // it was not smelled there
    expect(stockShown(toPlans('taste', { 'stock.hex': 'bhex' }), 'hex')).toBe('bhex');
  });

  test('a smell-only vial is proposed for the nose alone', () => {
    smelled('hex05');
    expect(stockShown(toPlans('taste'), 'hex')).toBe('any');
    expect(stockShown(toPlans('smell'), 'hex')).toBe('hex05');
  });
});

describe('when the hand slips', () => {
  test('a plan counted as planned comes out as near as it was promised', () => {
    const walk = toCounting();
    const promised = plansAt(walk);
    countAll(walk);
    expect(errorNow(walk)).toBeCloseTo((promised as Extract<typeof promised, { ok: true }>).chosen.objective, 10);
  });

  test('a drop too many is made up for by the lines still to come', () => {
    const walk = toCounting();
    countLine(walk, +1);
    expect(walk.step().say).toContain('1 too many');
    expect(walk.step().ask![0]!.options![0]!.hint).toContain('best');
    const left = toCounting();
    countLine(left, +1);
    decide(left, 'accept');
    countAll(left);
    decide(walk, 'complete');
    countAll(walk);
    expect(errorNow(walk)).toBeLessThan(errorNow(left));
  });

  test('a line finished too early is counted on, or made up for by the others', () => {
    const walk = toCounting();
    countLine(walk, -1);
    expect(ways(walk)[0]).toBe('on');
    expect(ways(walk)).toContain('complete');
    decide(walk, 'complete');
    const promised = walk.state().typed;
    countAll(walk);
    expect(Object.keys(promised).some((key) => key.startsWith('slip.'))).toBe(true);
    expect(errorNow(walk)).toBeLessThan(0.12);
  });

  test('one line too many and a later one too few are both mended, and the record tells what is really in the vial', () => {
    const walk = toCounting(60);
    countLine(walk, +1);
    decide(walk, 'scaleUp');
    countLine(walk);
    countLine(walk, -2);
    decide(walk, 'on');
    countAll(walk);
    const vial = walk.keep()[0] as Vial;
    const strengths: Record<string, number> = { gf1: 0.01, rhu1: 0.01, card1: 0.01, card01: 0.001, hex01: 0.001 };
    const { drops } = walk.state();
    const counted = Object.entries(drops).map(([key, n]) => [key.slice('drops.'.length), n] as const);
    const total = counted.reduce((sum, [, n]) => sum + n, 0);
    const mine = (name: string) =>
      counted.reduce((sum, [id, n]) => sum + (id.startsWith(name) ? n * strengths[id]! : 0), 0) / total;
    for (const { material, strength } of vial.contents) expect(strength.value).toBeCloseTo(mine(material), 12);
    expect(vial.uses.map(({ id, massG }) => [id, massG])).toEqual(
      counted.map(([id, n]) => [id, expect.closeTo(n * 0.015, 12)]),
    );
  });

  test('a line left out whole is told as such, and the others stay right among themselves', () => {
    const walk = toCounting();
    walk.next(); // no drop of the first
    expect(ways(walk)).toEqual(['on', 'accept']);
    decide(walk, 'accept');
    countLine(walk, +1);
    expect(ways(walk).length).toBeGreaterThan(0);
    decide(walk, 'accept');
    countAll(walk);
    const [vial] = walk.keep() as [Vial];
    expect(vial.contents).toHaveLength(3);
  });

  test('after a slip in the last line more can be made of all of it, by taking earlier vials once more', () => {
    const walk = toCounting(16);
    const last = walk.keys().findLast((key) => key.startsWith('count.'));
    while (walk.step().key !== last) countLine(walk);
    const planned = errorNow(walk);
    countLine(walk, +2);
    expect(ways(walk)).toContain('scaleUp');
    decide(walk, 'scaleUp');
    const again = asks(walk);
    expect(walk.step().key).toMatch(/\.2$/);
    expect(walk.state().drops[again.counter]).toBeGreaterThan(0);
    expect(again.wish).toBeGreaterThan(walk.state().drops[again.counter]!);
    countAll(walk);
    expect(errorNow(walk)).toBeLessThan(planned + 0.01);
  });

  test('a slip in drops typed by hand can be mended too', () => {
    const walk = startWalking(count, {
      formula: 'hand',
      'pick.gf1': 'yes',
      'pick.rhu1': 'yes',
      'plan.gf1': '10',
      'plan.rhu1': '5',
    });
    walk.type('dropper', 'pip');
    walk.next();
    countLine(walk, +2);
    decide(walk, 'scaleUp');
    expect(asks(walk)).toMatchObject({ id: 'rhu1', wish: 6 }); // 12 : 6 is 10 : 5
  });
});
