import { afterEach, describe, expect, test, vi } from 'vitest';
import { measured } from '../../src/core/number/measured';

/** Reads format.ts as a browser of that language would. */
async function inLanguage(language: string) {
  vi.resetModules();
  vi.stubGlobal('document', {});
  vi.stubGlobal('navigator', { language });
  return import('../../src/ui/format');
}

afterEach(() => vi.unstubAllGlobals());

describe('numbers as the phone writes them', () => {
  test('German has a comma, English a point', async () => {
    const german = await inLanguage('de-DE');
    expect(german.formatPlain(1234.5)).toBe('1235');
    expect(german.formatPlain(-0.25)).toBe('−0,25');
    expect(german.formatFixed(1.5, 2)).toBe('1,50');
    expect(german.measuredText(measured(1.04, 0.055, { id: 'x', words: 'x' }), '%')).toBe('1,04 ± 0,11 %');
    const english = await inLanguage('en-GB');
    expect(english.formatPlain(-0.25)).toBe('−0.25');
    expect(english.formatFixed(1.5, 2)).toBe('1.50');
  });

  test('a language with a sign that cannot be typed keeps the point', async () => {
    const arabic = await inLanguage('ar-EG');
    expect(arabic.formatPlain(0.5)).toBe('0.5');
  });

  test('what stands in a field, in a file and in the store has a point', async () => {
    const { formatTyped, formatPlain, formatDay, formatGiven, forFile } = await inLanguage('de-DE');
    expect(formatTyped(-0.123456, 3)).toBe('-0.123');
    expect(formatGiven(0.1)).toBe('0,1');
    expect(forFile(() => [formatPlain(0.5), formatDay('2026-05-04')])).toEqual(['0.5', '2026-05-04']);
    expect(() =>
      forFile(() => {
        throw new RangeError('no');
      }),
    ).toThrow('no');
    expect(formatPlain(0.5)).toBe('0,5');
  });

  test('counts stand in groups from 10,000 on', async () => {
    const german = await inLanguage('de-DE');
    expect([9999, 10000].map(german.formatCount)).toEqual(['9999', '10.000']);
    const english = await inLanguage('en-US');
    expect([9999, 50000].map(english.formatCount)).toEqual(['9999', '50,000']);
  });
});

describe('days as the phone writes them', () => {
  test('a stored day or moment, in every zone the day that is stored', async () => {
    const german = await inLanguage('de-DE');
    expect(german.formatDay('2026-05-04')).toBe('04.05.2026');
    expect(german.formatDay('2026-05-04T23:59:00.000Z')).toBe('04.05.2026');
    const british = await inLanguage('en-GB');
    expect(british.formatDay('2026-05-04')).toBe('4 May 2026');
    expect(british.formatMoment(new Date(2026, 4, 4, 15, 7).toISOString())).toMatch(/^4 May 2026.* 15:07$/); // the phone's own time
  });

  test('no day is no words, and what is no day stays as it is', async () => {
    const { formatDay } = await inLanguage('en-US');
    expect(formatDay(undefined)).toBe('');
    expect(formatDay('')).toBe('');
    expect(formatDay('soon')).toBe('soon');
  });
});
