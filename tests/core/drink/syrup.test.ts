import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { concentrateFor } from '../../../src/core/drink/concentrate';
import { sucroseViscosity } from '../../../src/core/liquid/sucroseViscosity';
import {
  acidLikeCitric,
  preservativeForAcid,
  sucroseSaturation,
  syrupForDrink,
  throwSyrup,
} from '../../../src/core/drink/syrup';
import { mixtureOf, shareIn } from '../../../src/core/drink/mixture';
import { exact } from '../../../src/core/number/measured';
import { celsius, gram, massFraction, millilitre } from '../../../src/core/number/units';
import dosage from '../../reference/dosage.json';
import published from '../../reference/syrup.json';
import { residuals } from '../residuals';

const value = (id: string) => published.rows.find((row) => row.id === id)!.value as number;
const rowsOf = (start: string) =>
  published.rows
    .filter((row) => row.id.startsWith(start) && typeof row.value === 'number')
    .map((row) => ({ id: row.id, value: row.value as number, inputs: row.inputs as Record<string, number> }));
const seen = residuals('Syrups: °Brix after throw, and needed (a second program)');
const brix = (percent: number) => massFraction(percent / 100);
const benzoate = { molarMass: 144.1, acidMolarMass: 122.12 };
const sorbate = { molarMass: 150.22, acidMolarMass: 112.13 };

afterAll(() => seen.print());

describe('making a syrup', () => {
  test('a soda base recipe mixes to 9.92 % sugar and 0.30 % citric acid (its page prints 10.1 and 0.30 %), and 169 mg/kg benzoic acid', () => {
    const of = (id: string, grams: number) => ({
      mass: exact(grams),
      contents: [{ material: id, strength: exact(1) }],
    });
    const rest = 6500 - 645 - 19.5; // g of 1000 g base and 5500 g water
    const drink = mixtureOf([of('sugar', 645), of('citric', 19.5), of('rest', rest)]);
    expect(100 * shareIn(drink, 'sugar').value).toBeCloseTo(value('base_example'), 2);
    expect(100 * shareIn(drink, 'citric').value).toBeCloseTo(0.3, 2);
    const acid = gram((value('base_benzoate') * 6500) / 1e6); // g, from mg/kg worked out apart
    expect(preservativeForAcid(benzoate, acid)).toBeCloseTo(1.3, 2); // g of sodium benzoate in the recipe
  });

  test.each(rowsOf('sat_'))(
    'sugar stays dissolved up to $value % at $inputs.t_C °C (CRC Handbook; Mohos 2010)',
    (row) => {
      expect(sucroseSaturation(celsius(row.inputs['t_C']!)) * 100).toBeCloseTo(row.value, 9);
    },
  );

  test('a 2 : 1 syrup may crystallise in the fridge, and does not at 20 °C', () => {
    expect(2 / 3).toBeGreaterThan(sucroseSaturation(celsius(16)));
    expect(2 / 3).toBeLessThan(sucroseSaturation(celsius(20)));
    expect(() => sucroseSaturation(celsius(40))).toThrow('0–30 °C');
  });

  test('viscosity is 15.4 mPa s at 50 °Brix and 58.5 at 60 (CRC Handbook)', () => {
    for (const [percent, id] of [
      [50, 'visc_50'],
      [60, 'visc_60'],
      [65, 'visc_65'],
      [66.667, 'visc_66.667'],
    ] as const)
      expect(Math.abs(sucroseViscosity(brix(percent)) / value(id) - 1)).toBeLessThan(0.02);
    expect(sucroseViscosity(brix(11))).toBeCloseTo(1.381, 3);
    expect(() => sucroseViscosity(brix(71))).toThrow('0–70 °Brix');
  });
});

describe('throwing it', () => {
  test('a litre of 55 °Brix thrown 1 + 5 makes 5.99 L of drink, so it takes 5.99 times the dosage, not 5 times (a second program)', () => {
    const known = dosage.rows.find((row) => row.id === 'd2')!.value as number;
    expect(throwSyrup(brix(55), { parts: 5, by: 'volume' }).mlPerMl).toBeCloseTo(known, 2);
  });

  test.each(rowsOf('throw_'))(
    '$id by volume is $value °Brix (a second program, densities of the CRC Handbook)',
    (row) => {
      const got = throwSyrup(brix(row.inputs['bx_syrup']!), { parts: row.inputs['n']!, by: 'volume' });
      seen.add(row.id, got.brix * 100 - row.value);
      expect(Math.abs(got.brix * 100 - row.value)).toBeLessThan(0.02);
    },
  );

  test('50 °Brix thrown 1 + 4 is 11.77 by volume and 10.00 by mass; 1 + 5 is 9.88 and 8.33', () => {
    const thrown = (parts: number, by: 'mass' | 'volume') => throwSyrup(brix(50), { parts, by }).brix * 100;
    expect(thrown(4, 'volume')).toBeCloseTo(11.77, 2);
    expect(thrown(5, 'volume')).toBeCloseTo(9.88, 2);
    expect(thrown(4, 'mass')).toBeCloseTo(10, 12);
    expect(thrown(5, 'mass')).toBeCloseTo(8.333, 3);
  });

  test('1 L of 50 to 67 °Brix and 4 L of water are 0.10 to 0.22 % less than 5 L (Shachman: of a very low order)', () => {
    const lost = (percent: number) => 1 - throwSyrup(brix(percent), { parts: 4, by: 'volume' }).mlPerMl / 5;
    expect(Math.abs(lost(50) - 0.001)).toBeLessThan(0.0001); // ends of the range as computed from the CRC table
    expect(Math.abs(lost(66.667) - 0.0022)).toBeLessThan(0.0001);
  });

  test.each(rowsOf('need_'))(
    '$id takes a syrup of $value °Brix (a second program, densities of the CRC Handbook)',
    (row) => {
      const got = syrupForDrink(brix(row.inputs['target']!), { parts: row.inputs['n']!, by: 'volume' }) * 100;
      seen.add(row.id, got - row.value);
      expect(Math.abs(got - row.value)).toBeLessThan(0.03);
    },
  );

  test('a syrup too strong to exist is refused', () => {
    expect(() => syrupForDrink(brix(20), { parts: 5, by: 'mass' })).toThrow('at most 14.0 °Brix');
  });

  test('what a throw needs, thrown, gives the drink back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.12, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.constantFrom('mass' as const, 'volume' as const),
        (drink, parts, by) => {
          const syrup = syrupForDrink(massFraction(drink), { parts, by });
          expect(throwSyrup(syrup, { parts, by }).brix).toBeCloseTo(drink, 10);
        },
      ),
    );
  });
});

describe('acid and preservative', () => {
  const acids = rowsOf('acid_');
  test.each(acids)('$value g of $id titrate like 1 g of anhydrous citric acid (molar mass per proton)', (row) => {
    const acid = { molarMass: row.inputs['M']!, protons: row.inputs['z']! };
    expect(Math.abs(acidLikeCitric(acid, gram(1)) - row.value)).toBeLessThan(0.001);
  });

  test('a trade conversion chart prints 1.094 for the monohydrate, 1.047 for malic and 1.172 for tartaric acid', () => {
    expect(acidLikeCitric({ molarMass: 210.139, protons: 3 }, gram(1))).toBeCloseTo(1.094, 3);
    expect(acidLikeCitric({ molarMass: 134.087, protons: 2 }, gram(1))).toBeCloseTo(1.047, 3);
    expect(acidLikeCitric({ molarMass: 150.087, protons: 2 }, gram(1))).toBeCloseTo(1.172, 3);
  });

  test('limits count the acid: 150 mg of benzoic acid are 177 mg of sodium benzoate, 300 mg of sorbic 402 of the salt', () => {
    expect(preservativeForAcid(benzoate, gram(value('benzoate_eu')))).toBeCloseTo(177, 0);
    expect(preservativeForAcid(sorbate, gram(300))).toBeCloseTo(402, 0);
    expect(preservativeForAcid(sorbate, gram(250))).toBeCloseTo(335, 0);
  });
});

describe('the concentrate', () => {
  const known = (id: string) => dosage.rows.find((row) => row.id === id)!.value as number;
  const vanillin = [{ id: 'vanillin', share: massFraction(1) }];

  test('20 mg/L at 1 g/L is 2.0 % in the concentrate, and 1000 L take 1.0 kg (by definition, w = c/(1000 D))', () => {
    const made = concentrateFor(vanillin, { mgPerL: 20, gramsPerL: 1, drink: millilitre(1e6) });
    expect(made.strength * 100).toBeCloseTo(known('d1'), 12);
    expect(made.mass / 1000).toBeCloseTo(known('d3'), 12);
  });

  test('grams of a concentrate add up to its mass, and twice the drink takes twice of everything', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 1, maxLength: 8 }),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (weights, mgPerL, drink) => {
          const sum = weights.reduce((a, b) => a + b, 0);
          const formula = weights.map((w, i) => ({ id: String(i), share: massFraction(w / sum) }));
          const one = concentrateFor(formula, { mgPerL, gramsPerL: 1, drink: millilitre(drink) });
          const two = concentrateFor(formula, { mgPerL, gramsPerL: 1, drink: millilitre(2 * drink) });
          const held = one.lines.reduce((all, line) => all + line.mass, 0);
          expect((held + one.carrier) / one.mass).toBeCloseTo(1, 12);
          expect(held / ((mgPerL * drink) / 1e6)).toBeCloseTo(1, 9);
          expect(two.carrier / one.carrier).toBeCloseTo(2, 12);
          two.lines.forEach((line, i) => expect(line.mass / one.lines[i]!.mass).toBeCloseTo(2, 12));
        },
      ),
    );
  });

  test('a formula that is not whole and a dosage that is too small are refused in words', () => {
    const half = [{ id: 'a', share: massFraction(0.5) }];
    expect(() => concentrateFor(half, { mgPerL: 1, gramsPerL: 1, drink: millilitre(1) })).toThrow('add to 100 %');
    expect(() => concentrateFor(vanillin, { mgPerL: 2000, gramsPerL: 1, drink: millilitre(1) })).toThrow('less than');
  });
});
