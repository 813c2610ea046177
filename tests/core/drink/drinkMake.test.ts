import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drinkMakeOf, drinkMakeOfLitre } from '../../../src/core/drink/drinkMake';
import { drinkAbv, drinkDensity } from '../../../src/core/drink/finishedDrink';
import { massFraction, volumeFraction } from '../../../src/core/number/units';

describe('a drink from its °Brix and % ABV', () => {
  test('40 % ABV without sugar is 0.332996 g/g of ethanol (OIML R 22)', () => {
    expect(drinkMakeOf(massFraction(0), volumeFraction(0.4)).ethanol).toBeCloseTo(0.332996, 5);
  });

  test('what was found has the % ABV that was asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (brix, abv) => {
          const make = drinkMakeOf(massFraction(brix), volumeFraction(abv));
          expect(drinkAbv(make)).toBeCloseTo(abv, 10);
          expect(make.brix).toBe(brix);
        },
      ),
    );
  });

  test('114.65 g of sugar in a litre is 11 °Brix (CRC Handbook: its °Brix times its density)', () => {
    expect(drinkMakeOfLitre(114.65, volumeFraction(0)).brix * 100).toBeCloseTo(11, 2);
  });

  test('sugar by the litre is the same sugar by mass over the volume, with alcohol or without', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (gramsPerL, abv) => {
          const make = drinkMakeOfLitre(gramsPerL, volumeFraction(abv));
          expect(make.brix * drinkDensity(make) * 1000).toBeCloseTo(gramsPerL, 8);
          expect(drinkAbv(make)).toBeCloseTo(abv, 10);
        },
      ),
    );
  });

  test('what cannot be is refused', () => {
    expect(() => drinkMakeOfLitre(900, volumeFraction(0.7))).toThrow('leave room for water');
    expect(() => drinkMakeOf(massFraction(0.8), volumeFraction(0.6))).toThrow('leave room for water');
    expect(() => drinkMakeOf(massFraction(0), volumeFraction(1))).toThrow('0 to less than 100 % ABV');
    expect(() => drinkMakeOf(massFraction(-0.1), volumeFraction(0))).toThrow('zero or more');
  });
});
