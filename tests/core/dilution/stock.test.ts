import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exact, measured, standardUncertainty } from '../../../src/core/number/measured';
import { amountLeft, isLow } from '../../../src/core/dilution/stock';

const vial = { id: 'v', full: exact(8), takings: [], weighed: [] };

describe('what is left in a vial', () => {
  test('is what was made, less what was taken', () => {
    const takings = [
      { at: '2026-03-02T10:00:00Z', amount: 0.5 },
      { at: '2026-03-03T10:00:00Z', amount: 1 },
    ];
    expect(amountLeft({ ...vial, takings }).value).toBeCloseTo(6.5, 12);
  });

  test('is as doubtful as the takings, 5 % of them together', () => {
    const takings = [1, 2, 3].map((day) => ({ at: `2026-03-0${day + 1}T00:00:00Z`, amount: 1 }));
    expect(standardUncertainty(amountLeft({ ...vial, takings }))).toBeCloseTo(0.15, 12);
  });

  test('starts afresh from the last weighing, with the doubt of that weighing', () => {
    const takings = [
      { at: '2026-03-02T10:00:00Z', amount: 3 },
      { at: '2026-03-05T10:00:00Z', amount: 1 },
    ];
    const weighed = [
      { at: '2026-03-04T10:00:00Z', left: measured(4.2, 0.01, { id: 'scale', words: 'scale' }) },
      { at: '2026-03-03T10:00:00Z', left: exact(4.9) },
    ];
    const left = amountLeft({ ...vial, takings, weighed });
    expect(left.value).toBeCloseTo(3.2, 12);
    expect(standardUncertainty(left)).toBeCloseTo(Math.hypot(0.01, 0.05), 12);
  });

  test('is never less than nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 50, noNaN: true }), (massG) => {
        const { value } = amountLeft({ ...vial, takings: [{ at: '2026-04-01T00:00:00Z', amount: massG }] });
        expect(value).toBeCloseTo(Math.max(0, 8 - massG), 9);
      }),
    );
  });

  test('is low below 15 %, or at what the person set', () => {
    expect(isLow(1.2, 8)).toBe(false);
    expect(isLow(1.19, 8)).toBe(true);
    expect(isLow(2, 8, 2)).toBe(true);
    expect(isLow(0.1, 8, 0)).toBe(false);
  });
});
