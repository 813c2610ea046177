import { describe, expect, test } from 'vitest';
import { vialSet, type SetItem } from '../../../src/core/dilution/vialSet';
import { gramPerMl, massFraction, millilitre } from '../../../src/core/number/units';

const ethanol96 = gramPerMl(0.80742); // 96 % vol at 20 °C, OIML R 22
const items: SetItem[] = Array.from({ length: 8 }, (_, i) => ({
  id: `m${i}`,
  density: gramPerMl(0.84 + 0.04 * i),
  purity: massFraction(1),
  mgPerDrop: i === 7 ? null : 20 + i,
}));
const wanted = {
  strength: { value: 1, basis: '% w/v' as const },
  volume: millilitre(10),
  solventDensity: ethanol96,
};

describe('a set of vials at once', () => {
  const set = vialSet(items, wanted);

  test('eight at 1 % w/v, 10 mL, take 0.1 g of each material and nearly 79 mL of solvent', () => {
    for (const { source } of set.vials) expect(source).toBeCloseTo(0.1, 12);
    const displaced = items.reduce((sum, { density }) => sum + 0.1 / (density as number), 0);
    expect(set.solventVolume).toBeCloseTo(80 - displaced, 9);
    expect(set.solvent).toBeCloseTo((80 - displaced) * 0.80742, 9);
  });

  test('the drops of all vials are counted, the solid is weighed', () => {
    expect(set.vials.map(({ drops }) => drops?.drops)).toEqual([5, 5, 5, 4, 4, 4, 4, undefined]);
    expect(set.drops).toBe(31);
    expect(set.weighed).toBeCloseTo(0.1, 12);
    for (const { drops, solvent } of set.vials.filter((vial) => vial.drops))
      expect(Math.abs(drops!.drops - drops!.exactDrops)).toBeLessThanOrEqual(0.5 + 1e-3 * solvent);
  });

  test('one that is too weak to begin with is refused', () => {
    const weak = { ...items[0]!, purity: massFraction(0.005) };
    expect(() => vialSet([weak], wanted)).toThrow('cannot be made from it');
    expect(() => vialSet(items, { ...wanted, volume: millilitre(0) })).toThrow('more than 0 mL');
  });
});
