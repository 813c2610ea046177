import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { activityCoefficient } from '../../../src/core/acid/activity';
import { amountForPh, balanced, baseToPh, type Sour, type WeakAcid } from '../../../src/core/acid/solution';
import published from '../../reference/acidity.json';
import { residuals } from '../residuals';

const citric: WeakAcid = { pKa: published.pKa.citric };
const phosphoric: WeakAcid = { pKa: published.pKa.phosphate };
const buffers = residuals('pH of published buffers (Davies)');
afterAll(() => buffers.print());

const of = (acid: WeakAcid, molPerL: number, cations = 0): Sour => ({ acids: [{ acid, molPerL }], cations });

describe('pH', () => {
  test('of 0.05 mol/L potassium dihydrogen citrate is published within 0.01; without activities it is 0.17 off', () => {
    const { molPerL, published: ph, ideal } = published.potassiumDihydrogenCitrate;
    const got = balanced(of(citric, molPerL, molPerL)).ph;
    buffers.add('potassium dihydrogen citrate', got - ph);
    expect(Math.abs(got - ph)).toBeLessThan(0.01);
    expect(ideal - ph).toBeGreaterThan(0.15); // what a sum without activities would say
  });

  test('of the equimolal phosphate is published within 0.015', () => {
    const { molPerL, published: ph } = published.equimolalPhosphate;
    const got = balanced(of(phosphoric, 2 * molPerL, 3 * molPerL)).ph;
    buffers.add('equimolal phosphate', got - ph);
    expect(Math.abs(got - ph)).toBeLessThan(0.015);
  });

  test.each(published.mcIlvaine.mL.map((mL, i) => [mL, published.mcIlvaine.ph[i]!]))(
    'of McIlvaine’s buffer with %d mL of phosphate is %d within 0.2',
    (mL, ph) => {
      const [phosphate, acid] = [(0.2 * mL) / 20, (0.1 * (20 - mL)) / 20];
      const sour = { acids: [{ acid: phosphoric, molPerL: phosphate }, { acid: citric, molPerL: acid }], cations: 2 * phosphate }; // prettier-ignore
      const got = balanced(sour).ph;
      buffers.add(`McIlvaine ${ph}`, got - ph);
      expect(Math.abs(got - ph)).toBeLessThan(0.2);
    },
  );

  test('of nothing is that of water, and of a strong base its −log', () => {
    expect(balanced({ acids: [], cations: 0 }).ph).toBeCloseTo(6.998, 2);
    expect(balanced({ acids: [], cations: 0.001 }).ph).toBeCloseTo(10.98, 2); // γ of 0.965
  });

  test('rises as base is added, and what is titrated leads to the pH it was titrated to', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.05, noNaN: true }), fc.double({ min: 3, max: 9, noNaN: true }), (mol, ph) => {
        const base = baseToPh(of(citric, mol), ph);
        expect(balanced(of(citric, mol, base)).ph).toBeCloseTo(ph, 6);
        expect(balanced(of(citric, mol, base + 0.001)).ph).toBeGreaterThan(ph);
      }),
      { numRuns: 25 },
    ); // prettier-ignore
  });

  test('an amount that brings it somewhere is found, and one that cannot is refused', () => {
    const holds = (salt: number) => of(citric, 0.01, salt);
    expect(balanced(holds(amountForPh(3.5, 0.02, holds))).ph).toBeCloseTo(3.5, 6);
    expect(() => amountForPh(2, 0.02, holds)).toThrow('not to 2');
  });

  test('is refused where activities are not known', () => {
    expect(() => balanced(of(citric, 1, 1.5))).toThrow('up to 0.5 mol/L');
    expect(() => activityCoefficient(1, -0.1)).toThrow('0.5 mol/L');
    expect(() => balanced(of(citric, -1))).toThrow('zero or more');
    expect(activityCoefficient(0, 0.3)).toBe(1);
    expect(activityCoefficient(1, 0.1)).toBeCloseTo(0.7816, 4); // by hand: √0.1/(1 + √0.1) − 0.03 = 0.2103
  });
});
