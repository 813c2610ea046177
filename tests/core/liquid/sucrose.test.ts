import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tellResiduals } from '../residuals';
import { sucroseDensity, sucroseFromDensity } from '../../../src/core/liquid/sucrose';
import { celsius, massFraction } from '../../../src/core/number/units';
import table from '../../reference/sucroseDensity.json';

const kgPerM3 = (brix: number, t: number) => sucroseDensity(massFraction(brix / 100), celsius(t)) * 1000;
const largest = (numbers: number[]) => Math.max(...numbers.map(Math.abs));

test('syrup is as dense as the CRC table prints it at 20 °C', () => {
  const residuals = table.crc.rows.map(([brix, rho]) => ({ brix: brix!, off: kgPerM3(brix!, 20) - rho! }));
  const upTo = (limit: number) => largest(residuals.filter(({ brix }) => brix <= limit).map(({ off }) => off));
  tellResiduals(
    'Density of syrup, kg/m3 (CRC)',
    residuals.map(({ off }) => off),
  );
  // printed to 0.1; the CRC numbers descend from Plato (1900) and lie lower at the top than the later formula
  expect(upTo(32)).toBeLessThan(0.1);
  expect(upTo(68)).toBeLessThan(0.3);
  expect(upTo(84)).toBeLessThan(0.85);
});

test('a gallon of syrup weighs in air what NBS Circular 457 prints, 10 to 30 °C', () => {
  const gallon = 3785.411784; // mL, exact
  const air = 0.0012; // g/mL
  const residuals = table.nbs.rows.flatMap(([brix, grams]) =>
    table.nbs.temperatures.map((t, i) => {
      const density = kgPerM3(brix as number, t) / 1000;
      const shown = (gallon * (density - air)) / (1 - air / 8.4); // brass weights, 8.4 g/mL
      return ((shown - (grams as number[])[i]!) / gallon) * 1000;
    }),
  );
  tellResiduals('Density of syrup, kg/m3 (NBS Circular 457)', residuals);
  expect(residuals).toHaveLength(85);
  expect(largest(residuals.slice(0, 35))).toBeLessThan(0.2); // to 30 °Brix; printed to 1 g, 0.13 kg/m3 either way
  expect(largest(residuals.slice(0, 75))).toBeLessThan(0.5); // to 70 °Brix
  expect(largest(residuals)).toBeLessThan(0.75); // to 80 °Brix, where the older table lies lower, as the CRC one does
});

test('850 g of sugar made up to a litre is a syrup of 64.7 °Brix and above 1.30 (USP–NF Syrup)', () => {
  const w = sucroseFromDensity((850 / 0.6467 / 1000) as never, celsius(20));
  expect(w * 100).toBeCloseTo(64.67, 1);
  expect(kgPerM3(64.67, 20) / 998.2).toBeGreaterThan(1.3);
});

test('syrup comes back from density to °Brix, and sweeter is denser', () => {
  const brix = fc.double({ min: 0, max: 83.9, noNaN: true });
  const room = fc.double({ min: 10, max: 30, noNaN: true });
  fc.assert(
    fc.property(brix, room, (bx, t) => {
      const density = sucroseDensity(massFraction(bx / 100), celsius(t));
      expect(Math.abs(sucroseFromDensity(density, celsius(t)) - bx / 100)).toBeLessThan(1e-9);
      expect(kgPerM3(bx + 0.1, t)).toBeGreaterThan(kgPerM3(bx, t));
    }),
  );
});

test('syrup stronger, colder or warmer than the tables is refused in plain words', () => {
  expect(() => sucroseDensity(massFraction(0.9), celsius(20))).toThrow('known for 0–84 °Brix, not for 90 °Brix');
  expect(() => sucroseDensity(massFraction(0.5), celsius(60))).toThrow('known for 10–30 °C, not for 60 °C');
  expect(() => sucroseFromDensity(0.8 as never, celsius(20))).toThrow('sucrose in water at 20 °C weighs');
});
