import { describe, expect, test } from 'vitest';
import { curvePlaces } from '../../../src/ui/plot/curvePlaces';

const curves = {
  ph: { points: Array.from({ length: 24 }, (_, i) => ({ x: (i + 1) / 8, y: 5.4 - Math.log(i + 1) })), here: { x: 2.5, y: 2.9 }, line: { y: 3.2, words: 'target' } },
  active: { points: Array.from({ length: 33 }, (_, i) => ({ x: 2.5 + i / 9, y: 100 / (1 + 10 ** (2.5 + i / 9 - 4.76)) })) },
  gas: { points: Array.from({ length: 21 }, (_, i) => ({ x: 2 * i, y: 1 + i / 3 })), line: { y: 8, words: 'rating' } },
  flat: { points: [{ x: 0, y: 2 }, { x: 1, y: 2 }] },
}; // prettier-ignore

describe('a small curve', () => {
  for (const [name, numbers] of Object.entries(curves))
    for (const [room, scale] of [
      [256, 1],
      [358, 1],
      [256, 2],
      [480, 2],
    ] as const)
      // prettier-ignore
      test(`${name} has room for its numbers at ${room} px, letters ${scale} times`, () => {
        const { x, y, across, upward, decimals, letters, left, right, bottom, height, width } = curvePlaces(numbers, { room, scale }); // prettier-ignore
        const wide = (value: number, digits: number) => value.toFixed(digits).length * 0.58 * letters;
        upward.slice(1).forEach((tick, i) => expect(y(upward[i]!) - y(tick)).toBeGreaterThanOrEqual(1.2 * letters));
        across.slice(1).forEach((tick, i) => {
          const half = (wide(tick, decimals.x) + wide(across[i]!, decimals.x)) / 2;
          expect(x(tick) - x(across[i]!)).toBeGreaterThan(half + 0.3 * letters);
        });
        expect(upward.length).toBeGreaterThan(0);
        expect(Math.max(...upward.map((tick) => wide(tick, decimals.y)))).toBeLessThan(left);
        expect(Math.max(...across.map((tick) => x(tick) + wide(tick, decimals.x) / 2))).toBeLessThanOrEqual(width);
        for (const point of numbers.points) {
          expect(x(point.x)).toBeGreaterThanOrEqual(left - 1e-6);
          expect(x(point.x)).toBeLessThanOrEqual(right + 1e-6);
          expect(y(point.y)).toBeGreaterThan(0);
          expect(y(point.y)).toBeLessThan(bottom);
        }
        expect(bottom).toBeLessThan(height);
      });
});
