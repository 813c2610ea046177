import { describe, expect, test } from 'vitest';
import { drinkFor, pourFor, strengthFor } from '../../../src/core/drink/doseSolved';
import { exact, measured, standardUncertainty } from '../../../src/core/number/measured';
import rows from '../../reference/dosage.json' with { type: 'json' };

const about = (value: number, u: number, id: string) => measured(value, u, { id, words: id });
const worked = rows.rows.find(({ id }) => id === 'd7')!; // 12 drops of 22 mg of 1.0 % in 100 g with them

describe('the level in a drink, solved for the others', () => {
  const [pour, strength, drink] = [exact(0.264), exact(0.01), exact(100 - 0.264)];

  test('gives the worked example again from each side', () => {
    expect(pourFor(worked.value, { strength, drink }).value).toBeCloseTo(0.264, 12);
    expect(strengthFor(worked.value, { pour, drink }).value).toBeCloseTo(0.01, 12);
    expect(drinkFor(worked.value, { pour, strength }).value).toBeCloseTo(99.736, 9);
  });

  test('carries each ± by its sensitivity, as small changes show', () => {
    const solved = [
      [(w: number, m: number) => pourFor(26, { strength: exact(w), drink: exact(m) }).value, 0.01, 100],
      [(m: number, drinkG: number) => strengthFor(26, { pour: exact(m), drink: exact(drinkG) }).value, 0.26, 100],
      [(m: number, w: number) => drinkFor(26, { pour: exact(m), strength: exact(w) }).value, 0.26, 0.01],
    ] as const;
    const carried = [
      (u: readonly [number, number]) => pourFor(26, { strength: about(0.01, u[0], 'a'), drink: about(100, u[1], 'b') }),
      (u: readonly [number, number]) => strengthFor(26, { pour: about(0.26, u[0], 'a'), drink: about(100, u[1], 'b') }),
      (u: readonly [number, number]) =>
        drinkFor(26, { pour: about(0.26, u[0], 'a'), strength: about(0.01, u[1], 'b') }),
    ];
    solved.forEach(([f, x, y], i) => {
      const [dx, dy] = [1e-5 * x, 1e-5 * y];
      const [bx, by] = [(f(x + dx, y) - f(x - dx, y)) / 2, (f(x, y + dy) - f(x, y - dy)) / 2];
      expect(standardUncertainty(carried[i]!([dx, 0])) / Math.abs(bx)).toBeCloseTo(1, 5);
      expect(standardUncertainty(carried[i]!([0, dy])) / Math.abs(by)).toBeCloseTo(1, 5);
    });
  });

  test('refuses what no amount can do', () => {
    expect(() => pourFor(10_000, { strength, drink })).toThrow('cannot be made from it');
    expect(() => drinkFor(20_000, { pour, strength })).toThrow('cannot be made from it');
    expect(() => strengthFor(5000, { pour: exact(0.1), drink: exact(100) })).toThrow('even the neat material');
    expect(() => strengthFor(5, { pour: exact(0), drink })).toThrow('nothing is poured');
    expect(() => pourFor(0, { strength, drink })).toThrow('more than 0 mg/kg');
  });
});
