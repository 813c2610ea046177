import { expect, test } from 'vitest';
import { over, plus, relativeUncertainty, standardUncertainty } from '../../../src/core/number/measured';
import { celsius, gram, gramPerMl } from '../../../src/core/number/units';
import { waterDensity } from '../../../src/core/liquid/water';
import {
  airDensity,
  massInVacuum,
  netMass,
  reading,
  volumeWeighed,
  zFactor,
} from '../../../src/core/dilution/weighing';
import table from '../../reference/zFactors.json';

const source = { id: 'w', words: 'weighing' };

test('every printed Z factor comes out, 15 to 30 °C and 800 to 1067 hPa', () => {
  const cells = table.rows as [number, [number, number][]][];
  const residuals = cells.flatMap(([t, row]) =>
    row.map(([pressure, z]) => Math.abs(zFactor(celsius(t), airDensity(celsius(t), pressure, 50)) - z)),
  );
  console.info(`residual Z factors max ${Math.max(...residuals).toExponential(2)} mL/g of ${residuals.length} cells`);
  expect(residuals).toHaveLength(186);
  expect(Math.max(...residuals)).toBeLessThan(6e-5); // 4 decimals, humidity of the printed table not stated
});

test('air of an ordinary room weighs 1.2 g per litre', () => {
  expect(airDensity(celsius(20), 1013, 50)).toBeCloseTo(0.0012, 5);
  expect(airDensity(celsius(20), 1013, 80)).toBeLessThan(airDensity(celsius(20), 1013, 20)); // damp air is lighter
});

test('a scale reads 0.105 % low for water and 0.137 % low for ethanol', () => {
  expect(massInVacuum(gram(100), waterDensity(celsius(20)))).toBeCloseTo(100.105, 3);
  expect(massInVacuum(gram(100), gramPerMl(0.78924))).toBeCloseTo(100.137, 3);
  expect(massInVacuum(gram(100), gramPerMl(8))).toBeCloseTo(100, 9); // as dense as the weights: no lift left over
});

test('volume, density and mass belong together', () => {
  const density = gramPerMl(1.0361);
  expect(volumeWeighed(gram(10), density) * density).toBeCloseTo(massInVacuum(gram(10), density), 12);
});

test('0.100 g net on a 0.01 g scale is good to 4.08 %, by its step alone (GUM F.2.2.1: d/√6)', () => {
  const net = netMass({ grossG: 12.34, tareG: 12.24, readabilityG: 0.01 }, source);
  expect(net.value).toBeCloseTo(0.1, 12);
  expect(relativeUncertainty(net)).toBeCloseTo(0.040825, 6);
});

test('one reading alone has d/(2√3) of doubt, gross and tare together are two of them', () => {
  const one = reading(gram(5), 0.01, source);
  expect(standardUncertainty(one)).toBeCloseTo(0.01 / Math.sqrt(12), 12);
  const two = plus(one, reading(gram(1), 0.01, { id: 'x', words: 'tare' }));
  const net = netMass({ grossG: 5, tareG: 1, readabilityG: 0.01 }, source);
  expect(standardUncertainty(two)).toBeCloseTo(standardUncertainty(net), 12);
});

test.each([
  [0.1, 9.9, 0.01, 0.106938],
  [0.1, 9.9, 0.001, 0.0106938],
  [0.5, 4.5, 0.01, 0.0195619],
])('%f g and %f g of solvent on a %f g scale that scatters by its step: u is the published %f', (part, rest, d, u) => {
  const scale = { tareG: 0, readabilityG: d, repeatabilityG: d };
  const solute = netMass({ ...scale, grossG: part }, { id: 'solute', words: 'solute' });
  const solvent = netMass({ ...scale, grossG: rest }, { id: 'solvent', words: 'solvent' });
  expect(Math.abs(relativeUncertainty(over(solute, plus(solute, solvent))) - u)).toBeLessThan(1e-6 + u * 0.0005);
});

test('a tare above the gross, a scale without step, air nobody measured: refused in plain words', () => {
  expect(() => netMass({ grossG: 1, tareG: 2, readabilityG: 0.01 }, source)).toThrow('weigh less than nothing');
  expect(() => netMass({ grossG: 2, tareG: 1, readabilityG: 0 }, source)).toThrow('more than zero');
  expect(() => airDensity(celsius(5), 1013, 50)).toThrow('known for 15–30 °C, not for 5 °C');
  expect(() => airDensity(celsius(20), 500, 50)).toThrow('800–1067 hPa');
  expect(() => volumeWeighed(gram(1), gramPerMl(0.001))).toThrow('denser than air');
});
