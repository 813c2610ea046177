import { expect, test } from 'vitest';
import { ethanolDensity, ethanolMassFraction } from '../../src/core/liquid/ethanol';
import { hangingDropMg, tipRadiusMm } from '../../src/core/drop/dropTransfer';
import { celsius, volumeFraction } from '../../src/core/number/units';
import { solvents } from '../../src/tables/solvents';
import { surfaceTensions } from '../../src/tables/surfaceTensions';
import { typicalDrops } from '../../src/tables/typicalDrops';

test('every number of a solvent has a source and a half-width, and ids are unique', () => {
  for (const row of solvents)
    for (const number of [row.density, row.expansionPerK, row.water, row.ethanol, row.flashPointC]) {
      if (!number) continue;
      expect(number.source.length, row.id).toBeGreaterThan(5);
      expect(number.halfWidth, row.id).toBeGreaterThanOrEqual(0);
      if (/not confirmed/.test(number.source) && !/OIML|CRC/.test(number.source))
        expect(number.verified, row.id).toBe(false);
    }
  expect(new Set(solvents.map(({ id }) => id)).size).toBe(solvents.length);
});

test('the ethanol rows are those of OIML R 22', () => {
  for (const [id, percent] of [
    ['ethanol-96', 96],
    ['ethanol-95', 95],
    ['ethanol-70', 70],
    ['ethanol-40', 40],
    ['ethanol-absolute', 100],
  ] as const) {
    const strength = ethanolMassFraction(volumeFraction(percent / 100));
    const row = solvents.find((each) => each.id === id)!;
    expect(Math.abs(row.density.value - ethanolDensity(strength, celsius(20)))).toBeLessThan(0.000006);
    expect(Math.abs(row.ethanol.value - strength)).toBeLessThan(row.ethanol.halfWidth + 1e-12);
    expect(row.ethanol.value + row.water.value).toBeCloseTo(1, 4);
    const grown = (ethanolDensity(strength, celsius(15)) / ethanolDensity(strength, celsius(25)) - 1) / 10;
    expect(Math.abs(row.expansionPerK.value - grown), id).toBeLessThan(2 * row.expansionPerK.halfWidth);
  }
});

test('the drop of a spirit follows from its strength', () => {
  const classOf = (id: string) => solvents.find((row) => row.id === id)!.liquid;
  expect(['ethanol-absolute', 'ethanol-96', 'ethanol-95', 'ethanol-70'].map(classOf)).toEqual(Array(4).fill('ethanol'));
  expect(classOf('ethanol-40')).toBe('dilute spirit');
  const widest = typicalDrops.find(({ liquid }) => liquid === 'unknown')!;
  for (const { meanMg, halfWidthMg } of typicalDrops) {
    expect(meanMg - halfWidthMg).toBeGreaterThanOrEqual(widest.meanMg - widest.halfWidthMg);
    expect(meanMg + halfWidthMg).toBeLessThanOrEqual(widest.meanMg + widest.halfWidthMg);
  }
});

test('isopropanol and anything denatured are smell only, and what flashes below 60 °C is flammable', () => {
  const smellOnly = solvents.filter(({ foodGradePossible }) => !foodGradePossible).map(({ id }) => id);
  expect(smellOnly).toEqual(['ethanol-denatured', 'isopropanol-99']);
  for (const { flammable, flashPointC } of solvents)
    expect(flammable).toBe(flashPointC !== null && flashPointC.value <= 60);
});

test('every solvent has a typical drop, wide enough for the droppers people own', () => {
  for (const { liquid, id } of solvents)
    expect(
      typicalDrops.some((row) => row.liquid === liquid),
      id,
    ).toBe(true);
  for (const row of typicalDrops) {
    expect(row.uMg).toBeCloseTo(row.halfWidthMg / Math.sqrt(3), 12);
    expect(row.halfWidthMg / row.meanMg, row.liquid).toBeGreaterThan(0.25);
    expect(row.source.length).toBeGreaterThan(20);
  }
});

test('four typical drops of a neat oil in 15 mL are nearer 0.7 % than the 1.07 % of twenty drops to the millilitre', () => {
  const { meanMg } = typicalDrops.find(({ liquid }) => liquid === 'neat oil')!;
  const percent = ((4 * meanMg) / 1000 / 15) * 100;
  expect(percent).toBeGreaterThan(0.6);
  expect(percent).toBeLessThan(0.75);
});

test('the drop that physics predicts from a 50 mg dropper lies within the typical range of its class', () => {
  const radius = tipRadiusMm(50, 72.74, 0.9982);
  for (const row of surfaceTensions) {
    const solvent = solvents.find(({ id }) => id === row.id);
    const typical = typicalDrops.find(({ liquid }) => liquid === (solvent?.liquid ?? 'neat oil'))!;
    if (/acetate|butyrate/.test(row.id)) continue; // light esters drop like ethanol: 15–16 mg
    const mg = hangingDropMg(radius, row.surfaceTension.value, row.density);
    expect(Math.abs(mg - typical.meanMg), row.id).toBeLessThanOrEqual(typical.halfWidthMg + 0.1);
  }
});
