import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { curveScale, placeWords, type CurvePoint, type CurveScale } from '../../../src/tasks/count/curve';

const curves = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 12 }), fc.double({ min: 0.3, max: 0.95, noNaN: true })), {
    minLength: 1,
    maxLength: 14,
  })
  .map((steps) => {
    const points: CurvePoint[] = [];
    for (const [more, factor] of steps) {
      const last = points.at(-1) ?? { drops: 0, objective: 1 };
      points.push({ drops: last.drops + more, objective: last.objective * factor });
    }
    return points;
  });
const rooms = fc.constantFrom(
  { room: 288, scale: 1 },
  { room: 358, scale: 1 },
  { room: 512, scale: 1 },
  { room: 326, scale: 2 },
);

/** The stairs as upright and level pieces. */
function pieces(all: readonly CurvePoint[], { x, y, right }: CurveScale): [number, number, number, number][] {
  return all.flatMap(({ drops, objective }, i) => {
    const next = all[i + 1];
    const level: [number, number, number, number] = [
      x(drops),
      y(objective),
      next ? x(next.drops) : right,
      y(objective),
    ];
    return next ? [level, [x(next.drops), y(objective), x(next.drops), y(next.objective)]] : [level];
  });
}

describe('the words of the chosen plan stand where nothing else is', () => {
  test('neither on the stairs nor on a point, and inside the picture', () => {
    fc.assert(
      fc.property(curves, rooms, fc.nat(), (all, room, which) => {
        const scale = curveScale(all, room);
        const point = all[which % all.length]!;
        const words = placeWords(['94 drops, recommended', '94 drops'], point, all, scale);
        const [left, right, top, foot] = [words.x, words.x + words.width, words.y - scale.letters, words.y + 3];
        expect(left).toBeGreaterThanOrEqual(scale.left);
        expect(right).toBeLessThanOrEqual(scale.right + 1e-9);
        expect(top).toBeGreaterThanOrEqual(0);
        for (const [x1, y1, x2, y2] of pieces(all, scale))
          expect(x1 < right && x2 > left && y1 < foot && y2 > top).toBe(false);
        for (const each of all) {
          const r = each === point ? 7 : 4;
          const [x, y] = [scale.x(each.drops), scale.y(each.objective)];
          expect(x + r > left && x - r < right && y - r < foot && y + r > top).toBe(false);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('numbers of the axes never touch', () => {
    fc.assert(
      fc.property(curves, rooms, (all, room) => {
        const { errors, ticks, x, y, letters } = curveScale(all, room);
        errors.slice(1).forEach((error, i) => expect(y(error) - y(errors[i]!)).toBeGreaterThanOrEqual(letters));
        ticks.slice(1).forEach((drops, i) => expect(x(drops) - x(ticks[i]!)).toBeGreaterThanOrEqual(2 * letters));
      }),
    );
  });
});
