import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { broughtBy, dissolvedIn, doesAddUp, ingredientDensity } from '../../../src/core/drink/ingredient';
import { planBatch, total, type BatchTarget } from '../../../src/core/drink/batchPlan';
import { ethanolMassFraction } from '../../../src/core/liquid/ethanol';
import { gram, gramPerMl, massFraction, millilitre, volumeFraction } from '../../../src/core/number/units';
import { Refusal } from '../../../src/core/text/refusal';

describe('what an ingredient brings', () => {
  /** Acidity corrections to °Brix, typed from a printed table of juice makers: anhydrous citric acid % w/w, °Brix to be added. */
  test.each([
    [0.4, 0.08],
    [1, 0.2],
    [2, 0.39],
    [3, 0.58],
    [4, 0.78],
    [5, 0.97],
    [6, 1.15],
    [8, 1.54],
    [10, 1.91],
    [15, 2.81],
    [20, 3.7],
  ])('a juice with %s %% of acid reads %s °Brix too low', (acid, correction) => {
    const added = dissolvedIn({ brix: 10, acid: acid / 100 }) * 100 - 10;
    expect(Math.abs(added - correction)).toBeLessThan(0.021);
  });

  test('is not corrected beside alcohol, nor without acid', () => {
    expect(dissolvedIn({ brix: 30, acid: 0.01, abv: 0.25 })).toBe(0.3);
    expect(broughtBy({ brix: 10 }).sugar).toBeCloseTo(0.1, 12);
  });

  test('is the ethanol of the alcohol tables where there is nothing else', () => {
    for (const abv of [0.05, 0.2, 0.4, 0.6, 0.96])
      expect(broughtBy({ abv }).ethanol).toBeCloseTo(ethanolMassFraction(volumeFraction(abv)), 6);
    expect(broughtBy({ abv: 0.4 }, gramPerMl(0.96)).ethanol).toBeCloseTo((0.4 * 0.78924) / 0.96, 5);
  });

  test('adds up to all of it, or is refused', () => {
    const part = (max: number) => fc.option(fc.double({ min: 0, max, noNaN: true }), { nil: undefined });
    const facts = fc.record({ brix: part(84), abv: part(1), acid: part(0.5), solids: part(1) });
    fc.assert(
      fc.property(facts, (one) => {
        if (!doesAddUp(one)) return void expect(() => broughtBy(one)).toThrow(Refusal);
        const { sugar, acid, ethanol, rest, water } = broughtBy(one);
        expect(Math.abs(sugar + acid + ethanol + rest + water - 1)).toBeLessThanOrEqual(1.001e-9); // what typed shares may be over by
        expect(Math.min(sugar, acid, ethanol, rest, water)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    { brix: 70, abv: 0.5 },
    { acid: -0.1 },
    { abv: 1.2 },
    { brix: 60, solids: 1, abv: 0.3 },
    { brix: Number.NaN },
  ])('%j cannot be', (facts) => expect(() => broughtBy(facts)).toThrow(Refusal));

  test('has the density of its sugar and alcohol', () => {
    expect(ingredientDensity({ brix: 10 })).toBeCloseTo(1.0381, 4); // sucrose of 10 °Brix at 20 °C, CRC Handbook
    expect(ingredientDensity({ abv: 0.4 })).toBeCloseTo(0.94805, 4); // OIML R 22
  });
});

describe('a batch with ingredients that bring sugar and acid', () => {
  const target: BatchTarget = {
    drink: millilitre(20_000),
    brix: massFraction(0.08),
    throw: { parts: 4, by: 'volume' },
    acid: { id: 'citric-acid', acid: { molarMass: 192.124, protons: 3 }, citricPerL: 2 },
    preservatives: [],
    concentrate: { parts: [{ id: 'juice', mass: gram(1000) }], ethanol: gram(0) },
  };
  const brought = { sugar: gram(100), citric: gram(10), late: gram(0), lateSugar: gram(0) };
  const massIn = (plan: ReturnType<typeof planBatch>, id: string) =>
    plan.syrup.parts.find((part) => part.id === id)?.mass ?? 0;

  test('weighs so much less of both, and keeps its mass', () => {
    const [plain, plan] = [planBatch(target), planBatch({ ...target, brought })];
    expect(massIn(plain, 'sugar') - massIn(plan, 'sugar')).toBeCloseTo(100, 9);
    expect(massIn(plain, 'citric-acid') - massIn(plan, 'citric-acid')).toBeCloseTo(10, 9);
    expect(total(plan.syrup.parts) + plan.water).toBeCloseTo(plan.drink.mass, 6);
  });

  test('takes what is poured into the drink off the water, and its sugar off the syrup', () => {
    const late = { ...brought, late: gram(2000), lateSugar: gram(100) };
    const [plain, plan] = [planBatch(target), planBatch({ ...target, brought: late })];
    expect(plain.water - plan.water).toBeCloseTo(2000, 9);
    expect(total(plan.syrup.parts) + plan.water + 2000).toBeCloseTo(plan.drink.mass, 6);
    expect(plan.syrup.brix * plan.syrup.mass).toBeCloseTo(massIn(plan, 'sugar'), 6);
  });

  test.each([
    [{ ...brought, sugar: gram(2000) }, 'the ingredients alone bring'],
    [{ ...brought, citric: gram(41) }, 'the ingredients alone bring'],
    [{ ...brought, late: gram(19_000) }, 'more than the water it replaces'],
  ])('is refused where they bring more than is asked for', (more, words) => {
    expect(() => planBatch({ ...target, brought: more })).toThrow(words);
  });

  test('without sugar has a syrup of exactly none', () => {
    expect(planBatch({ ...target, brix: massFraction(0) }).syrup.brix).toBe(0);
  });
});
