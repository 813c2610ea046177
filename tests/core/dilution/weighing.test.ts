import { expect, test } from 'vitest';
import { over, plus } from '../../../src/core/number/measured';
import { gram, gramPerMl } from '../../../src/core/number/units';
import { netMass, volumeWeighed } from '../../../src/core/dilution/weighing';
import { relativeUncertainty } from '../uncertainty';

const source = { id: 'w', words: 'weighing' };

test('a scale reads 0.105 % low for water and 0.137 % low for ethanol', () => {
  const inVacuum = (gPerMl: number) => volumeWeighed(gram(100), gramPerMl(gPerMl)) * gPerMl;
  expect(inVacuum(0.9982)).toBeCloseTo(100.105, 3);
  expect(inVacuum(0.78924)).toBeCloseTo(100.137, 3);
  expect(inVacuum(8)).toBeCloseTo(100, 9); // as dense as the weights: no lift left over
});

test('0.100 g net on a 0.01 g scale is good to 4.08 %, by its step alone (GUM F.2.2.1: d/√6)', () => {
  const net = netMass({ grossG: 12.34, tareG: 12.24, readabilityG: 0.01, repeatabilityG: 0 }, source);
  expect(net.value).toBeCloseTo(0.1, 12);
  expect(relativeUncertainty(net)).toBeCloseTo(0.040825, 6);
});

test.each([0.001, 0.01, 1])(
  'of a scale of %f g of which nothing more is known, one step is in doubt',
  (readabilityG) => {
    const net = netMass({ grossG: 100, tareG: 40, readabilityG }, source);
    expect(relativeUncertainty(net) * 60).toBeCloseTo(readabilityG, 12);
  },
);

test.each([
  [0.1, 9.9, 0.01, 0.106938],
  [0.1, 9.9, 0.001, 0.0106938],
  [0.5, 4.5, 0.01, 0.0195619],
])(
  '%f g and %f g of solvent on a %f g scale that scatters by its step: u is %f (GUM 5.1.2 by a second program)',
  (part, rest, d, u) => {
    const scale = { tareG: 0, readabilityG: d, repeatabilityG: d };
    const solute = netMass({ ...scale, grossG: part }, { id: 'solute', words: 'solute' });
    const solvent = netMass({ ...scale, grossG: rest }, { id: 'solvent', words: 'solvent' });
    expect(Math.abs(relativeUncertainty(over(solute, plus(solute, solvent))) - u)).toBeLessThan(1e-6 + u * 0.0005);
  },
);

test('a tare above the gross, a scale without step, a liquid lighter than air: refused in plain words', () => {
  expect(() => netMass({ grossG: 1, tareG: 2, readabilityG: 0.01 }, source)).toThrow('weigh less than nothing');
  expect(() => netMass({ grossG: 2, tareG: 1, readabilityG: 0 }, source)).toThrow('more than zero');
  expect(() => volumeWeighed(gram(1), gramPerMl(0.001))).toThrow('denser than air');
});
