import { expect, test } from 'vitest';
import { dilutionOf } from '../../../src/core/dilution/dilution';
import { exact, standardUncertainty } from '../../../src/core/number/measured';
import { newRecord } from '../../../src/records/shelf';
import { purityOf } from '../../../src/workshop/thing/purity';
import { seeded } from '../../core/seeded';

const substance = newRecord('material', {
  name: 'linalool',
  code: 'LINA',
  sort: 'substance',
  form: 'liquid',
  cautions: [],
});
const bottle = newRecord('bottle', { material: substance.id, supplier: '', lot: 'L1', grade: 'fit for drinks' });

test('a single substance without a certificate is sold as at least 95 %: 97.5 ± 1.44 % (u)', () => {
  const purity = purityOf(bottle, substance);
  expect(purity.value).toBeCloseTo(0.975, 12);
  expect(standardUncertainty(purity)).toBeCloseTo(0.025 / Math.sqrt(3), 12); // GUM 4.3.7
  expect(purity.sources).toMatchObject([{ id: 'purity:L1', words: 'purity, not typed: sold as at least 95 %' }]);
});

test('what the Union list asks of it goes before that, and a certificate before both', () => {
  const listed = { ...substance, soldAtLeast: 0.85 };
  expect(purityOf(bottle, listed).value).toBeCloseTo(0.925, 12);
  expect(purityOf(bottle, { ...listed, purity: 0.9 }).value).toBeCloseTo(0.95, 12);
  const certified = purityOf({ ...bottle, purity: 0.99 }, { ...listed, purity: 0.9 });
  expect(certified.value).toBeCloseTo(0.995, 12);
  expect(certified.sources[0]!.words).toBe('purity of the material');
  expect(purityOf({ ...bottle, purity: 1 }, listed)).toEqual(exact(1));
});

test('an oil is itself, and two bottles of one lot are right or wrong together', () => {
  expect(purityOf(bottle, { ...substance, sort: 'natural' })).toEqual(exact(1));
  expect(purityOf(bottle, undefined)).toEqual(exact(1));
  const other = { ...bottle, id: 'other' };
  expect(purityOf(other, substance).sources[0]!.id).toBe(purityOf(bottle, substance).sources[0]!.id);
});

test('its part in the ± of a vial is what drawing purities from the range gives (Monte Carlo)', () => {
  const { strength } = dilutionOf([{ mass: exact(0.2), strength: purityOf(bottle, substance) }], exact(19.8));
  const draw = seeded(17);
  const drawn = Array.from({ length: 40_000 }, () => (0.2 * (0.95 + 0.05 * draw())) / 20);
  const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
  const sd = Math.sqrt(drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (drawn.length - 1));
  expect(Math.abs(strength.value / mean - 1)).toBeLessThan(0.0005);
  expect(Math.abs(standardUncertainty(strength) / sd - 1)).toBeLessThan(0.02);
});
