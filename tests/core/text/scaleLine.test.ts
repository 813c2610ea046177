import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isCutShort, readScaleLine, sameShape, type LineShape, type ScaleLine } from '../../../src/core/text/scaleLine';
import { readNumber } from '../../../src/core/number/typed';
import published from '../../reference/scaleLines.json';

type Expected = { g?: number; stable?: boolean | null; refuse?: string } | null;

const settled = { true: 'yes', false: 'no', null: 'unknown' } as const;
const weight = (line: string) => {
  const read = readScaleLine(line);
  if (read.kind !== 'weight') throw new Error(`${line}: ${read.why}`);
  return read;
};
const why = (line: string) => {
  const read: ScaleLine = readScaleLine(line);
  return read.kind === 'refused' ? read.why : `${read.g} g`;
};

describe('lines of scales, in the shapes that manuals print', () => {
  test.each(published.lines as [string, Expected][])('“%s”', (line, expected) => {
    const read = readScaleLine(line);
    if (expected === null) return expect(read).toEqual({ kind: 'refused', why: 'overload' });
    if (expected.refuse) return expect(read).toEqual({ kind: 'refused', why: expected.refuse, unit: 'oz' });
    expect(read.g).toBe(expected.g);
    if (read.kind === 'refused') return expect([read.why, expected.g! < 0]).toEqual(['minus', true]);
    expect(read.settled).toBe(settled[String(expected.stable) as keyof typeof settled]);
    expect(read.unverified).toBe(line.includes('['));
  });

  test('the digits that the scale showed are kept, and have one reading as a typed number', () => {
    expect(weight('+    0.3120 g  ').text).toBe('0.3120');
    expect(weight('ST,+001234.5  g').text).toBe('1234.5');
    expect(weight('     1,234 g').text).toBe('01.234');
    expect(readNumber(weight('     1,234 g').text)).toMatchObject({ kind: 'number', value: 1.234 });
  });

  test('milligrams and kilograms are grams; other units are refused by their name', () => {
    expect(weight('  312.4 mg').g).toBe(0.3124);
    expect(weight('+ 1.2345 kg').g).toBe(1234.5);
    for (const unit of ['oz', 'lb', 'ct', 'GN', 'dwt', 'pcs', '%', 'N'])
      expect(readScaleLine(`   12.5 ${unit}`)).toEqual({ kind: 'refused', why: 'unit', unit });
  });
});

describe('what is no weight', () => {
  test.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['H', 'overload'],
    ['-------', 'overload'],
    ['ST,OL,', 'overload'],
    ['.3124 g', 'cut'],
    ['0.', 'cut'],
    ['123.5[6', 'cut'],
    ['5[6', 'cut'],
    ['G 12.5 g N 10.2 g', 'several'],
    ['2026-11-30 12:01', 'several'],
    ['1.234.567 g', 'unreadable'],
    ['0.31240.2980 g', 'unreadable'],
    ['--5 g', 'unreadable'],
    ['1'.repeat(80), 'unreadable'],
    ['-    0.0120 g', 'minus'],
  ])('“%s”: %s', (line, expected) => expect(why(line)).toBe(expected));

  test('nothing on the scale is no minus', () => expect(weight('-    0.0000 g').g).toBe(0));
});

describe('any line', () => {
  const shapes = fc.record({
    head: fc.constantFrom('', 'ST,', 'US,', 'S S ', 'S D ', '  N     ', 'ST,GS,', 'G  '),
    sign: fc.constantFrom('', '+'),
    fill: fc.constantFrom('', ' ', '     '),
    zeros: fc.constantFrom('', '000'),
    value: fc.integer({ min: 0, max: 9_999_999 }),
    decimals: fc.integer({ min: 1, max: 4 }),
    point: fc.constantFrom('.', ','),
    unit: fc.constantFrom(' g', '  g', ' g  ', ' mg', ' kg'),
    tail: fc.constantFrom('', ' ?', '\r\n', '\r'),
  });

  test('of a sign, header, filling, comma or point, unit and mark is read to its last digit', () => {
    fc.assert(
      fc.property(shapes, ({ head, sign, fill, zeros, value, decimals, point, unit, tail }) => {
        const number = (value / 10 ** decimals).toFixed(decimals);
        const read = weight(`${head}${sign}${fill}${zeros}${number.replace('.', point)}${unit}${tail}`);
        const grams = { g: 1, mg: 1e-3, kg: 1e3 }[unit.trim()]!;
        expect(Number(read.g.toPrecision(12))).toBe(Number((Number(number) * grams).toPrecision(12)));
        expect(readNumber(read.text)).toMatchObject({ kind: 'number' });
        if (tail === ' ?' || /US|D/.test(head)) expect(read.settled).toBe('no');
        else if (/ST|S S/.test(head) || sign) expect(read.settled).toBe('yes');
        else expect(read.settled).toBe('unknown');
      }),
      { numRuns: 500 },
    );
  });

  test('whatever signs come, it is a finite weight of no less than nothing, or refused', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'0123456789.,+-[] gmkoSTUND?\t\r%'), maxLength: 24 });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string({ unit: 'binary' })), (line) => {
        const read = readScaleLine(line);
        if (read.kind === 'refused') return;
        expect(Number.isFinite(read.g) && read.g >= 0).toBe(true);
        expect(readNumber(read.text)).toMatchObject({ kind: 'number', value: read.g });
      }),
      { numRuns: 1500 },
    );
  });

  test('that lost signs at its beginning is never taken for a whole one of the same scale, where lines are filled up', () => {
    const filled = published.lines.map(([line]) => line as string).filter((line) => / {3}|[+]0/.test(line));
    for (const line of filled) {
      const read = readScaleLine(line);
      if (read.kind === 'refused') continue;
      for (let lost = 1; lost < line.length; lost++) {
        const rest = readScaleLine(line.slice(lost));
        if (rest.kind === 'weight')
          expect([line, lost, isCutShort(rest.shape, [read.shape])]).toEqual([line, lost, true]);
      }
    }
    expect(filled.length).toBeGreaterThan(5);
  });
});

describe('shapes', () => {
  const shape = (line: string): LineShape => weight(line).shape;

  test('of a scale that fills its lines up are as long whatever it weighs', () => {
    expect(sameShape(shape('+    0.3124 g  '), shape('+   12.3124 g  '))).toBe(true);
    expect(sameShape(shape('+    0.3124 g  '), shape('    0.3124 g  '))).toBe(false);
  });

  test('of one that does not may differ in length, not in decimals or unit', () => {
    const known = [shape('12.3124 g')];
    expect(isCutShort(shape('0.3124 g'), known)).toBe(false);
    expect(isCutShort(shape('24 g'), known)).toBe(true);
    expect(isCutShort(shape('12.3124 kg'), known)).toBe(false);
  });
});
