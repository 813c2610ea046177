import { beforeEach, describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/core/number/measured';
import type { Calibration } from '../../../src/records/kind/dropper';
import type { Vial } from '../../../src/records/kind/vial';
import { shelf, takeIn } from '../../../src/records/shelf';
import { count } from '../../../src/tasks/count/task';
import { startWalking, type Walker } from '../walking';
import { material, pipette, vialOf } from './countShelf';

/** At the pad of CARD, 12 drops; HEX comes after it, 8 drops. */
function atThePad(dropper = 'pip'): Walker {
  const typed = { formula: 'hand', 'pick.card': 'yes', 'pick.hex': 'yes', 'plan.card': '12', 'plan.hex': '8', dropper };
  const walk = startWalking(count, typed);
  walk.next();
  walk.tap('drops.card', 12);
  return walk;
}

/** Takes one of the offers of a step, as a touch does. */
function take(walk: Walker, words: string): void {
  const offer = walk.step().offers!.find((one) => one.words === words)!;
  for (const [key, text] of Object.entries(offer.type ?? {})) walk.type(key, text);
  walk.back(offer.go!);
}

function weigh(walk: Walker, words: string, grams: string, readability = '0.001'): void {
  take(walk, words);
  const [grossG, step] = walk.step().ask!;
  walk.type(grossG!.name, grams);
  walk.type(step!.name, readability);
}

const ended = (walk: Walker) => {
  const all = walk.keep();
  return {
    vial: all.find(({ kind }) => kind === 'vial') as Vial,
    learned: all.filter(({ kind }) => kind === 'calibration') as Calibration[],
  };
};

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('card'), material('hex'), ...pipette, vialOf('card', 0.01), vialOf('hex', 0.005)]);
});

describe('one figure after the drops', () => {
  test('of one vial is what went in of it, more surely than by counting, and a calibration of dropper and liquid', () => {
    const walk = atThePad();
    weigh(walk, 'Weigh it', '0.192');
    expect(walk.step().say).toBe('What do the ‹12 drops› of CARD 1 % w/w weigh?');
    walk.next();
    expect(walk.step().key).toBe('count.hex');
    walk.tap('drops.hex', 8);
    const { vial, learned } = ended(walk);
    expect(vial.uses[0]).toMatchObject({ id: 'card', drops: 12, massG: expect.closeTo(0.192, 3) });
    expect(vial.massG.value).toBeCloseTo(0.192 + 0.12, 3);
    expect(learned).toMatchObject([
      { dropper: 'pip', liquid: { id: 'ethanol-96' }, readings: [{ drops: 12, massG: 0.192 }] },
    ]);
    expect(learned[0]!.mgPerDrop.value).toBeCloseTo(16, 1);
    expect(standardUncertainty(learned[0]!.mgPerDrop)).toBeGreaterThan(0.01 * 16); // one weighing shows no scatter
  });

  test('of all of it corrects every vial alike, and leaves the proportions', () => {
    const plain = atThePad();
    plain.next();
    plain.tap('drops.hex', 8);
    const walk = atThePad();
    walk.next();
    walk.tap('drops.hex', 8);
    weigh(walk, 'Weigh all of it', '0.315');
    const [before, { vial, learned }] = [ended(plain).vial, ended(walk)];
    expect(vial.massG.value).toBeCloseTo(0.315, 3);
    vial.contents.forEach(({ strength }, i) =>
      expect(strength.value).toBeCloseTo(before.contents[i]!.strength.value, 9),
    );
    expect(learned[0]!.readings).toEqual([{ drops: 20, massG: 0.315 }]);
  });

  test('is not taken where the scale is too coarse to know more; it is still in the calibration', () => {
    const walk = atThePad();
    weigh(walk, 'Weigh it', '0.2', '0.1');
    walk.next();
    walk.tap('drops.hex', 8);
    const { vial, learned } = ended(walk);
    expect(vial.uses[0]!.massG).toBeCloseTo(0.18, 12);
    expect(learned).toHaveLength(1);
  });

  test('teaches nothing of a dropper without a name, nor of two liquids weighed together', () => {
    takeIn([vialOf('hex', 0.1)]); // no drop of ethanol any more: its own liquid
    const nameless = atThePad('typical');
    weigh(nameless, 'Weigh it', '0.192');
    nameless.next();
    nameless.tap('drops.hex', 8);
    expect(ended(nameless).learned).toEqual([]);
    const walk = atThePad();
    walk.next();
    walk.tap('drops.hex', 8);
    weigh(walk, 'Weigh all of it', '0.315');
    expect(ended(walk).learned).toEqual([]);
  });

  test('counted on after the scale, the first drops stay weighed and the others are counted', () => {
    const walk = atThePad();
    weigh(walk, 'Weigh it', '0.192');
    walk.back('count.card');
    walk.tap('drops.card', 1);
    expect(walk.keys()).not.toContain('weigh.card');
    walk.type('slip.count.card', 'accept|hex=8');
    walk.back('count.hex');
    walk.tap('drops.hex', 8);
    expect(ended(walk).vial.uses[0]!.massG).toBeCloseTo(0.192 + 0.015, 3);
  });
});
