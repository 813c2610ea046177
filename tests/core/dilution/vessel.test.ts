import { describe, expect, test } from 'vitest';
import { toleranceMl, volumeBy } from '../../../src/core/dilution/vessel';
import { dilutionOf } from '../../../src/core/dilution/dilution';
import { exact, plus, scaled, standardUncertainty } from '../../../src/core/number/measured';
import { vessels } from '../../../src/tables/vessels';
import { seeded } from '../seeded';

const of = (id: string) => vessels.find((one) => one.id === id)!;
const by = (id: string, mL: number, name = 'a') => volumeBy(of(id), mL, { id: name, words: 'solvent' });
const shared = (id: string, mL: number) => by(id, mL).sources.find((one) => one.id === `vessel:${id}`)!.u;

describe('tolerances as printed', () => {
  test.each([
    ['cylinder', 0.1], // 10 mL, class A
    ['cylinder 10 B', 0.2],
    ['cylinder 25 B', 0.34],
    ['cylinder 50 B', 0.5],
  ])('%s: ± %f mL at every mark (ASTM E1272-02 table 1)', (id, mL) => {
    expect(toleranceMl(of(id), 1)).toBe(mL);
    expect(toleranceMl(of(id), of(id).capacityMl)).toBe(mL);
  });

  test('syringes: 4 mL from one of 10 mL ± 0.19 mL, 0.4 mL from one of 1 mL ± 0.023 mL, half full ± 4 and ± 5 % (ISO 7886-1)', () => {
    expect(toleranceMl(of('syringe'), 4)).toBeCloseTo(0.19, 12);
    expect(toleranceMl(of('syringe 1'), 0.4)).toBeCloseTo(0.015 + 0.008, 12);
    expect(toleranceMl(of('syringe'), 5)).toBeCloseTo(0.2, 12);
    expect(toleranceMl(of('syringe 1'), 0.5)).toBeCloseTo(0.025, 12);
  });
});

describe('a volume measured', () => {
  test('the tolerance of a cylinder is absolute: 2 mL are known four times worse than 8', () => {
    expect(shared('cylinder', 2)).toBeCloseTo(0.1 / Math.sqrt(3), 12);
    expect(shared('cylinder', 8)).toBeCloseTo(0.1 / Math.sqrt(3), 12);
  });

  test('a filling twice counts twice, and its readings by the square root', () => {
    expect(shared('cylinder', 15)).toBeCloseTo(0.2 / Math.sqrt(3), 12);
    expect(shared('cylinder', 10)).toBeCloseTo(0.1 / Math.sqrt(3), 12); // full once
    const readings = by('cylinder', 25).sources.find(({ id }) => id === 'a:readings')!;
    expect(readings.u).toBeCloseTo((0.05 * Math.sqrt(3)) / Math.sqrt(3), 12);
    expect(shared('syringe', 12)).toBeCloseTo((0.4 + 0.17) / Math.sqrt(3), 12); // 10 mL ± 4 %, then 2 mL
  });

  test('two vials filled with one cylinder are right or wrong together (Monte Carlo)', () => {
    const vial = (name: string) =>
      dilutionOf([{ mass: exact(0.1), strength: exact(1) }], scaled(by('cylinder', 15, name), 0.80742)).strength;
    const both = plus(vial('a'), vial('b'));
    const random = seeded(4);
    const half = (width: number) => (2 * random() - 1) * width;
    const drawn = Array.from({ length: 40_000 }, () => {
      const off = 2 * half(0.1);
      const one = () => 0.1 / (0.1 + (15 + off + half(0.05) + half(0.05)) * 0.80742);
      return one() + one();
    });
    const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
    const sd = Math.sqrt(drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (drawn.length - 1));
    expect(Math.abs(standardUncertainty(both) / sd - 1)).toBeLessThan(0.02);
  });

  test('nothing is no volume', () => {
    expect(() => by('cylinder', 0)).toThrow('more than 0 mL');
  });
});
