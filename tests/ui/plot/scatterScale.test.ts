import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { scatterScale } from '../../../src/ui/plot/scatterScale';

const numbers = fc
  .array(
    fc.record({
      value: fc.double({ min: 5, max: 60, noNaN: true }),
      uncertainty: fc.double({ min: 0, max: 5, noNaN: true }),
    }),
    {
      minLength: 1,
      maxLength: 25,
    },
  )
  .chain((points) =>
    fc.record({
      points: fc.constantFrom('Oct 13, 2026', '7').map((name) => points.map((point) => ({ ...point, name }))),
      band: fc.record({
        value: fc.constant(points[0]!.value),
        uncertainty: fc.double({ min: 0, max: 3, noNaN: true }),
      }),
    }),
  );
const rooms = fc.constantFrom({ room: 288, scale: 1 }, { room: 512, scale: 1 }, { room: 326, scale: 2 });

test('every point, its ± and the band lie inside the picture, right of the numbers', () => {
  fc.assert(
    fc.property(numbers, rooms, (all, room) => {
      const { x, y, left, right, height, letters } = scatterScale(all, room);
      for (const { value, uncertainty } of [...all.points, all.band]) {
        expect(y(value + uncertainty)).toBeGreaterThanOrEqual(6);
        expect(y(value - uncertainty)).toBeLessThanOrEqual(height - 1.8 * letters);
      }
      all.points.forEach((_, i) => expect(x(i) > left && x(i) < right).toBe(true));
    }),
  );
});

test('names under the points never touch, and the newest has one', () => {
  fc.assert(
    fc.property(numbers, rooms, (all, room) => {
      const { x, named, letters } = scatterScale(all, room);
      expect(named[0]).toBe(all.points.length - 1);
      const wide = 0.58 * letters * all.points[0]!.name.length;
      named.slice(1).forEach((place, i) => expect(x(named[i]!) - x(place)).toBeGreaterThanOrEqual(wide));
    }),
  );
});

test('the axis has two to five round numbers, written with the decimals they need', () => {
  fc.assert(
    fc.property(numbers, rooms, (all, room) => {
      const { ticks, decimals, y, height } = scatterScale(all, room);
      expect(ticks.length).toBeGreaterThanOrEqual(2);
      expect(ticks.length).toBeLessThanOrEqual(6);
      for (const tick of ticks) {
        expect(Math.abs(Number(tick.toFixed(decimals)) - tick)).toBeLessThan(1e-9);
        expect(y(tick) > 0 && y(tick) < height).toBe(true);
      }
    }),
  );
});
