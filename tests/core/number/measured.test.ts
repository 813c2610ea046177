import { describe, expect, test } from 'vitest';
import {
  budget,
  exact,
  measured,
  minus,
  over,
  plus,
  standardUncertainty,
  times,
} from '../../../src/core/number/measured';

const a = measured(2, 0.1, { id: 'a', words: 'a' });
const b = measured(3, 0.2, { id: 'b', words: 'b' });

describe('numbers with their doubt', () => {
  test('independent sources add in squares (GUM 5.1.2)', () => {
    expect(standardUncertainty(plus(a, b))).toBeCloseTo(Math.hypot(0.1, 0.2), 12);
    expect(standardUncertainty(times(a, b))).toBeCloseTo(Math.hypot(3 * 0.1, 2 * 0.2), 12);
  });

  test('the same source twice adds linearly, and a ratio of equals has no doubt (GUM 5.2.2)', () => {
    expect(standardUncertainty(plus(a, a))).toBeCloseTo(0.2, 12);
    expect(standardUncertainty(over(a, a))).toBeCloseTo(0, 12);
    expect(standardUncertainty(minus(a, a))).toBe(0);
  });

  test('a budget names its sources, largest first, and the shares add to one', () => {
    const lines = budget(plus(a, b, exact(1)));
    expect(lines.map((line) => line.id)).toEqual(['b', 'a']);
    expect(lines.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 12);
  });

  test('a negative uncertainty is refused', () => {
    expect(() => measured(1, -1, { id: 'x', words: 'x' })).toThrow('zero or more');
  });
});
