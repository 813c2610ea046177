import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { measuredSolubility, solubilityOfKind } from '../../../src/core/liquid/cosolvency';
import { heldIn, judgeStage, SUGAR, type Medium, type Solute } from '../../../src/core/liquid/stage';
import { cosolvents, preservativeAcids, thumbRule } from '../../../src/tables/solubility';
import { residuals } from '../residuals';
import { oilThatForms, solubilityAgain } from './oilSplit';

const plain: Medium = { cosolvents: [], sucrose: 0, ethanol: 0, oily: 0, unknown: 0 };
const spirit = (fraction: number): Medium => ({ ...plain, cosolvents: [{ ...cosolvents.ethanol, fraction }] });
const terpenes = solubilityOfKind(thumbRule['terpene hydrocarbons']);
const oil = (mgPerL: number, name = 'orange oil'): Solute => ({
  name,
  mgPerL,
  water: terpenes,
  logKow: 4.57,
  solid: false,
});
const crystal = (mgPerL: number, holds: number): Solute => ({
  name: 'vanillin',
  mgPerL,
  water: measuredSolubility(holds, 0),
  logKow: 1.21,
  solid: true,
});

describe('all of it together', () => {
  test('eight oils at 4.9 mg/L are as much as one at 39: neither stays dissolved (Raoult; Fichan 1999: terpenes 5–30 mg/L)', () => {
    const eight = Array.from({ length: 8 }, (_, i) => oil(4.9, `oil ${i}`));
    expect(judgeStage(eight, plain).verdict).toBe('stays cloudy');
    expect(judgeStage([oil(39.2)], plain).fullness.middle).toBeCloseTo(judgeStage(eight, plain).fullness.middle, 12);
    expect(judgeStage([oil(4.9)], plain).verdict).toBe('dissolves');
    expect(judgeStage(eight, plain).lines.every(({ verdict }) => verdict === 'dissolves')).toBe(true); // each as if alone
  });

  test('a solid has a solubility of its own: two at three quarters of theirs dissolve, two oils do not', () => {
    const two = ['vanillin', 'maltol'].map((name) => ({ ...crystal(3000, 8000), name }));
    expect(judgeStage(two, plain).verdict).toBe('dissolves');
    expect(judgeStage([oil(4), oil(4, 'lime oil')], plain).verdict).toBe('try it');
  });

  test('what nothing is known of is named, and never called dissolved or cloudy', () => {
    const unknown: Solute = { name: 'rhubarb extract', mgPerL: 40, water: null, logKow: null, solid: false };
    expect(judgeStage([unknown, oil(1)], plain)).toMatchObject({ verdict: 'try it', unknown: ['rhubarb extract'] });
  });

  test('where log Kow is not known, alcohol is counted as what it may be: never “stays cloudy” by water alone', () => {
    const nameless = { ...oil(85), logKow: null };
    expect(judgeStage([nameless], plain).verdict).toBe('stays cloudy');
    expect(judgeStage([nameless], spirit(0.4)).verdict).toBe('try it');
    expect(judgeStage([oil(85)], spirit(0.4)).verdict).toBe('dissolves'); // 102 mg/L and more, known by its main terpene
    expect(judgeStage([oil(85)], spirit(0.25)).verdict).toBe('try it');
  });

  test('limonene, ethanol and water mix from 0.73 of ethanol by mass on (Gironi, Lamberti and Gonzalez Farias 1995)', () => {
    expect(judgeStage([oil(100_000)], { ...spirit(0.96), ethanol: 0.74 }).verdict).toBe('dissolves');
    expect(judgeStage([oil(900_000)], { ...spirit(0.4), ethanol: 0.3 }).verdict).toBe('stays cloudy');
  });
});

describe('free acids of preservatives', () => {
  const seen = residuals(
    'Sorbic acid in sugar and in alcohol, log10 of computed over published (Food Additives Data Book, 20 °C)',
  );
  afterAll(() => seen.print());
  const { low, high, mgPerL, logKow } = preservativeAcids['potassium-sorbate']!;
  const sorbic: Solute = {
    name: 'sorbic acid',
    mgPerL: 1,
    water: { mgPerL, low, high, basis: 'measured' },
    logKow,
    solid: true,
    sugar: SUGAR,
  };

  // g of sugar in 100 g, mol/L of it with the density of the CRC table, and the % that dissolves as printed
  test.each([
    [0, 0, 0.15],
    [10, 0.303, 0.15],
    [40, 1.375, 0.1],
    [60, 2.255, 0.08],
  ])('in %s %% sugar: %s mol/L, published %s percent', (percent, sucrose, published) => {
    const { middle } = heldIn(sorbic, { ...plain, sucrose })!;
    seen.add(`sugar ${percent} %`, Math.log10(middle / (published * 1e4)));
    expect(Math.abs(Math.log10(middle / (published * 1e4)))).toBeLessThan(0.06);
  });

  test.each([
    [0.05, 0.16],
    [0.2, 0.29],
  ])('in %s of ethanol by volume: published %s percent', (fraction, published) => {
    const { middle, low: least, high: most } = heldIn(sorbic, spirit(fraction))!;
    seen.add(`ethanol ${fraction}`, Math.log10(middle / (published * 1e4)));
    expect(Math.abs(Math.log10(middle / (published * 1e4)))).toBeLessThan(0.07); // printed to two digits
    expect(published * 1e4).toBeGreaterThan(least);
    expect(published * 1e4).toBeLessThan(most);
  });

  test('250 mg/L in the drink are 1.5 g/L in the syrup of a throw of 1 + 5, which holds less', () => {
    expect(judgeStage([{ ...sorbic, mgPerL: 250 }], { ...plain, sucrose: 0.3 }).verdict).toBe('dissolves');
    expect(judgeStage([{ ...sorbic, mgPerL: 1500 }], { ...plain, sucrose: 2 }).verdict).toBe('stays cloudy');
  });
});

describe('a second program', () => {
  const seen = residuals('Solubility by a second program: largest relative difference of 200 random liquids');
  afterAll(() => seen.print());
  const parts = fc.array(fc.record({ mgPerL: fc.double({ min: 0.1, max: 500, noNaN: true }), water: fc.double({ min: 1, max: 5000, noNaN: true }), logKow: fc.double({ min: 0, max: 5, noNaN: true }) }), { minLength: 1, maxLength: 8 }); // prettier-ignore
  const liquids = fc.record({
    ethanol: fc.double({ min: 0, max: 0.5, noNaN: true }),
    sucrose: fc.double({ min: 0, max: 2.2, noNaN: true }),
  });

  test('an oil forms exactly where the middle of what is asked is over 1, whatever is in the liquid', () => {
    let worst = 0;
    fc.assert(
      fc.property(parts, liquids, (asked, { ethanol, sucrose }) => {
        const medium = { ...spirit(ethanol), sucrose };
        const solutes = asked.map(({ mgPerL, water, logKow }, i): Solute => ({ name: `${i}`, mgPerL, water: measuredSolubility(water, 0), logKow, solid: false })); // prettier-ignore
        const again = asked.map(({ mgPerL, water, logKow }) => ({
          mgPerL,
          solubility: solubilityAgain(water, { logKow, ethanol, sucrose, salting: SUGAR }),
        }));
        solutes.forEach((solute, i) => {
          worst = Math.max(worst, Math.abs(heldIn(solute, medium)!.middle / again[i]!.solubility - 1));
        });
        const { fullness } = judgeStage(solutes, medium);
        fc.pre(Math.abs(fullness.middle - 1) > 1e-9);
        expect(oilThatForms(again) > 0).toBe(fullness.middle > 1);
        expect(fullness.low).toBeLessThanOrEqual(fullness.middle);
        expect(fullness.middle).toBeLessThanOrEqual(fullness.high);
      }),
      { numRuns: 200 },
    );
    seen.add('solubility', worst);
    expect(worst).toBeLessThan(1e-9);
  });
});
