import { describe, expect, test } from 'vitest';
import { chiSquaredTail, normalBound, normalTail } from '../../../src/core/number/tails';
import reference from '../../reference/ranking.json';
import { Refusal } from '../../../src/core/text/refusal';

describe('tails of the usual distributions', () => {
  test('chi-squared at its 5 % limits, 1 to 9 degrees of freedom', () => {
    for (const [samples, limit] of Object.entries(reference.chiSquaredLimits.values))
      expect(chiSquaredTail(limit, Number(samples) - 1)).toBeCloseTo(0.05, 12);
  });

  test('two degrees of freedom are a plain exponential, four its first sum', () => {
    for (const x of [1e-6, 0.5, 3, 4.1, 10, 60, 300]) {
      expect(chiSquaredTail(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 12);
      expect(chiSquaredTail(x, 4) / (Math.exp(-x / 2) * (1 + x / 2))).toBeCloseTo(1, 12);
    }
    expect(chiSquaredTail(0, 5)).toBe(1);
  });

  test('the normal bounds everyone knows: 1.959964, 2.575829, 1.644854', () => {
    expect(normalBound(0.025)).toBeCloseTo(1.959963984540054, 12);
    expect(normalBound(0.005)).toBeCloseTo(2.575829303548901, 12);
    expect(normalBound(0.95)).toBeCloseTo(-1.6448536269514722, 12);
    expect(normalTail(0)).toBe(0.5);
    expect(normalTail(-1) + normalTail(1)).toBeCloseTo(1, 14);
  });

  test('what cannot be is refused', () => {
    expect(() => chiSquaredTail(-1, 2)).toThrow('chi-squared is 0 or more, not -1');
    expect(() => chiSquaredTail(1, 0)).toThrow(Refusal);
    expect(() => normalBound(1)).toThrow(Refusal);
  });
});
