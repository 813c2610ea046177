import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tellResiduals } from '../residuals';
import {
  ethanolDensity,
  ethanolFromDensity,
  ethanolMassFraction,
  ethanolVolumeFraction,
  mixSpirits,
  waterToReduce,
} from '../../../src/core/liquid/ethanol';
import { celsius, gram, massFraction, volumeFraction } from '../../../src/core/number/units';
import { waterDensity } from '../../../src/core/liquid/water';
import table from '../../reference/oimlR22.json';
import published from '../../reference/spirit.json';

const at20 = celsius(20);
const kgPerM3 = (p: number, t: number) => ethanolDensity(massFraction(p), celsius(t)) * 1000;
const litre = (percent: number) => {
  const strength = ethanolMassFraction(volumeFraction(percent / 100));
  return { mass: gram(1000 * ethanolDensity(strength, at20)), strength };
};
const pour = (ml: number, percent: number) => ({ ...litre(percent), mass: gram((litre(percent).mass * ml) / 1000) });
const value = (id: string) => published.rows.find((row) => row.id === id)!.value as number;
const fraction = fc.double({ min: 0, max: 1, noNaN: true });
const room = fc.double({ min: 0, max: 40, noNaN: true });

test('spirit is as dense as OIML R 22 table I prints it, off 20 °C and off both axes', () => {
  const residuals = table.tableI.rows.map(([p, t, rho]) => Math.abs(kgPerM3(p! / 100, t!) - rho!));
  tellResiduals('Density of spirit, kg/m3 (OIML R 22, table I)', residuals);
  expect(residuals).toHaveLength(38);
  expect(table.tableI.rows.filter(([p, t]) => t !== 20 && p! > 0 && p! < 100).length).toBeGreaterThan(25);
  expect(Math.max(...residuals)).toBeLessThan(0.00501); // printed to 0.01
});

test('single digits of the temperature terms count: one cell each side of 20 °C fails if a C term is lost', () => {
  const flat = (p: number, t: number) => kgPerM3(p, 20) + kgPerM3(0, t) - kgPerM3(0, 20); // A and B terms alone
  for (const [p, t, rho] of table.tableI.rows.filter(([, t]) => t !== 20))
    expect(Math.abs(flat(p! / 100, t!) - rho!), `${p} %, ${t} °C`).toBeGreaterThan(0.1);
});

test('% vol, % mass and density agree with the OIML R 22 tables from 0 to 100 % vol', () => {
  const rows = table.abv.rows as number[][];
  const mass = rows.map(([q, p]) => Math.abs(ethanolMassFraction(volumeFraction(q! / 100)) * 100 - p!));
  const density = rows.flatMap(([q, , ...rhos]) =>
    [20, 15, 25].map((t, i) => Math.abs(kgPerM3(ethanolMassFraction(volumeFraction(q! / 100)), t) - rhos[i]!)),
  );
  tellResiduals('% mass by % vol (OIML R 22)', mass);
  tellResiduals('Density by % vol, kg/m3 (OIML R 22)', density);
  expect(Math.max(...mass)).toBeLessThan(0.000051);
  expect(Math.max(...density)).toBeLessThan(0.00051);
});

test('densities by % vol are those of a published dilution table (10 to 100 % vol, 20 °C)', () => {
  const printed = [10, 984.71, 20, 973.56, 30, 962.21, 40, 948.05, 50, 930.14, 60, 909.11, 70, 885.56, 80, 859.27];
  printed.push(90, 829.18, 95, 811.38, 96, 807.42, 97, 803.27, 100, 789.24);
  for (let i = 0; i < printed.length; i += 2) {
    const strength = ethanolMassFraction(volumeFraction(printed[i]! / 100));
    expect(Math.abs(kgPerM3(strength, 20) - printed[i + 1]!)).toBeLessThan(0.0051);
  }
});

test('50 mL of alcohol and 50 mL of water make 97 mL (USP, alcohol dilutum: 41–42 % w/w, 48.4–49.5 % vol)', () => {
  const alcohol = ethanolMassFraction(volumeFraction(0.949)); // USP alcohol, 94.9 % vol
  const mixed = mixSpirits(
    { mass: gram(50 * ethanolDensity(alcohol, at20)), strength: alcohol },
    { mass: gram(50 * ethanolDensity(massFraction(0), at20)), strength: massFraction(0) },
    at20,
  );
  expect(mixed.volume).toBeGreaterThan(96.9);
  expect(mixed.volume).toBeLessThan(97.2);
  expect(mixed.contraction).toBeCloseTo(100 - mixed.volume, 9);
  expect(mixed.strength).toBeGreaterThan(0.41);
  expect(mixed.strength).toBeLessThan(0.42);
  expect(ethanolVolumeFraction(mixed.strength)).toBeGreaterThan(0.484);
  expect(ethanolVolumeFraction(mixed.strength)).toBeLessThan(0.495);
});

test('the official gauging example: 1000 lb of 200 proof take 82.03 lb of water to 190 proof (27 CFR 30.64)', () => {
  const t = celsius((60 - 32) / 1.8); // US proof is defined at 60 °F
  const byVolume = (p: number) => (p * kgPerM3(p, t)) / kgPerM3(1, t);
  let [low, high] = [0.9, 1];
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (byVolume(middle) < 0.95) low = middle;
    else high = middle;
  }
  const water = waterToReduce({ mass: gram(1000), strength: massFraction(1) }, massFraction(low));
  expect(Math.abs(water - 82.03)).toBeLessThan(0.04); // 302.58/0.27964: the divisor is printed to 0.002 %, 0.02–0.04 lb
});

test('proof spirit: 100 volumes of absolute alcohol and 81.80 of water at 60 °F give 175.23 (Cooley)', () => {
  const t = celsius((60 - 32) / 1.8);
  const mixed = mixSpirits(
    { mass: gram(100 * ethanolDensity(massFraction(1), t)), strength: massFraction(1) },
    { mass: gram(81.8 * ethanolDensity(massFraction(0), t)), strength: massFraction(0) },
    t,
  );
  expect(mixed.volume).toBeCloseTo(175.23, 1);
  expect(mixed.strength).toBeCloseTo(0.4924, 3);
});

test('a litre of 96 % vol and 1467.9 g of water are 2.400 L of 40 % vol, 70.5 mL less than was poured', () => {
  const spirit = litre(96);
  const water = waterToReduce(spirit, ethanolMassFraction(volumeFraction(0.4)));
  expect(water).toBeCloseTo(1467.889, 3); // worked out by a second program
  const mixed = mixSpirits(spirit, { mass: water, strength: massFraction(0) }, at20);
  expect(mixed.volume).toBeCloseTo(2400, 1);
  expect(mixed.contraction).toBeCloseTo(70.534, 3);
});

test('no foreign water in a contraction: mixing water with water loses nothing', () => {
  const water = { mass: gram(100), strength: massFraction(0) };
  expect(mixSpirits(water, water, at20).contraction).toBeCloseTo(0, 12);
  const tanaka = waterDensity(at20);
  expect((tanaka - ethanolDensity(massFraction(0), at20)) * 1000).toBeCloseTo(0.0055, 4); // what a mix-up would cost
});

test('strength by mass, by volume and by density all come back to where they started', () => {
  fc.assert(
    fc.property(fraction, (p) => {
      expect(Math.abs(ethanolMassFraction(ethanolVolumeFraction(massFraction(p))) - p)).toBeLessThan(1e-9);
    }),
  );
  fc.assert(
    fc.property(fraction, room, (p, t) => {
      const density = ethanolDensity(massFraction(p), celsius(t));
      expect(ethanolDensity(ethanolFromDensity(density, celsius(t)), celsius(t))).toBeCloseTo(density, 12);
      if (t >= 10) expect(Math.abs(ethanolFromDensity(density, celsius(t)) - p)).toBeLessThan(1e-9);
    }),
  );
});

test('stronger spirit is lighter, and more of it by volume is more of it by mass', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), room, (p, t) => {
      expect(kgPerM3(p + 0.001, t)).toBeLessThan(kgPerM3(p, t));
      expect(ethanolVolumeFraction(massFraction(p + 0.001))).toBeGreaterThan(ethanolVolumeFraction(massFraction(p)));
    }),
  );
});

test('a mixture is never weaker or stronger than what went in, and never larger', () => {
  const mass = fc.double({ min: 0.01, max: 1000, noNaN: true });
  fc.assert(
    fc.property(mass, fraction, mass, fraction, (m1, p1, m2, p2) => {
      const mixed = mixSpirits(
        { mass: gram(m1), strength: massFraction(p1) },
        { mass: gram(m2), strength: massFraction(p2) },
        at20,
      );
      expect(mixed.strength).toBeGreaterThanOrEqual(Math.min(p1, p2) - 1e-12);
      expect(mixed.strength).toBeLessThanOrEqual(Math.max(p1, p2) + 1e-12);
    }),
  );
});

test('what is no spirit, too warm or too cold is refused in plain words', () => {
  expect(() => ethanolDensity(massFraction(1.01), at20)).toThrow('between 0 and 100 %');
  expect(() => ethanolDensity(massFraction(0.5), celsius(41))).toThrow('known for −20 to 40 °C, not for 41 °C');
  expect(() => ethanolFromDensity(1.2 as never, at20)).toThrow('weighs 0.7892 to 0.9982 g/mL');
  expect(() => waterToReduce(litre(40), massFraction(0.9))).toThrow('water brings');
});

test.each(published.rows.filter(({ id }) => id.startsWith('dil_')))(
  '$id takes $value g of water per litre (a second program: OIML R 22 general formula)',
  (row) => {
    const { from, to } = row.inputs as { from: number; to: number };
    const water = waterToReduce(litre(from), ethanolMassFraction(volumeFraction(to / 100)));
    expect(Math.abs(water - (row.value as number))).toBeLessThan(0.5);
  },
);

test('60 mL of 40 % and 60 mL of 15 % are 119.8 mL of 27.55 %; 50 mL of 40 % and 150 mL of water 9.99 % (a second program)', () => {
  const percent = (one: typeof even) => ethanolVolumeFraction(one.strength) * 100;
  const even = mixSpirits(pour(60, 40), pour(60, 15), at20);
  expect(Math.abs(percent(even) - value('cocktail_a'))).toBeLessThan(0.01);
  expect(even.volume).toBeCloseTo(119.8, 1);
  expect(Math.abs(percent(mixSpirits(pour(50, 40), pour(150, 0), at20)) - value('cocktail_b'))).toBeLessThan(0.011);
});
