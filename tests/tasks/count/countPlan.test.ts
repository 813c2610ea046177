import { beforeEach, describe, expect, test } from 'vitest';
import { judgePlan } from '../../../src/core/plan/judge';
import { bestPlan } from '../../../src/core/plan/bestPlan';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import type { Formula } from '../../../src/records/kind/formula';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { instanceOf } from '../../../src/tasks/count/planInstance';
import { plansOf } from '../../../src/tasks/count/plans';
import { count } from '../../../src/tasks/count/task';
import { material, pipette, vialOf } from './countShelf';
import { startWalking, type Walker } from '../walking';

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

/** Up to the list of plans. */
function toPlans(purpose = 'taste', typed: Record<string, string> = {}): Walker {
  const walk = startWalking(count, { formula: 'f', ...typed });
  walk.next();
  walk.type('purpose', purpose);
  walk.next();
  if (purpose === 'drink') walk.next();
  walk.type('dropper', 'pip');
  walk.next();
  walk.next(); // limits stay as they are preset
  return walk;
}

/** At the first line of the recommended plan, or of the smallest on the list with at least that many drops. */
function toCounting(atLeast?: number): Walker {
  const walk = toPlans();
  const plans = plansOf(walk.state());
  const point = plans.ok && atLeast !== undefined ? plans.worth.find(({ drops }) => drops >= atLeast) : undefined;
  if (point) walk.type('point', String(point.drops));
  walk.next();
  walk.next();
  return walk;
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
  return judgePlan(instanceOf(walk.state()), Object.fromEntries(counted)).objective;
}

beforeEach(stockTheShelf);

describe('from a formula to a plan', () => {
  test('every plan on the list is the best for its number of drops, and one is recommended', () => {
    const walk = toPlans();
    const plans = plansOf(walk.state());
    if (!plans.ok) throw new Error(plans.why);
    expect(plans.worth.length).toBeGreaterThan(3);
    expect(plans.worth.filter(({ recommended }) => recommended)).toHaveLength(1);
    for (const point of plans.worth) {
      const limits = { ...plans.instance.limits, maxDrops: point.drops };
      const best = bestPlan({ ...plans.instance, limits });
      expect(best.ok && best.objective).toBeCloseTo(point.objective, 9);
    }
    expect(walk.step().done).toBe(`Look at ${plans.worth.find(({ recommended }) => recommended)!.drops} drops`);
  });

  test('a plan can be looked at before it is taken, with what rounding line by line would have given', () => {
    const walk = toPlans();
    walk.next();
    expect(walk.step().more!.join(' ')).toMatch(/by rounding.*by chance in counting.*Rounded line by line/s);
    expect(walk.step().done).toMatch(/^Count \d+ drops$/);
  });

  test('what is smell only does not go into a trial that is tasted, however well it would fit', () => {
    const used = (walk: Walker) => {
      const plans = plansOf(walk.state());
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
    expect(walk.step().more!.join(' ')).toContain('iris oil');
    expect(walk.step().offers![0]!.start).toMatchObject({ task: 'dilute' });
    expect(() => walk.next()).toThrow('iris oil');
  });

  test('a vial at fault is named by its code, a line by the name of its material', () => {
    const [, calibration] = pipette;
    takeIn([{ ...calibration!, spread: 1.2 } as AnyRecord]);
    expect(plansOf(toPlans().state())).toMatchObject({
      why: 'The drops of vial GF1 1 % w/w spread so far that one of them may hold nothing.',
      remedy: 'Calibrate the dropper of vial GF1 1 % w/w, or count its uncertainty fewer times.',
    });
    takeIn([...pipette, vialOf('gf1', 0.01, { material: 'gf', massG: 0 })]);
    expect(plansOf(toPlans().state())).toMatchObject({ remedy: 'Make more of gf oil.' });
  });

  test('a line that only smell-only vials hold is not said to have none', () => {
    takeIn([vialOf('hex01', 0.001, { material: 'hex', grade: 'smell only' })]);
    takeIn([newRecord('bottle', { id: 'bhex', material: 'hex', supplier: '', lot: '', grade: 'smell only' })]);
    expect(toPlans('taste').step().more!.join(' ')).toContain('HEX05 0.5 % w/w, HEX01 0.1 % w/w, HEX neat: smell only');
    expect(toPlans('smell').step().done).toMatch(/^Look at/);
  });

  test('too few drops allowed are told with the number that would do', () => {
    const walk = toPlans('taste', { most: '3' });
    expect(walk.step().more!.join(' ')).toContain('4 drops');
  });

  test('the dilution that would help most is handed over to Dilute with bottle and strength', () => {
    const walk = toPlans();
    walk.next();
    walk.type('advice', 'yes');
    const offer = walk.step().offers![0]!;
    expect(walk.step().more![0]).toContain('would help most');
    expect(offer.start!.task).toBe('dilute');
    expect(Number(offer.start!.typed['strength'])).toBeGreaterThan(0);
    expect(offer.start!.typed['basis']).toBe('% w/w');
  });

  test('all of it into one drink reaches its ppm', () => {
    const walk = toPlans('drink', { ppm: '20', drinkMl: '100' });
    walk.next();
    walk.next();
    while (walk.step().pad) countLine(walk);
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
    walk.next();
    expect(() => walk.next()).toThrow('Pick at least one material.');
    for (const id of Object.keys(parts)) walk.type(`pick.${id}`, 'yes');
    walk.next();
    for (const [id, share] of Object.entries(parts)) walk.type(`part.${id}`, String(share).replace('.', ','));
    walk.next();
    walk.type('purpose', 'taste');
    walk.next();
    walk.type('dropper', 'pip');
    walk.next();
    walk.next();
    expect(plansOf(walk.state())).toEqual(plansOf(toPlans().state()));
    walk.next();
    walk.next();
    while (walk.step().pad) countLine(walk);
    walk.next();
    walk.type('name', 'New one');
    const formula = walk.keep()[1] as Formula;
    expect(formula.lines.map(({ material, share }) => [material, share])).toEqual(Object.entries(parts));
  });
});

describe('when the hand slips', () => {
  test('a plan counted as planned comes out as near as it was promised', () => {
    const walk = toCounting();
    const promised = plansOf(walk.state());
    while (walk.step().pad) countLine(walk);
    expect(walk.step().key).toBe('truth');
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
    while (left.step().pad) countLine(left);
    decide(walk, 'complete');
    while (walk.step().pad) countLine(walk);
    expect(errorNow(walk)).toBeLessThan(errorNow(left));
  });

  test('a line finished too early is counted on, or made up for by the others', () => {
    const walk = toCounting();
    countLine(walk, -1);
    expect(ways(walk)[0]).toBe('on');
    expect(ways(walk)).toContain('complete');
    decide(walk, 'complete');
    const promised = walk.state().typed;
    while (walk.step().pad) countLine(walk);
    expect(Object.keys(promised).some((key) => key.startsWith('slip.'))).toBe(true);
    expect(walk.step().key).toBe('truth');
    expect(errorNow(walk)).toBeLessThan(0.12);
  });

  test('one line too many and a later one too few are both mended, and the record tells what is really in the vial', () => {
    const walk = toCounting(60);
    countLine(walk, +1);
    decide(walk, 'scaleUp');
    countLine(walk);
    countLine(walk, -2);
    decide(walk, 'on');
    while (walk.step().pad) countLine(walk);
    expect(walk.step().key).toBe('truth');
    walk.next();
    walk.type('name', 'Mended');
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
    while (walk.step().pad) countLine(walk);
    expect(walk.step().results![0]!.amount.value).toBe(-100);
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
    while (walk.step().pad) countLine(walk);
    expect(walk.step().key).toBe('truth');
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
    walk.next();
    walk.next();
    walk.next();
    walk.type('dropper', 'pip');
    walk.next();
    countLine(walk, +2);
    decide(walk, 'scaleUp');
    expect(asks(walk)).toMatchObject({ id: 'rhu1', wish: 6 }); // 12 : 6 is 10 : 5
  });
});
