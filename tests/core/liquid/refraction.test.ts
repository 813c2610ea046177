import { describe, expect, test } from 'vitest';
import { refractometerShows, sugarBehind } from '../../../src/core/liquid/refraction';
import { exact, measured, standardUncertainty } from '../../../src/core/number/measured';

describe('what a refractometer shows', () => {
  test('of sugar alone its °Brix', () => {
    for (const brix of [0, 5, 7, 12.5, 30, 65])
      expect(refractometerShows({ sugar: brix / 100, ethanol: 0, acid: 0 })).toBeCloseTo(brix, 9);
  });

  test('of juice acid 0.80 for each per cent: the correction tables add 0.20 at 1 %, 0.10 at 0.5 %, 0.39 at 2 %', () => {
    for (const [acid, added] of [
      [0.5, 0.1],
      [1, 0.2],
      [2, 0.39],
    ] as const)
      expect(refractometerShows({ sugar: 0.1, ethanol: 0, acid: acid / 100 })).toBeCloseTo(10 + acid - added, 1);
  });

  test('of ethanol alone: 10 % w/w has the refraction of 4.4 % of sugar, 20 % that of 9.3 %', () => {
    expect(refractometerShows({ sugar: 0, ethanol: 0.1, acid: 0 })).toBeCloseTo(4.5, 1);
    expect(refractometerShows({ sugar: 0, ethanol: 0.2, acid: 0 })).toBeCloseTo(9.3, 0);
  });

  test('and back to the sugar, with the ± of the reading and of what else it shows', () => {
    const drink = { ethanol: measured(0.064, 0.002, { id: 'e', words: '' }), acid: exact(0.0025) };
    const shown = refractometerShows({ sugar: 0.09, ethanol: 0.064, acid: 0.0025 });
    const sugar = sugarBehind(measured(shown, 0.1, { id: 'r', words: '' }), drink);
    expect(sugar.value).toBeCloseTo(9, 6);
    expect(standardUncertainty(sugar)).toBeCloseTo(Math.hypot(0.1, 0.002 * 45), 1);
  });

  test('is refused beyond what is known', () => {
    expect(() => refractometerShows({ sugar: 0.1, ethanol: 0.5, acid: 0 })).toThrow('up to 40 %');
    expect(() => refractometerShows({ sugar: 0.75, ethanol: 0, acid: 0 })).toThrow('70 °Brix');
  });
});
