import { expect, test } from 'vitest';
import { ethanolDensity, ethanolMassFraction } from '../../src/core/liquid/ethanol';
import { waterDensity } from '../../src/core/liquid/water';
import { standardUncertainty } from '../../src/core/number/measured';
import { celsius, volumeFraction } from '../../src/core/number/units';
import { settings } from '../../src/records/kind/settings';
import { shelf, takeIn } from '../../src/records/shelf';
import { materialDensity } from '../../src/workshop/materialDensity';
import { roomC, solventsOnHand } from '../../src/workshop/onHand';

const now = (id: string) => solventsOnHand().find((one) => one.id === id)!.now;

test.each([5, 12, 35, 40])('at %i °C every solvent has its density, water and spirit by their own laws', (t) => {
  takeIn([Object.assign({}, shelf.settings.value, { roomC: t })]);
  expect(now('water').value).toBeCloseTo(waterDensity(celsius(t)), 5); // Tanaka 2001
  const spirit = ethanolDensity(ethanolMassFraction(volumeFraction(0.96)), celsius(t)); // OIML R 22
  expect(Math.abs(now('ethanol-96').value / spirit - 1)).toBeLessThan(5e-5);
  for (const { now } of solventsOnHand()) expect(standardUncertainty(now)).toBeGreaterThan(0);
});

test('a room outside 5 to 40 °C is refused on the way in, and one that is there all the same stops nothing', () => {
  const held = { ...shelf.settings.value, roomC: 55 };
  expect(settings.schema.safeParse(held).success).toBe(false);
  expect(settings.schema.safeParse({ ...held, roomC: 40 }).success).toBe(true);
  takeIn([held]);
  expect(roomC()).toBe(40);
  expect(now('triacetin').value).toBeGreaterThan(1);
});

test('a density that was read at 25 °C serves at 20 °C, with what its expansion is not known to', () => {
  const printed = { gPerMl: 1.0401, halfWidth: 0.0005, atC: 25, source: 'CRC Handbook' };
  const at20 = materialDensity(printed, 'b');
  expect(Math.abs(at20.value - 1.0455)).toBeLessThan(0.0004); // benzaldehyde, PPDS (VDI Heat Atlas)
  expect(at20.sources.map(({ id }) => id)).toEqual(['density:b', 'expansion:b']);
  expect(materialDensity({ ...printed, atC: 20 }, 'b').value).toBe(1.0401);
});
