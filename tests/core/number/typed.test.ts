import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber, typedText, withoutGuard } from '../../../src/core/number/typed';

const number = (value: number, grouped = false) => ({ kind: 'number', value, grouped });

describe('a typed number', () => {
  test.each([
    ['0,7', 0.7],
    ['0.7', 0.7],
    [' 12 ', 12],
    ['1,', 1],
    ['.5', 0.5],
    ['0,123', 0.123],
    ['0.000', 0],
    ['01.234', 1.234],
    ['1234,567', 1234.567],
    ['1,0000', 1],
    ['12,5', 12.5],
    ['−3', -3],
    ['-3', -3],
    ['+3', 3],
    ['\u200e−3', -3],
  ])('“%s” is %d', (text, value) => expect(readNumber(text)).toEqual(number(value)));

  test.each([
    ['1 000', 1000],
    ['1\u00a0000', 1000],
    ['1\u2009000', 1000],
    ['12\u202f500,5', 12500.5],
    ["1'000", 1000],
    ['1’000’000.25', 1000000.25],
    ['1.000,5', 1000.5],
    ['1,000.5', 1000.5],
    ['1,000,000', 1e6],
    ['1.000.000', 1e6],
    ['12 345 678', 12345678],
    ['-1 000,000', -1000],
  ])('“%s” is %d, with thousands', (text, value) => expect(readNumber(text)).toEqual(number(value, true)));

  test.each([
    ['1,000', 1000, 1],
    ['1.000', 1000, 1],
    ['12,500', 12500, 12.5],
    ['123.456', 123456, 123.456],
    ['−1,234', -1234, -1.234],
  ])('“%s” is %d or %d', (text, ...readings) => expect(readNumber(text)).toEqual({ kind: 'two', readings }));

  test.each([
    ['ten', 'characters'],
    ['250 mL', 'characters'],
    ['NaN', 'characters'],
    ['Infinity', 'characters'],
    ['1e3', 'characters'],
    ['½', 'characters'],
    ['٣', 'characters'],
    ['5 %', 'characters'],
    ['1,00,000', 'signs'],
    ['1,000,00', 'signs'],
    ['1.000.5', 'signs'],
    ['1 00', 'signs'],
    ['1000 000', 'signs'],
    ['0 123', 'signs'],
    ['1,000,', 'signs'],
    ["1 000'000", 'signs'],
    ['1,,5', 'signs'],
    ['--1', 'signs'],
    ['1-2', 'signs'],
    ['.', 'signs'],
    ['9'.repeat(400), 'endless'],
  ])('“%s” is none: %s', (text, why) => expect(readNumber(text)).toEqual({ kind: 'none', why }));

  test.each(['', '  ', '\u200b', '\ufeff \u200d'])('“%s” is empty', (text) =>
    expect(readNumber(text)).toEqual({ kind: 'empty' }),
  );
});

const LOCALES = ['en-US', 'de-DE', 'de-CH', 'fr-FR', 'fr-CH', 'sv-SE', 'pl-PL', 'pt-BR', 'pt-PT', 'es-ES', 'it-IT'];
const MORE = [
  'en-IN',
  'hi-IN',
  'ru-RU',
  'bg-BG',
  'nb-NO',
  'fi-FI',
  'et-EE',
  'he-IL',
  'ja-JP',
  'en-ZA',
  'tr-TR',
  'lt-LT',
];

test('what a phone of any language writes is read as that number, asked about or refused, never another number', () => {
  const digits = fc.oneof(...[99_999_999, 999_999].map((most) => fc.integer({ min: -most, max: most })));
  const amounts = fc.tuple(digits, fc.oneof(fc.integer({ min: 0, max: 5 }), fc.constantFrom(0, 3)));
  const told = fc.record({ amount: amounts, locale: fc.constantFrom(...LOCALES, ...MORE), zeros: fc.boolean() });
  const seen = { number: 0, two: 0, none: 0, empty: 0 };
  fc.assert(
    fc.property(told, ({ amount: [digits, decimals], locale, zeros }) => {
      const value = Number(`${digits}e-${decimals}`);
      const format = { maximumFractionDigits: decimals, minimumFractionDigits: zeros ? decimals : 0 };
      const text = new Intl.NumberFormat(`${locale}-u-nu-latn`, format).format(value);
      const read = readNumber(text);
      seen[read.kind]++;
      if (read.kind === 'number') expect(read.value).toBe(value);
      else if (read.kind === 'two') expect(read.readings).toContain(value);
      else expect([read, locale]).toEqual([{ kind: 'none', why: 'signs' }, expect.stringMatching('-IN')]); // groups of two
    }),
    { numRuns: 3000 },
  );
  expect(seen.number).toBeGreaterThan(1500);
  expect(seen.two).toBeGreaterThan(20);
});

test('a number that the program writes is read as that number alone, and shown without its 0 in front', () => {
  const numbers = fc.tuple(fc.integer({ min: -9_999_999, max: 9_999_999 }), fc.integer({ min: 0, max: 6 }));
  fc.assert(
    fc.property(numbers, ([digits, decimals]) => {
      const value = Number(`${digits}e-${decimals}`);
      fc.pre(value === 0 || Math.abs(value) >= 1e-6);
      expect(readNumber(typedText(value))).toEqual(number(value));
      expect(withoutGuard(typedText(value))).toBe(String(value));
    }),
    { numRuns: 3000 },
  );
  expect([typedText(1.234), withoutGuard('01.234')]).toEqual(['01.234', '1.234']);
  expect(typedText(12.5)).toBe('12.5');
});

test('a text of any signs is a finite number, or two, or none', () => {
  const signs = fc.string({ unit: fc.constantFrom(..."0123456789.,+-− '’\u202f"), maxLength: 14 });
  fc.assert(
    fc.property(signs, (text) => {
      const read = readNumber(text);
      const values = read.kind === 'number' ? [read.value] : read.kind === 'two' ? read.readings : [];
      expect(values.every(Number.isFinite)).toBe(true);
      if (read.kind === 'two') expect(read.readings[0] / read.readings[1]).toBeCloseTo(1000, 6);
    }),
  );
});
