import { describe, expect, test } from 'vitest';
import { measured } from '../../../src/core/number/measured';
import { smallestMass } from '../../../src/core/dilution/smallestMass';
import { gram } from '../../../src/core/number/units';
import { relativeUncertainty } from '../uncertainty';

const scale = (readability: number, repeatability = 0) => ({
  readability: gram(readability),
  repeatability: gram(repeatability),
});

describe('the smallest mass a scale can make', () => {
  test('is 2000 s: 0.300 g for s = 0.15 mg (USP <41>, August 2019)', () => {
    expect(smallestMass(scale(0.0001, 0.00015))).toBeCloseTo(0.3, 12);
  });

  test('is never below 820 d (USP <41>)', () => {
    for (const d of [0.00001, 0.0001, 0.001, 0.01, 0.1]) expect(smallestMass(scale(d)) / d).toBeCloseTo(820, 9);
    expect(smallestMass(scale(0.01, 0.001))).toBeCloseTo(8.2, 9);
  });

  test.each([
    [0.01, 0.01, 0.82],
    [0.01, 0.02, 0.41],
    [0.01, 0.05, 0.164],
    [0.001, 0.01, 0.082],
    [0.001, 0.05, 0.0164],
    [0.1, 0.05, 1.64],
  ])('on a %d g scale within %d it is %d g (same formula, looser limit: ours)', (d, tolerance, grams) => {
    expect(smallestMass(scale(d), tolerance)).toBeCloseTo(grams, 9);
  });

  test('one drop of 22 mg on a 0.01 g scale is ±37 %, twenty of them ±1.9 % (s = 0.41 d, k = 2)', () => {
    const net = (grams: number) => 2 * relativeUncertainty(measured(grams, 0.41 * 0.01, { id: 's', words: 's' }));
    expect(net(0.022)).toBeCloseTo(0.37, 2);
    expect(net(20 * 0.022)).toBeCloseTo(0.0186, 4);
  });

  test('a scale without steps and a tolerance of nothing are refused', () => {
    expect(() => smallestMass(scale(0))).toThrow('steps above 0 g');
    expect(() => smallestMass(scale(0.01, -1))).toThrow('zero or more');
    expect(() => smallestMass(scale(0.01), 0)).toThrow('above 0 %');
  });
});
