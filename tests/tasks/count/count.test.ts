import { beforeEach, describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/core/number/measured';
import type { Formula } from '../../../src/records/kind/formula';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { count } from '../../../src/tasks/count/task';
import { material, pipette, vialOf } from './countShelf';
import { asLeft, startWalking, type Walker } from '../walking';

/** 12 drops of CARD at 1 % and 8 of HEX at 0.5 %, typed by hand. */
function byHand({ card, hex } = { card: '12', hex: '8' }): Walker {
  const walk = startWalking(count);
  walk.type('formula', 'hand');
  walk.next();
  walk.type('pick.card', 'yes');
  walk.type('pick.hex', 'yes');
  walk.next();
  walk.type('plan.card', card);
  walk.type('plan.hex', hex);
  walk.next();
  walk.type('dropper', 'pip');
  walk.next();
  return walk;
}

function named(walk: Walker): Walker {
  walk.next(); // from what is in it
  walk.type('name', 'Orchard');
  walk.type('code', 'orch');
  return walk;
}

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('card'), material('hex'), ...pipette, vialOf('card', 0.01), vialOf('hex', 0.005)]);
});

describe('vials and drops typed by hand', () => {
  test('one vial after the other is taken, in the order of picking, and what is in it comes at the end', () => {
    const walk = byHand();
    expect(walk.step().say).toBe('Take ‹CARD 1 % w/w›. Count ‹12 drops›.');
    walk.tap('drops.card', 12);
    expect(walk.step().pad!.live(12)).toContain('of 12 drops');
    walk.next();
    expect(walk.step().say).toBe('Take ‹HEX 0.5 % w/w›. Count ‹8 drops›.');
    walk.tap('drops.hex', 8);
    walk.next();
    expect(walk.step().key).toBe('truth');
  });

  test('the run tells the code that was on the vial, not the one that is free when it is looked at', () => {
    const walk = byHand();
    walk.tap('drops.card', 12);
    walk.next();
    walk.tap('drops.hex', 8);
    walk.next();
    walk.next();
    walk.type('name', 'Orchard');
    expect(() => walk.next()).toThrow('this was the last step');
    const left = asLeft(count, walk.state());
    const trial = walk.keep().find((record) => record.kind === 'vial') as Vial;
    expect(trial.code).toBe('T1');
    takeIn([trial]);
    const free = walk.step().ask!.find(({ name }) => name === 'code')!.preset;
    expect([free, left.presets['code']]).toEqual(['T2', 'T1']);
  });

  test('the true shares are those computed by hand, and a calibration that all drops share cancels in them', () => {
    const walk = byHand();
    walk.tap('drops.card', 12);
    walk.next();
    walk.tap('drops.hex', 8);
    walk.next();
    const [card, hex] = walk.step().results!;
    // 12 · 15 mg · 1 % = 1.8 mg and 8 · 15 mg · 0.5 % = 0.6 mg
    expect(card!.amount.value).toBeCloseTo(75, 10);
    expect(hex!.amount.value).toBeCloseTo(25, 10);
    // s(1 − s) · √(0.06²/12 + 0.06²/8 + 0.01² + 0.01²): drops that scatter, and two strengths; no 2 % of the calibration
    const u = 100 * 0.75 * 0.25 * Math.sqrt(0.06 ** 2 / 12 + 0.06 ** 2 / 8 + 2 * 0.01 ** 2);
    expect(standardUncertainty(card!.amount)).toBeCloseTo(u, 10);
    expect(standardUncertainty(hex!.amount)).toBeCloseTo(u, 10);
    // 2.4 mg in 300 mg of liquid
    expect(walk.step().results!.at(-1)!.amount.value).toBeCloseTo(0.8, 10);
  });

  test('a trial vial is kept with its contents, what it took in grams, and the formula that was typed', () => {
    const walk = byHand();
    walk.tap('drops.card', 12);
    walk.next();
    walk.tap('drops.hex', 8);
    walk.next();
    const [vial, formula] = named(walk).keep() as [Vial, Formula];
    expect(vial).toMatchObject({ kind: 'vial', code: 'ORCH', name: 'Orchard', grade: 'fit for drinks' });
    expect(vial.contents.map(({ material, strength }) => [material, strength.value])).toEqual([
      ['card', expect.closeTo(0.006, 12)],
      ['hex', expect.closeTo(0.002, 12)],
    ]);
    const known = { how: 'counted', supplier: 'Saltmarsh', lot: '1', dropper: { id: 'pip', name: 'Pipette 1' } };
    expect(vial.uses).toMatchObject([
      { ...known, id: 'card', code: 'CARD', strength: '1 % w/w', drops: 12, massG: expect.closeTo(0.18, 12) },
      { ...known, id: 'hex', code: 'HEX', strength: '0.5 % w/w', drops: 8, massG: expect.closeTo(0.12, 12) },
    ]);
    expect(vial.useBy).toBe('2026-11-01'); // the earliest of its parts
    expect(vial.from).toEqual(expect.arrayContaining(['card', 'hex', 'pip', formula.id]));
    expect(formula.lines.map(({ share }) => share)).toEqual([expect.closeTo(1.8, 12), expect.closeTo(0.6, 12)]);
  });

  test('one smell-only part makes the whole trial smell only', () => {
    takeIn([vialOf('hex', 0.005, { grade: 'smell only' })]);
    const walk = byHand();
    walk.tap('drops.card', 12);
    walk.next();
    walk.tap('drops.hex', 8);
    walk.next();
    expect((named(walk).keep()[0] as Vial).grade).toBe('smell only');
  });

  test('a drop too many is told, and left as it is goes into the record', () => {
    const walk = byHand();
    walk.tap('drops.card', 13);
    expect(walk.step().pad!.live(13)).toContain('1 too many');
    walk.next();
    expect(walk.step().say).toContain('1 too many');
    walk.type(walk.step().ask![0]!.name, walk.step().ask![0]!.options!.at(-1)!.value);
    walk.next();
    expect(walk.step().key).toBe('count.hex');
    walk.tap('drops.hex', 8);
    walk.next();
    expect(walk.step().results![0]!.amount.value).toBeCloseTo((100 * 1.95) / 2.55, 10);
  });

  test('one drop is wanted and three fell: no word of it stands in the wrong number', () => {
    const walk = byHand({ card: '1', hex: '1' });
    expect(walk.step().say).toBe('Take ‹CARD 1 % w/w›. Count ‹1 drop›.');
    expect(walk.step().pad!.live(0)).toBe('of 1 drop');
    expect(walk.step().pad!.live(3)).toMatch(/^2 too many: 1 wanted · /);
    walk.tap('drops.card', 3);
    walk.next();
    expect(walk.step().say).toBe('‹3 drops› of CARD 1 % w/w, not 1: ‹2 too many›.');
  });

  test('finished too early, counting goes on where it stopped', () => {
    const walk = byHand();
    walk.tap('drops.card', 3);
    walk.next();
    const [question] = walk.step().ask!;
    expect(question!.options![0]!.label).toBe('Count on to 12');
    walk.type(question!.name, 'on');
    walk.next();
    expect(walk.step().key).toBe('count.card');
    walk.tap('drops.card', 9);
    walk.next();
    expect(walk.step().key).toBe('count.hex');
  });

  test('vials can be handed over by another task', () => {
    const walk = startWalking(count, { vials: 'hex card' });
    walk.next();
    walk.next();
    expect(walk.step().ask!.map(({ name }) => name)).toEqual(['plan.hex', 'plan.card']);
  });

  test('no vial picked, half a drop or no drop are each told in one sentence', () => {
    const walk = startWalking(count, { formula: 'hand' });
    walk.next();
    expect(() => walk.next()).toThrow('Pick at least one vial.');
    walk.type('pick.card', 'yes');
    walk.next();
    expect(() => walk.next()).toThrow('still empty');
    walk.type('plan.card', '2,5');
    expect(() => walk.next()).toThrow('whole drops only');
    walk.type('plan.card', '0');
    expect(() => walk.next()).toThrow('at least 1, not');
  });

  test('with nothing to count of, Dilute is offered', () => {
    shelf.records.value = new Map();
    const walk = startWalking(count);
    expect(walk.step().offers![0]!.start!.task).toBe('dilute');
    expect(() => walk.next()).toThrow('nothing to count');
  });

  test('what earlier trials took is no longer in the vial', () => {
    const took = { ...vialOf('old', 0.01), uses: [{ id: 'card', massG: 9.9 }] };
    takeIn([newRecord('vial', took)]);
    const walk = byHand();
    expect(walk.step().more!.join(' ')).toContain('only 6 drops are left'); // 0.1 g in drops of 15 mg
  });
});
