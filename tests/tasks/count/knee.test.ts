import { expect, test } from 'vitest';
import type { TradePoint } from '../../../src/core/plan/tradeOff';
import { kneeOf } from '../../../src/tasks/count/knee';

/** Plans of so many drops, each off by so much; from the one at `chance` on, chance in counting is larger than rounding. */
const curve = (points: readonly (readonly [drops: number, off: number])[], chance: number) =>
  points.map(([drops, objective], at) => ({ drops, objective, worth: true, recommended: at === chance }) as TradePoint);
const even = curve([[2, 0.083], [4, 0.059], [8, 0.042], [16, 0.029], [54, 0.016], [100, 0.012]], 0); // prettier-ignore

test('a plan is proposed that is as near as the vials are known, not the fewest drops that come out even', () => {
  expect(kneeOf(even, 0.045).drops).toBe(8);
  expect(kneeOf(even, 0.06).drops).toBe(4);
});

test('of vials known little, one within 10 %; of vials known well, one within 5 % where only chance is left', () => {
  expect(kneeOf(even, 0.4).drops).toBe(2);
  expect(kneeOf(even, 0.002).drops).toBe(8);
  expect(kneeOf(curve([[6, 0.3], [12, 0.06], [29, 0.03]], 2), 0.002).drops).toBe(29); // prettier-ignore
});

test('the nearest, where none is near enough', () => {
  expect(kneeOf(curve([[3, 0.5], [5, 0.2]], 1), 0.01).drops).toBe(5); // prettier-ignore
});
