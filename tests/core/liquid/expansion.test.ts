import { expect, test } from 'vitest';
import { densityAt, densityAt20 } from '../../../src/core/liquid/expansion';
import { exact, measured, standardUncertainty } from '../../../src/core/number/measured';
import { ethanolDensity, ethanolMassFraction } from '../../../src/core/liquid/ethanol';
import { celsius, volumeFraction } from '../../../src/core/number/units';
import { solvents } from '../../../src/tables/solvents';

const of = (id: string) => solvents.find((row) => row.id === id)!;
const at = (id: string, t: number) => {
  const { density, expansionPerK } = of(id);
  return densityAt(exact(density.value), exact(expansionPerK.value), celsius(t)).value;
};

test.each([
  ['propylene-glycol', 1.0326, 'DIPPR'],
  ['glycerol', 1.2581, 'PPDS'],
  ['benzyl-alcohol', 1.0414, 'Azizian & Bashavard 2005'],
  ['ethanol-absolute', 0.78495, 'OIML R 22'],
  ['ethanol-96', 0.80308, 'OIML R 22'],
])('%s at 25 °C is %f g/mL (%s), within what its 20 °C value is good for', (id, printed) => {
  expect(Math.abs(at(id, 25) - printed)).toBeLessThan(0.0006);
});

test('at 20 °C nothing changes, warmer is lighter, and the doubt of both numbers is carried on', () => {
  expect(at('triacetin', 20)).toBe(of('triacetin').density.value);
  expect(at('triacetin', 25)).toBeLessThan(at('triacetin', 15));
  const doubtful = densityAt(
    measured(1, 0.001, { id: 'ρ', words: 'density' }),
    measured(0.001, 0.0001, { id: 'β', words: 'expansion' }),
    celsius(30),
  );
  expect(doubtful.sources.map(({ id }) => id)).toEqual(['ρ', 'β']);
  expect(standardUncertainty(doubtful)).toBeCloseTo(Math.hypot(0.001 / 1.01, 0.001 / 1.01 ** 2), 12);
});

test('far from 20 °C the density is refused in plain words', () => {
  expect(() => at('triacetin', 41)).toThrow('good for 5–40 °C, not for 41 °C');
  expect(() => densityAt20(exact(1), exact(0.001), celsius(4))).toThrow('5–40 °C');
});

test('at 5 and 40 °C the expansion of ethanol is within 0.1 % of OIML R 22', () => {
  for (const t of [5, 40]) {
    const printed = ethanolDensity(ethanolMassFraction(volumeFraction(0.96)), celsius(t));
    expect(Math.abs(at('ethanol-96', t) / printed - 1)).toBeLessThan(0.001);
  }
});

test('a density printed at 25 °C comes back to 20 °C, with what the expansion is not known to', () => {
  const back = densityAt20(
    measured(1.0401, 0.0002, { id: 'ρ', words: 'density' }), // benzaldehyde, CRC Handbook, 25 °C
    measured(0.001, 0.0002, { id: 'β', words: 'expansion' }),
    celsius(25),
  );
  expect(Math.abs(back.value - 1.0455)).toBeLessThan(0.0004); // PPDS, VDI Heat Atlas, 20 °C
  expect(densityAt(back, exact(0.001), celsius(25)).value).toBeCloseTo(1.0401, 12);
  expect(standardUncertainty(back)).toBeCloseTo(Math.hypot(0.0002 * 1.005, 1.0401 * 5 * 0.0002), 12);
});
