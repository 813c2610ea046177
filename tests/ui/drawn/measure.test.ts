import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clampLevel, fitLines, fitText, ringsOf, surfaceAt } from '../../../src/ui/drawn/measure';

const anyNumber = fc.double({ noDefaultInfinity: false, noNaN: false });

test('a level is always between empty and full', () => {
  expect([-1, 0, 0.4, 1, 7, Infinity, -Infinity, NaN].map(clampLevel)).toEqual([0, 0, 0.4, 1, 1, 1, 0, 0]);
  fc.assert(
    fc.property(anyNumber, (level) => {
      const y = surfaceAt(level, { bottom: 189, full: 68, least: 5 });
      expect(y === null || (y >= 68 && y <= 184)).toBe(true);
    }),
  );
});

test('more in it stands higher, a rest is still seen, and what is empty has no surface', () => {
  const at = (level: number) => surfaceAt(level, { bottom: 189, full: 68, least: 5 });
  expect(at(0)).toBeNull();
  expect(at(0.001)).toBe(184);
  expect(at(0.5)).toBeCloseTo(128.5);
  expect(at(1)).toBe(68);
});

test('one ring for each tenfold step; what is made goes with what was meant', () => {
  expect([0.1, 0.01, 0.001, 0.0001].map(ringsOf)).toEqual([0, 1, 2, 3]);
  expect([0.0107, 0.0085, 0.02, 0.00095].map(ringsOf)).toEqual([1, 1, 1, 2]);
  expect([undefined, 0, -1, NaN, 1, 5, 1e-9].map(ringsOf)).toEqual([0, 0, 0, 0, 0, 0, 4]);
});

describe('a label', () => {
  const code = fc.string({ minLength: 1, maxLength: 14, unit: fc.constantFrom('A', 'W', '0', '9') });
  const strength = fc.constantFrom('', 'neat', '1 %', '0.01 %', '1 % w/w', '250 mg/kg', '12,5 mg/L');
  const rooms = fc.record({
    width: fc.double({ min: 40, max: 70, noNaN: true }),
    height: fc.double({ min: 20, max: 60, noNaN: true }),
    pxPerUnit: fc.double({ min: 0.1, max: 4, noNaN: true }),
  });

  test('has code and strength in whole within its room, or nothing', () => {
    fc.assert(
      fc.property(code, strength, rooms, (code, strength, room) => {
        const lines = fitLines({ code, strength }, room);
        if (lines.length === 0) return;
        expect(lines.map(({ text }) => text).join(' ')).toBe([code, strength].filter(Boolean).join(' '));
        for (const { text, size } of lines) {
          expect(size * 0.62 * text.length).toBeLessThanOrEqual(room.width + 1e-9);
          expect(size * room.pxPerUnit).toBeGreaterThanOrEqual(8);
        }
        expect(lines.reduce((sum, { size }) => sum + size, 0)).toBeLessThanOrEqual(room.height);
      }),
    );
  });

  test('of a usual vial is written from 96 px on, and blank in a list', () => {
    const room = { width: 63, height: 50 };
    const at = (px: number, strength: string) => fitLines({ code: 'CARD', strength }, { ...room, pxPerUnit: px / 200 });
    for (const strength of ['1 %', '0.1 %', 'neat']) expect(at(96, strength), strength).toHaveLength(2);
    expect(at(40, '1 %')).toEqual([]);
  });

  test('breaks a long strength before its unit, never before a percent sign', () => {
    const texts = (strength: string) =>
      fitLines({ code: 'HEX', strength }, { width: 60, height: 60, pxPerUnit: 1 }).map(({ text }) => text);
    expect(texts('1250 mg/kg')).toEqual(['HEX', '1250', 'mg/kg']);
    expect(texts('0.0125 %')).toEqual(['HEX', '0.0125 %']);
  });
});

test('a text that could not be read is left out', () => {
  expect(fitText('SMELL ONLY', 100, 12, 1)).toBe(12);
  expect(fitText('SMELL ONLY', 31, 12, 1)).toBe(0);
  expect(fitText('', 31, 12, 1)).toBe(12);
});
