import { beforeEach, describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../src/core/number/measured';
import { newRecord, takeIn } from '../../src/records/shelf';
import type { Scale } from '../../src/records/kind/scale';
import { capacityOf, overCapacity, repeatabilityOf, usualStep, weighedNet } from '../../src/workshop/scales';
import { lostWhileCounting, weighingAdvice } from '../../src/workshop/weighingAdvice';

const source = { id: 'w', words: 'weighing' };
const pocket = (coinG: number[] = []): Scale =>
  newRecord('scale', { name: 'Pocket', readabilityG: 0.01, capacityG: 200, ...(coinG.length > 0 ? { coinG } : {}) });
const kitchen = newRecord('scale', { name: 'Kitchen', readabilityG: 1, capacityG: 5000 });
const u = (readabilityG: number) => standardUncertainty(weighedNet({ grossG: 10, tareG: 0, readabilityG }, source));

let shelved: Scale[] = [];

/** Exactly these scales are on the Shelf. */
function onShelf(scales: Scale[]): void {
  takeIn(shelved.map((one) => ({ ...one, archived: '2026-05-04' })));
  takeIn((shelved = scales));
}

beforeEach(() => onShelf([]));

describe('a scale', () => {
  test('of which nothing is known is in doubt by one step', () => {
    expect(u(0.01)).toBeCloseTo(0.01, 12);
    onShelf([pocket()]);
    expect(u(0.01)).toBeCloseTo(0.01, 12);
  });

  test('that showed a coin the same three times is known to its step; one that scattered is worse than that', () => {
    onShelf([pocket([3.06, 3.06, 3.06])]);
    expect(u(0.01)).toBeCloseTo(0.01 / Math.sqrt(6), 12);
    const scattered = pocket([3.05, 3.06, 3.07]);
    onShelf([scattered]);
    const widened = (0.01 * 4.302653) / 2; // s = 0.01 g; t(0.975; 2) = 4.302653, GUM table G.2
    expect(repeatabilityOf(scattered)).toBeCloseTo(widened, 7);
    expect(u(0.01)).toBeCloseTo(Math.hypot(0.01 / Math.sqrt(6), widened), 7);
    expect(u(0.001)).toBeCloseTo(0.001, 12); // another scale
  });

  test('the finest one is what a task begins with', () => {
    expect(usualStep()).toBe('0.01');
    onShelf([kitchen]);
    expect(usualStep()).toBe('1');
    onShelf([kitchen, pocket()]);
    expect(usualStep()).toBe('0.01');
  });

  test('hands over what it cannot carry, or it is split', () => {
    expect([capacityOf(0.01), overCapacity(300, 0.01)]).toEqual([Infinity, '']);
    onShelf([pocket()]);
    expect(overCapacity(200, 0.01)).toBe('');
    expect(overCapacity(450, 0.01)).toBe('This scale carries 200 g: weigh it in 3 parts and add them up.');
    onShelf([pocket(), kitchen]);
    expect(overCapacity(450, 0.01)).toBe(
      'This scale carries 200 g: take Kitchen, or weigh it in 3 parts and add them up.',
    );
  });
});

describe('before drops are counted on a scale', () => {
  const ethanol = { liquid: 'ethanol-96', drops: 20, mgPerDrop: 15.4 };

  test('ethanol dries off by 1 to 3 % by the film model, other solvents by nothing that matters', () => {
    expect(lostWhileCounting(ethanol)).toBeGreaterThan(0.01);
    expect(lostWhileCounting(ethanol)).toBeLessThan(0.03);
    expect(lostWhileCounting({ ...ethanol, liquid: 'propylene-glycol' })).toBeLessThan(0.0005);
    expect(lostWhileCounting({ ...ethanol, liquid: 'a material' })).toBe(0);
  });

  test('one line each is said where it matters', () => {
    expect(weighingAdvice({ ...ethanol, readabilityG: 0.01 })).toHaveLength(2);
    expect(weighingAdvice({ ...ethanol, readabilityG: 0.001 })).toEqual([expect.stringMatching(/^Narrow vial/)]);
    expect(weighingAdvice({ ...ethanol, liquid: 'water', mgPerDrop: 50, readabilityG: 0.01 })).toEqual([]);
  });
});
