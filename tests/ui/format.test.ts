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
    expect(german.measuredText(measured(1.04, 0.055, { id: 'x', words: 'x' }), '%')).toBe('(1,04 ± 0,11) %');
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

describe('digits follow the ±', () => {
  /** A number with a ± at k = 2. */
  const known = (value: number, uncertainty: number) => measured(value, uncertainty / 2, { id: 'x', words: 'x' });

  test('GUM 7.2.6: 10.057 62 Ω with 27 mΩ is 10.058 Ω, and 28.05 is rounded to 28', async () => {
    const { measuredText } = await inLanguage('en-US');
    expect(measuredText(known(10.05762, 0.027), 'Ω', { most: 6 })).toBe('10.058 ± 0.027 Ω');
    expect(measuredText(known(1234.4, 28.05), 'kHz')).toBe('1234 ± 28 kHz');
  });

  test('two digits of a ± that begins with 1 or 2, else one: 0.827 ± 0.119 and ± 0.367 (Review of Particle Physics, 5.3)', async () => {
    const { measuredText } = await inLanguage('en-US');
    expect(measuredText(known(0.827, 0.119), 'g')).toBe('0.83 ± 0.12 g');
    expect(measuredText(known(0.827, 0.367), 'g')).toBe('0.8 ± 0.4 g');
  });

  test.each([
    [1.067, 0.056, '(1.07 ± 0.06) % w/v'],
    [1, 0.37, '(1.0 ± 0.4) % w/v'],
    [100.8, 73.9, '(100 ± 70) % w/v'],
    [1234, 456, '(1200 ± 500) % w/v'],
    [0.0967, 0.0967, '(0.10 ± 0.10) % w/v'],
    [0, 0.004, '(0.000 ± 0.004) % w/v'],
    [-0.0001, 0.5, '(0.0 ± 0.5) % w/v'],
    [-3, 45, '(0 ± 50) % w/v'],
    [5, 0, '5 % w/v'],
  ])('%d ± %d is %s', async (value, uncertainty, text) => {
    const { measuredText } = await inLanguage('en-US');
    expect(measuredText(known(value, uncertainty), '% w/v')).toBe(text);
  });

  test('four digits at most, three beside a limit, and the ± is then rounded up', async () => {
    const { measuredText, BESIDE_LIMIT } = await inLanguage('en-US');
    expect(measuredText(known(1958.92, 0.16), 'mg/L')).toBe('1959 ± 1 mg/L');
    expect(measuredText(known(1958.92, 0.16), 'mg/L', BESIDE_LIMIT)).toBe('1960 ± 10 mg/L');
    expect(measuredText(known(9.54791, 0.00076), 'mg', BESIDE_LIMIT)).toBe('9.55 ± 0.01 mg');
    expect(measuredText(known(20, 0.046), 'L')).toBe('20.00 ± 0.05 L');
  });

  test('in a list the ± is left out, its digits stay', async () => {
    const { formatKnown, formatLike } = await inLanguage('en-US');
    expect([formatKnown(known(1.067, 0.056)), formatKnown(known(1.003, 0.37)), formatKnown(known(1, 0.0001))]).toEqual([
      '1.07',
      '1',
      '1',
    ]);
    expect(formatLike(22.83, known(20, 7.4))).toBe('23');
  });

  test('what is used up is empty', async () => {
    await inLanguage('en-US');
    const { leftPhrase } = await import('../../src/ui/left');
    expect([known(0, 0), known(0.0001, 0.02), known(6.512, 0.04)].map((left) => leftPhrase(left, 'g'))).toEqual([
      'empty',
      'empty',
      '6.51 g left',
    ]);
    expect([0, 12].map((left) => leftPhrase(known(left, 0), 'pieces'))).toEqual(['empty', '12 left']);
  });

  test('a table has value and ± in cells of their own, with a point; a negative value is a number, not a formula', async () => {
    const { measuredCells } = await inLanguage('de-DE');
    expect(measuredCells(known(1.04, 0.11))).toEqual(['1.04', '0.11']);
    expect(measuredCells(known(-3.02, 0.5))).toEqual([-3, '0.5']);
    expect(measuredCells(known(5, 0))).toEqual(['5', '']);
  });
});

describe('no exponent, no noise of binary fractions', () => {
  test.each([
    [2.2e-14, '0'],
    [1e-7, '0.0000001'],
    [1.23456e-8, '0.00000001235'],
    [-1e-7, '−0.0000001'],
    [1e21, '1000000000000000000000'],
    [250.00000000000003, '250'],
    [0.1 + 0.2, '0.3'],
  ])('%d is %s', async (x, text) => {
    const { formatPlain, formatGiven, formatTyped } = await inLanguage('en-US');
    expect(formatPlain(x)).toBe(text);
    expect(formatTyped(x)).toBe(text.replace('−', '-'));
    if (Math.abs(x) > 0.01) expect(formatGiven(x)).toBe(text);
  });

  test('a share of all is never a crowd of zeros, a chance neither', async () => {
    const { formatPart, formatChance } = await inLanguage('en-US');
    expect([5.9e-10, 0, 0.374].map(formatPart)).toEqual(['< 0.1 %', '0 %', '37 %']);
    expect([0.2593, 0.00021].map(formatChance)).toEqual(['0.26', '< 0.001']);
  });
});

describe('what a scale can show', () => {
  test('a planned amount is no finer than the scale, and nothing below half a step', async () => {
    const { formatOnScale, showsNothing } = await inLanguage('en-US');
    expect([0.01, 0.1, 0.001, 0.02].map((step) => formatOnScale(12.3456, step))).toEqual([
      '12.35',
      '12.3',
      '12.346',
      '12.35',
    ]);
    expect(formatOnScale(16643.2, 1)).toBe('16643');
    expect(formatOnScale(16643.2, 10)).toBe('16640');
    expect([0.004, 0.006].map((grams) => showsNothing(grams, 0.01))).toEqual([true, false]);
  });
});
