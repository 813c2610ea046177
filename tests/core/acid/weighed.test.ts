import { describe, expect, test } from 'vitest';
import { balanced } from '../../../src/core/acid/solution';
import { brixAcidRatio, sourDrink, titratable } from '../../../src/core/acid/weighed';
import { sourGoods } from '../../../src/tables/keeping/acidity';

const drink = (grams: Readonly<Record<string, number>>, alkalinityMgPerL = 0, volumes = 0) =>
  sourDrink({
    goods: Object.entries(grams).map(([id, gramsPerL]) => ({ goods: sourGoods[id]!, gramsPerL })),
    alkalinityMgPerL,
    volumes,
  });
const ph = (...args: Parameters<typeof drink>) => balanced(drink(...args)).ph;

describe('a drink from its weighed list', () => {
  test('titrates as the acid that is in it, gas or not', () => {
    expect(titratable(drink({ 'citric-acid': 2 }))).toBeCloseTo(2, 1);
    expect(titratable(drink({ 'citric-acid-monohydrate': 2.1875 }))).toBeCloseTo(2, 1); // 1.0938 for 1
    expect(titratable(drink({ 'malic-acid': 2.094 }))).toBeCloseTo(2, 1); // 1.047 for 1
    expect(titratable(drink({ 'lactic-acid': 2.8132 }))).toBeCloseTo(2, 1); // 1.4066 for 1
    expect(titratable(drink({ 'citric-acid': 2 }, 0, 4))).toBeCloseTo(titratable(drink({ 'citric-acid': 2 })), 9);
  });

  test('of equal titratable acid is not of equal pH', () => {
    expect(ph({ 'phosphoric-acid': 2 * 0.7651 })).toBeLessThan(ph({ 'citric-acid': 2 }) - 0.3); // prettier-ignore
    expect(ph({ 'lactic-acid': 2.8132 })).toBeGreaterThan(ph({ 'citric-acid': 2 }));
  });

  test('is made less sour by a salt, by benzoate, and by hard water, each a little', () => {
    const acid = { 'citric-acid': 2 };
    expect(ph({ ...acid, 'trisodium-citrate': 1 })).toBeGreaterThan(ph(acid) + 0.5);
    expect(ph({ ...acid, 'sodium-benzoate': 0.177 }) - ph(acid)).toBeGreaterThan(0.03);
    expect(ph(acid, 200) - ph(acid)).toBeGreaterThan(0.2);
    expect(titratable(drink(acid, 200))).toBeCloseTo(2 - (0.2 / 50.043) * 64.041, 1); // 100 mg/L as CaCO3 is 2 mmol/L
  });

  test('of gas alone has the pH of soda, and beside acid gas hardly counts', () => {
    expect(ph({}, 0, 3)).toBeCloseTo(3.61, 1);
    expect(ph({ 'citric-acid': 2 }) - ph({ 'citric-acid': 2 }, 0, 4)).toBeLessThan(0.02);
  });

  test('has the ratio of the juice trade: 12 °Brix with 1 % of acid is 12', () => {
    expect(brixAcidRatio(12, 10.48, 1.048)).toBeCloseTo(12, 6);
  });
});
