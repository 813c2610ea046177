import { describe, expect, test } from 'vitest';
import { addedUp, energyOf } from '../../../src/core/nutrition/energy';
import { declared } from '../../../src/core/nutrition/rounding';
import { euKcal, euKj, usKcal } from '../../../src/tables/drinkLabel/energyFactors';
import { roundings } from '../../../src/tables/drinkLabel/roundings';

/** g in 100 mL, and kJ and kcal as they were published with them. */
const published = [
  // a calculator of energy for labels of wine, 12 % vol × 0.789 g/mL, 3 g/L sugar and 6 g/L acid: each part, rounded
  { of: 'alcohol of a wine', grams: { ethanol: 12 * 0.789 }, kJ: 275, kcal: 66 },
  { of: 'its sugar', grams: { carbohydrate: 0.3 }, kJ: 5, kcal: 1 },
  { of: 'its acid', grams: { 'organic acid': 0.6 }, kJ: 8, kcal: 2 },
] as const;

describe('energy by the factors of the law', () => {
  test('one gram of each is its factor: Annex XIV, written out again', () => {
    const annex = { carbohydrate: [17, 4], polyol: [10, 2.4], protein: [17, 4], fat: [37, 9], ethanol: [29, 7], 'organic acid': [13, 3], fibre: [8, 2], erythritol: [0, 0] } as const; // prettier-ignore
    for (const [of, [kJ, kcal]] of Object.entries(annex)) {
      expect([energyOf({ [of]: 1 }, euKj), energyOf({ [of]: 1 }, euKcal)]).toEqual([kJ, kcal]);
    }
    expect(Object.keys(euKj).sort()).toEqual(Object.keys(annex).sort());
  });

  test('agrees with published sums; the residuals are those of their rounding', () => {
    const rows = published.map(({ of, grams, kJ, kcal }) => ({
      of,
      kJ: energyOf(grams, euKj) - kJ,
      kcal: energyOf(grams, euKcal) - kcal,
    }));
    console.table(rows);
    for (const row of rows) expect(Math.max(Math.abs(row.kJ), Math.abs(row.kcal))).toBeLessThanOrEqual(0.5);
    const all = addedUp(published.map(({ grams }) => grams));
    expect(energyOf(all, euKj)).toBeCloseTo(287.5, 0); // 274.6 + 5.1 + 7.8
  });

  test('kJ and kcal are summed apart: 4.184 kJ to the kcal is not the law', () => {
    expect(energyOf({ ethanol: 20 }, euKj) / energyOf({ ethanol: 20 }, euKcal)).toBeCloseTo(29 / 7, 12);
    expect(energyOf({ erythritol: 10 }, usKcal)).toBe(2);
    expect(energyOf({ 'organic acid': 1 }, usKcal)).toBe(4);
  });
});

describe('numbers on a label', () => {
  const eu = (value: number) => declared(value, roundings.euGrams);
  const us = (value: number) => declared(value, roundings.usCalories).value;

  test('are rounded as the guidance of the EU says', () => {
    expect(eu(0)).toEqual({ value: 0, below: false, digits: 0 });
    expect(eu(0.3)).toEqual({ value: 0.5, below: true, digits: 1 });
    expect(eu(0.55).value).toBeCloseTo(0.6, 12);
    expect(eu(9.44).value).toBeCloseTo(9.4, 12);
    expect(eu(9.96)).toEqual({ value: 10, below: false, digits: 0 });
    expect(eu(10.4).value).toBe(10);
    const salt = (value: number) => declared(value, roundings.euSalt);
    expect(salt(0.005)).toEqual({ value: 0.0125, below: true, digits: 2 });
    expect(salt(0.237).value).toBeCloseTo(0.24, 12);
    expect(salt(1.26).value).toBeCloseTo(1.3, 12);
  });

  test('and as the US does: nothing under 5, by 5 up to 50, by 10 above', () => {
    expect([4.9, 5, 12, 13, 50, 54, 56, 147].map(us)).toEqual([0, 5, 10, 15, 50, 50, 60, 150]);
  });
});
