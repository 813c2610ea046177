import { expect, test } from 'vitest';
import type { Reading } from '../../../src/core/drop/drop';
import { plainly } from '../../../src/core/text/refusal';
import { checkWaterDropper } from '../../../src/core/drop/dropperStandard';
import { celsius } from '../../../src/core/number/units';

const twenties = (...grams: number[]): Reading[] => grams.map((massG) => ({ drops: 20, massG }));
const verdict = (readings: Reading[], t = 20) => {
  const { phEur, usp } = checkWaterDropper(readings, celsius(t));
  return [phEur.passes, usp.passes];
};

test('a dropper of 50 mg drops meets both pharmacopoeias', () => {
  expect(verdict(twenties(1.0, 1.01, 0.99))).toEqual([true, true]);
});

test('the limits themselves pass: 950 and 1050 mg (Ph. Eur. 2.1.1), 45 and 55 mg (USP 32 <1101>)', () => {
  expect(verdict(twenties(0.95, 0.95, 0.95))).toEqual([true, true]);
  expect(verdict(twenties(1.05, 1.05, 1.05))).toEqual([true, true]);
  expect(verdict(twenties(0.949, 0.95, 0.95))).toEqual([false, true]);
  expect(verdict(twenties(0.9, 0.9, 0.9))).toEqual([false, true]);
  expect(verdict(twenties(1.1, 1.1, 1.1))).toEqual([false, true]);
  expect(verdict(twenties(0.89, 0.9, 0.9))).toEqual([false, false]);
});

test('three weighings more than 5 % off their mean do not meet Ph. Eur.', () => {
  const { phEur } = checkWaterDropper(twenties(0.94, 1.06, 1.0), celsius(20));
  expect(phEur.passes).toBe(false);
  expect(plainly(phEur.why)).toContain('5 % off their mean');
});

test('a test done otherwise than the pharmacopoeia asks gives no verdict, and says why', () => {
  expect(verdict(twenties(1, 1))).toEqual([null, true]);
  expect(verdict(twenties(1, 1, 1), 25)).toEqual([null, true]);
  expect(verdict([{ drops: 10, massG: 0.5 }])).toEqual([null, true]);
  expect(plainly(checkWaterDropper(twenties(1, 1, 1), celsius(25)).phEur.why)).toBe(
    'Ph. Eur. tests at 20 ± 1 °C, the water has 25 °C',
  );
  expect(() => checkWaterDropper([], celsius(20))).toThrow('no water drops');
});
