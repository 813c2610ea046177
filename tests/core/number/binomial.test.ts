import { describe, expect, test } from 'vitest';
import { atLeast, atMost, clopperPearson } from '../../../src/core/number/binomial';
import { Refusal } from '../../../src/core/text/refusal';

/** P(X ≥ x) as an exact fraction, for chance 1/`part`. */
function exactTail(x: number, n: number, part: number): number {
  let [choose, sum] = [1n, 0n];
  for (let k = 0; k <= n; k++) {
    if (k >= x) sum += choose * BigInt(part - 1) ** BigInt(n - k);
    choose = (choose * BigInt(n - k)) / BigInt(k + 1);
  }
  const scale = 10n ** 30n;
  return Number((sum * scale) / BigInt(part) ** BigInt(n)) / 1e30;
}

describe('right answers by chance', () => {
  test('every tail up to 60 tries is the exact fraction to 12 digits', () => {
    let worst = 0;
    for (const part of [2, 3])
      for (let n = 1; n <= 60; n++)
        for (let x = 0; x <= n; x++) {
          const exact = exactTail(x, n, part);
          if (exact > 1e-12) worst = Math.max(worst, Math.abs(atLeast(x, n, 1 / part) / exact - 1));
        }
    console.info(`binomial tails against exact fractions, n = 1…60, 3780 cells: worst ${worst.toExponential(1)}`);
    expect(worst).toBeLessThan(1e-12);
  });

  test('9 of 16 triangles is just significant: 2150721/43046721 = 0.04996', () => {
    expect(atLeast(9, 16, 1 / 3)).toBeCloseTo(2150721 / 43046721, 14);
    expect(atLeast(9, 16, 1 / 3)).toBeLessThan(0.05);
  });

  test('at least x and at most x − 1 make the whole', () => {
    for (const n of [1, 7, 12, 100, 1999])
      for (const p of [0.001, 1 / 3, 0.5, 0.9])
        for (const x of [0, 1, Math.round(n * p), n, n + 1])
          expect(atLeast(x, n, p) + atMost(x - 1, n, p)).toBeCloseTo(1, 10);
  });

  test('certain and impossible answers', () => {
    expect(atLeast(5, 5, 1)).toBe(1);
    expect(atLeast(1, 5, 0)).toBe(0);
    expect(atLeast(0, 0, 0.5)).toBe(1);
  });

  test('half a try, and a chance of 2, are refused', () => {
    expect(() => atLeast(1, 2.5, 0.5)).toThrow(Refusal);
    expect(() => atLeast(1, 2, 2)).toThrow('a chance lies between 0 and 1, not 2');
    expect(() => atLeast(1, 2001, 0.5)).toThrow(Refusal);
  });
});

describe('the interval for a share', () => {
  test('10 of 15 right gives 0.3838037 to 0.8817589 at 95 % (sensR 1.5-3, printed)', () => {
    const { low, high } = clopperPearson(10, 15, 0.95);
    expect(low).toBeCloseTo(0.3838037, 7);
    expect(high).toBeCloseTo(0.8817589, 7);
  });

  test('none and all right have the closed forms 1 − (α/2)^(1/n) and (α/2)^(1/n)', () => {
    expect(clopperPearson(0, 12, 0.95)).toEqual({ low: 0, high: expect.closeTo(1 - 0.025 ** (1 / 12), 12) });
    expect(clopperPearson(12, 12, 0.95)).toEqual({ low: expect.closeTo(0.025 ** (1 / 12), 12), high: 1 });
  });

  test('it covers the true share at least as often as it says, worked out exactly for 12 tries', () => {
    for (let share = 0.02; share < 1; share += 0.02) {
      let covered = 0;
      for (let x = 0; x <= 12; x++) {
        const { low, high } = clopperPearson(x, 12, 0.9);
        if (low <= share && share <= high) covered += atLeast(x, 12, share) - atLeast(x + 1, 12, share);
      }
      expect(covered).toBeGreaterThanOrEqual(0.9);
    }
  });

  test('13 right of 12 cannot be', () => {
    expect(() => clopperPearson(13, 12, 0.95)).toThrow('13 right of 12 tries cannot be');
    expect(() => clopperPearson(3, 12, 1)).toThrow(Refusal);
  });
});
