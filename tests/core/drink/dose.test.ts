import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compositionOf,
  concentrateStrength,
  doseOf,
  drinkOfVolume,
  dropsForPpm,
  type Drink,
  type Pour,
} from '../../../src/core/drink/dose';
import {
  ethanolDensity,
  ethanolMassFraction,
  ethanolVolumeFraction,
  mixSpirits,
} from '../../../src/core/liquid/ethanol';
import { exact, measured, scaled, standardUncertainty } from '../../../src/core/number/measured';
import { celsius, gram, gramPerMl, massFraction, volumeFraction } from '../../../src/core/number/units';
import { relativeUncertainty } from '../uncertainty';

const ethanol96 = gramPerMl(0.80742); // 96 % vol at 20 °C, OIML R 22
const drinkOf = (grams: number, density: number, abv = 0): Drink => ({
  mass: exact(grams),
  density: gramPerMl(density),
  ethanol: volumeFraction(abv),
});
const pourOf = (grams: number, strength: number, density = 1, abv = 0): Pour => ({
  mass: exact(grams),
  contents: [{ material: 'a', strength: exact(strength) }],
  density: gramPerMl(density),
  ethanol: volumeFraction(abv),
});

describe('a dose in a drink', () => {
  test('12 drops of 22 mg of a 1 % dilution in 100 g of drink are 26.4 mg/kg (n·m·w/M, the drink weighed with the dose in it)', () => {
    const poured = 12 * 0.022;
    expect(doseOf([pourOf(poured, 0.01)], drinkOf(100 - poured, 1)).mgPerKg.value).toBeCloseTo(26.4, 10);
    // Dropped into 100 g there are 100.264 g in the glass: 0.26 % less.
    expect(doseOf([pourOf(poured, 0.01)], drinkOf(100, 1)).mgPerKg.value).toBeCloseTo(26.3305, 4);
  });

  test.each([
    ['11 °Brix', 1.0423, 52.1],
    ['40 % ABV', 0.94805, 47.4],
  ])(
    '50 mg/kg in a drink of %s are its density times that in mg/L (density %d: sucrose tables, OIML R 22)',
    (...row) => {
      const [, density, mgPerL] = row;
      const dose = doseOf([pourOf(1e-6, 1, density)], drinkOf(0.02, density));
      expect(dose.mgPerL.value / dose.mgPerKg.value).toBeCloseTo(density, 10);
      expect((50 * dose.mgPerL.value) / dose.mgPerKg.value).toBeCloseTo(mgPerL, 1);
    },
  );

  test('1 g per litre of a 2.0 % concentrate is 20 mg/L, and 0.5 g of it is 10 mg/L (w = c/(1000 D), by definition)', () => {
    for (const [grams, mgPerL] of [
      [1, 20],
      [0.5, 10],
    ] as const) {
      const litre = doseOf([pourOf(grams, 0.02)], drinkOf(1000 - grams, 1)); // made up to a litre
      expect(litre.volume.value).toBeCloseTo(1000, 9);
      expect(litre.mgPerL.value).toBeCloseTo(mgPerL, 9);
      expect(concentrateStrength(mgPerL, grams)).toBeCloseTo(0.02, 12);
    }
    expect(() => concentrateStrength(2000, 1)).toThrow('even the neat material gives less');
  });

  test('1 g of a concentrate of density 0.85 in a litre is 1.176 mL', () => {
    const dose = doseOf([pourOf(1, 0.02, 0.85)], drinkOf(1000, 1));
    expect(dose.volume.value - 1000).toBeCloseTo(1.176, 3);
  });

  test('1 mL of 95 % carrier in a litre brings 0.095 % ABV, 1 g brings 0.117 %, and 0.5 % is reached at 5.26 mL', () => {
    const carrier = 0.81138; // g/mL, 95 % vol at 20 °C, OIML R 22
    const litreWith = (ml: number) => doseOf([pourOf(ml * carrier, 0.01, carrier, 0.95)], drinkOf(1000 - ml, 1)); // made up to a litre
    expect(litreWith(1).abv.value).toBeCloseTo(0.095, 9);
    expect(litreWith(1 / carrier).abv.value).toBeCloseTo(0.117, 3);
    expect(litreWith(5.26).abv.value).toBeCloseTo(0.5, 2);
    expect(litreWith(5.27).abv.value).toBeGreaterThan(0.5);
    expect(litreWith(1).ethanolAdded.value).toBeCloseTo(0.95, 9);
  });

  test.each([
    ['60 mL of 40 % and 60 mL of 15 %', 60, 0.4, 60, 0.15, 27.55],
    ['50 mL of 40 % and 150 mL of water', 50, 0.4, 150, 0, 9.99],
  ])('%s: the average by volume is within 0.06 points of the OIML R 22 result', (_, v1, a1, v2, a2, r22) => {
    const dose = doseOf([pourOf(v1, 0, 1, a1)], drinkOf(v2, 1, a2)); // densities of 1, so that g are mL
    console.info(`${_}: ${dose.abv.value.toFixed(3)} % ABV by volume, ${r22} by OIML R 22`);
    expect(Math.abs(dose.abv.value - r22)).toBeLessThan(0.06);
    expect(dose.abv.value).toBeCloseTo((100 * (v1 * a1 + v2 * a2)) / (v1 + v2), 10);
  });

  test('1000 mL of 96 % and 1470.5 mL of water are 40 % by OIML R 22; the average by volume is 1.1 points low, as the docs warn', () => {
    const dose = doseOf([pourOf(1000, 0, 1, 0.96)], drinkOf(1470.5, 1));
    expect(40 - dose.abv.value).toBeCloseTo(1.14, 2);
  });

  test('up to 1 % of spirit in a drink: volume at most 0.1 % too large, % ABV at most 0.03 points low (OIML R 22)', () => {
    const litre = (abv: number, ml: number) => {
      const strength = ethanolMassFraction(volumeFraction(abv));
      const density = ethanolDensity(strength, celsius(20));
      return { mass: gram(ml * density), strength, density, abv };
    };
    const worst = { volume: 0, abv: 0 };
    for (const base of [0, 0.05, 0.1, 0.2, 0.3, 0.4])
      for (const strong of [0.7, 0.96, 1]) {
        const [drink, pour] = [litre(base, 1000), litre(strong, 10)];
        const dose = doseOf([pourOf(pour.mass, 0, pour.density, strong)], drinkOf(drink.mass, drink.density, base));
        const real = mixSpirits(drink, pour, celsius(20));
        const abv = 100 * ethanolVolumeFraction(real.strength);
        worst.volume = Math.max(worst.volume, Math.abs(dose.volume.value / real.volume - 1));
        worst.abv = Math.max(worst.abv, Math.abs(dose.abv.value - abv));
      }
    console.info(
      `1 % of spirit: volume ${(100 * worst.volume).toFixed(3)} %, ABV ${worst.abv.toFixed(4)} points from OIML R 22`,
    );
    expect(worst.volume).toBeLessThan(0.001);
    expect(worst.abv).toBeLessThan(0.03);
  });

  test('doses add up, and a blend is told material by material', () => {
    const blend: Pour = {
      mass: exact(0.2),
      contents: [
        { material: 'a', strength: exact(0.01) },
        { material: 'b', strength: exact(0.002) },
      ],
      density: ethanol96,
    };
    const dose = doseOf([pourOf(0.1, 0.01), blend], drinkOf(99.7, 1));
    expect(dose.materials.map(({ material }) => material)).toEqual(['a', 'b']);
    expect(dose.materials[0]!.mgPerKg.value).toBeCloseTo(30, 9);
    expect(dose.materials[1]!.mgPerKg.value).toBeCloseTo(4, 9);
    expect(dose.mgPerKg.value).toBeCloseTo(34, 9);
    expect(dose.mass.value).toBeCloseTo(100, 12);
  });

  test('a drink known by its volume weighs volume times density', () => {
    expect(drinkOfVolume(exact(200), gramPerMl(1.0423)).mass.value).toBeCloseTo(208.46, 10);
    expect(() => drinkOfVolume(exact(0), gramPerMl(1))).toThrow('more than 0 mL');
    expect(() => doseOf([pourOf(-1, 1)], drinkOf(100, 1))).toThrow('zero or more');
    expect(() => doseOf([pourOf(1, 1, 1, 1.2)], drinkOf(100, 1))).toThrow('0 to 100 % ABV');
    expect(() => doseOf([], drinkOf(0, 1))).toThrow('more than 0 g');
  });
});

describe('drops for a ppm', () => {
  test('the drops found, poured in, give the mg/kg promised; the exact drops give the target', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 10, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (ppm, strength, mgPerDrop, before) => {
          const [drink, present] = [gram(200), ppm * before];
          const found = dropsForPpm({ ppm, strength: massFraction(strength), mgPerDrop, drink, present });
          const held = pourOf(0.5, (present * drink) / 0.5 / 1e6);
          const after = (drops: number) =>
            doseOf([held, pourOf((drops * mgPerDrop) / 1000, strength)], drinkOf(drink - 0.5, 1)).mgPerKg.value;
          expect(after(found.exactDrops) / ppm).toBeCloseTo(1, 9);
          expect(after(found.drops) / found.mgPerKg).toBeCloseTo(1, 9);
          expect(found.error).toBeCloseTo(found.mgPerKg / ppm - 1, 9);
          expect(Number.isInteger(found.drops) && found.drops >= 1).toBe(true);
        },
      ),
    );
  });

  test('what cannot be is refused', () => {
    const vial = { strength: massFraction(0.01), mgPerDrop: 20, drink: gram(100) };
    expect(() => dropsForPpm({ ppm: 20_000, ...vial })).toThrow('cannot be made from it');
    expect(() => dropsForPpm({ ppm: 10, present: 12, ...vial })).toThrow('already as much in it');
    expect(() => dropsForPpm({ ppm: -1, ...vial })).toThrow('above zero');
  });
});

describe('the composition of a counted trial', () => {
  const drop = measured(0.02, 0.002, { id: 'dropper', words: 'calibration' }); // g

  test('drops of one calibration are right or wrong together: their shares have no doubt from it', () => {
    const lines = compositionOf([
      { material: 'a', active: scaled(drop, 3) },
      { material: 'b', active: scaled(drop, 1) },
      { material: 'a', active: scaled(drop, 4) },
    ]);
    expect(lines.map(({ material }) => material)).toEqual(['a', 'b']);
    expect(lines[0]!.share.value).toBeCloseTo(7 / 8, 12);
    expect(lines[1]!.share.value).toBeCloseTo(1 / 8, 12);
    for (const { share } of lines) expect(relativeUncertainty(share)).toBeLessThan(1e-12);
  });

  test('two calibrations do not cancel: u(share) = s(1 − s)·√2·u/m for equal halves', () => {
    const other = measured(0.02, 0.002, { id: 'other', words: 'calibration' });
    const [a, b] = compositionOf([
      { material: 'a', active: drop },
      { material: 'b', active: other },
    ]);
    expect(standardUncertainty(a!.share)).toBeCloseTo(0.25 * Math.SQRT2 * 0.1, 12);
    expect(standardUncertainty(b!.share)).toBeCloseTo(standardUncertainty(a!.share), 12);
  });

  test('an empty trial is refused', () => {
    expect(() => compositionOf([])).toThrow('nothing in the trial');
    expect(() => compositionOf([{ material: 'a', active: exact(-1) }])).toThrow('zero or more');
  });
});
