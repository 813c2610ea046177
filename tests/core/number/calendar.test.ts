import { describe, expect, test } from 'vitest';
import { daysBetween, monthsLater } from '../../../src/core/number/calendar';

describe('days', () => {
  test('a month after the 31st is the last day of a shorter month', () => {
    expect(monthsLater('2026-01-31', 1)).toBe('2026-02-28');
    expect(monthsLater('2028-01-31', 1)).toBe('2028-02-29');
    expect(monthsLater('2026-11-30', 3)).toBe('2027-02-28');
    expect(monthsLater('2026-03-15', -3)).toBe('2025-12-15');
  });

  test('are counted over months, leap days and summer time', () => {
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2026-03-30', '2026-03-28')).toBe(-2);
  });

  test('what is no day gets a sentence', () => {
    for (const text of ['soon', '2026-02-30', '0001-01-01', '2026-13-01', '2026-1-1'])
      expect(() => monthsLater(text, 1)).toThrow(`“${text}” is not a day`);
  });
});
