import { beforeEach, describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/core/number/measured';
import type { Formula } from '../../../src/records/kind/formula';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { count } from '../../../src/tasks/count/task';
import { material, pipette, vialOf } from './countShelf';
import { startWalking, type Walker } from '../walking';

/** 12 drops of CARD at 1 % and 8 of HEX at 0.5 %, typed by hand. */
function byHand({ card, hex } = { card: '12', hex: '8' }): Walker {
  const walk = startWalking(count);
  walk.type('formula', 'hand');
  walk.type('pick.card', 'yes');
  walk.type('pick.hex', 'yes');
  walk.type('plan.card', card);
  walk.type('plan.hex', hex);
  walk.type('dropper', 'pip');
  walk.next();
  return walk;
}

/** All drops as planned. */
function counted(walk = byHand(), { card, hex } = { card: 12, hex: 8 }): Walker {
  walk.tap('drops.card', card);
  walk.next();
  walk.tap('drops.hex', hex);
  return walk;
}

const trialIn = (walk: Walker) => walk.keep().find((record) => record.kind === 'vial') as Vial;

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
    expect(walk.step().more).toContain('The last one: then cap it and turn it over ten times.');
    expect(() => walk.next()).toThrow('this was the last step');
  });

  test('it is named by itself, the next of its name and code that no other has', () => {
    const trial = trialIn(counted());
    expect([trial.code, trial.name]).toEqual(['T1', 'CARD + HEX, trial 1']);
    takeIn([trial]);
    const next = trialIn(counted());
    expect([next.code, next.name]).toEqual(['T2', 'CARD + HEX, trial 2']);
  });

  test('the vial of last time is taken again, also where it was typed with a comma', () => {
    takeIn([{ ...trialIn(counted()), done: { from: '', to: '', asked: { formula: 'hand', size: '12,5' } } } as Vial]);
    const walk = startWalking(count);
    walk.type('formula', 'hand');
    walk.type('pick.card', 'yes');
    walk.type('plan.card', '2');
    expect(walk.step().ask!.find(({ name }) => name === 'size')!.preset).toBe('12,5');
  });

  test('a run of the first version keeps the name, code and vial that were typed', () => {
    const walk = startWalking(count, { name: 'Orchard', code: 'ORCH', size: '15' });
    walk.type('formula', 'hand');
    walk.type('pick.card', 'yes');
    walk.type('plan.card', '2');
    walk.next();
    walk.tap('drops.card', 2);
    expect(trialIn(walk)).toMatchObject({ name: 'Orchard', code: 'ORCH', sizeMl: 15 });
  });

  test('the true strengths are those computed by hand, and a calibration that all drops share cancels in them', () => {
    const [card, hex] = trialIn(counted()).contents;
    // 12 · 15 mg · 1 % = 1.8 mg and 8 · 15 mg · 0.5 % = 0.6 mg, in 300 mg
    expect(card!.strength.value).toBeCloseTo(0.006, 12);
    expect(hex!.strength.value).toBeCloseTo(0.002, 12);
    // relative to it: √((8/20)²·(0.06²/12 + 0.06²/8) + 0.01²): drops that scatter, its own strength; no 2 % of the calibration
    const u = 0.006 * Math.sqrt(0.4 ** 2 * (0.06 ** 2 / 12 + 0.06 ** 2 / 8) + 0.01 ** 2);
    expect(standardUncertainty(card!.strength)).toBeCloseTo(u, 9);
  });

  test('a trial vial is kept with its contents, what it took in grams, and the formula that was typed', () => {
    const [vial, formula] = counted().keep() as [Vial, Formula];
    expect(vial).toMatchObject({ kind: 'vial', code: 'T1', grade: 'fit for drinks', sizeMl: 5 });
    expect(formula.name).toBe('CARD + HEX');
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
    expect(trialIn(counted()).grade).toBe('smell only');
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
    const [card, hex] = trialIn(walk).contents.map(({ strength }) => strength.value);
    expect(card! / (card! + hex!)).toBeCloseTo(1.95 / 2.55, 10);
  });

  test('one drop is wanted and three fell: no word of it stands in the wrong number', () => {
    const walk = byHand({ card: '1', hex: '1' });
    expect(walk.step().say).toBe('Take ‹CARD 1 % w/w›. Count ‹1 drop›.');
    expect(walk.step().pad!.live(0)).toBe('of 1 drop');
    expect(walk.step().pad!.live(3)).toMatch(/^2 too many: 1 planned · /);
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
    const asked = walk.step().ask!.map(({ name }) => name);
    expect(asked.filter((name) => name.startsWith('plan.'))).toEqual(['plan.hex', 'plan.card']);
  });

  test('no vial picked, half a drop or no drop are each told in one sentence', () => {
    const walk = startWalking(count, { formula: 'hand' });
    expect(() => walk.next()).toThrow('Pick at least one vial.');
    walk.type('pick.card', 'yes');
    expect(() => walk.next()).toThrow('still empty');
    walk.type('plan.card', '2,5');
    expect(() => walk.next()).toThrow('whole drops only');
    walk.type('plan.card', '0');
    expect(() => walk.next()).toThrow('at least 1, not');
  });

  test('an ending without a drop is refused', () => {
    const walk = startWalking(count, { formula: 'hand', 'pick.card': 'yes', 'plan.card': '3' });
    walk.next();
    walk.next();
    expect(walk.step().key).toBe('slip.count.card');
    expect(() => walk.keep()).toThrow();
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
