import { describe, expect, test } from 'vitest';
import { casProblem } from '../../src/core/limits/cas';
import { densityAt20 } from '../../src/core/liquid/expansion';
import { exact } from '../../src/core/number/measured';
import { celsius } from '../../src/core/number/units';
import { oils } from '../../src/tables/catalogue/oils';
import type { CatalogueRow } from '../../src/tables/catalogue/row';
import { catalogueSources } from '../../src/tables/catalogue/sources';
import { substances } from '../../src/tables/catalogue/substances';
import { cautions } from '../../src/tables/cautions';
import { solvents } from '../../src/tables/solvents';
import { surfaceTensions } from '../../src/tables/surfaceTensions';

const rows: readonly CatalogueRow[] = [...substances, ...oils];
const row = (id: string) => rows.find((one) => one.id === id)!;

/** Every source id that is in a row. */
function sourcesOf(one: CatalogueRow): string[] {
  const cited = [one.cas, one.fema, one.melts, one.boils, one.flash, one.water].flatMap((pair) =>
    pair ? [pair[1]] : [],
  );
  return [
    ...cited,
    ...(one.density ? one.density[3].split(' + ') : []),
    ...(one.smellsBy ?? []),
    ...(one.thresholds ?? []).map((threshold) => threshold[5]),
    ...(one.cramer ? [one.cramer[1]] : []),
  ];
}

// Liquid densities at 20 °C of a second, independent source, g/mL: DIPPR 105 (Perry's 8th ed. table 2-32) or, where it has none, PPDS
// (VDI Heat Atlas). Coefficients as printed, evaluated once.
const second: Readonly<Record<string, number>> = {
  'ethyl-formate': 0.9219,
  'ethyl-acetate': 0.8995,
  'ethyl-propionate': 0.8888,
  'ethyl-butyrate': 0.8788,
  'ethyl-benzoate': 1.0468,
  'propyl-acetate': 0.8876,
  'butyl-acetate': 0.8809,
  'methyl-butyrate': 0.898,
  'methyl-benzoate': 1.0886,
  'methyl-salicylate': 1.1808,
  'hexan-1-ol': 0.8193, // PPDS: the row itself is DIPPR's
  'octan-1-ol': 0.8298,
  'isobutyl-alcohol': 0.8024,
  'isoamyl-alcohol': 0.8109,
  'benzyl-alcohol': 1.045,
  acetaldehyde: 0.781,
  heptanal: 0.818,
  octanal: 0.8217,
  nonanal: 0.8267,
  decanal: 0.8246,
  benzaldehyde: 1.0455,
  furfural: 1.1594,
  '2-heptanone': 0.8161,
  acetophenone: 1.0274,
  'dimethyl-sulfide': 0.8482,
  'dimethyl-disulfide': 1.0626,
  'acetic-acid': 1.0471,
  'propionic-acid': 0.9932,
  'butyric-acid': 0.9559,
  'hexanoic-acid': 0.9229,
  'octanoic-acid': 0.9076,
  ethanol: 0.7903,
  'propane-1-2-diol': 1.0364,
  glycerol: 1.2612,
};

/** The density of a row at 20 °C, with the mean expansion of aroma liquids: 1.0e-3/K. */
function at20(id: string): number {
  const [gPerMl, , atC] = row(id).density!;
  return densityAt20(exact(gPerMl), exact(0.001), celsius(atC)).value;
}

describe('the catalogue', () => {
  test('has 245 substances and 74 oils, each once', () => {
    expect([substances.length, oils.length]).toEqual([245, 74]);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(319);
  });

  test('carries only CAS numbers whose check digit fits', () => {
    const wrong = rows.filter(({ cas }) => cas && casProblem(cas[0]) !== null);
    expect(wrong.map(({ name }) => name)).toEqual([]);
    expect(rows.filter(({ cas }) => cas).length).toBe(245 + 72);
  });

  test('names a known source for every value', () => {
    const unknown = rows.flatMap(sourcesOf).filter((id) => !catalogueSources[id.startsWith('O-ISO:') ? 'O-ISO' : id]);
    expect(unknown).toEqual([]);
    const bare = rows.filter(({ smells, smellsBy = [] }) => smells && smellsBy.length < 2);
    expect(bare.map(({ name }) => name)).toEqual([]);
  });

  test.each(Object.entries(second))(
    '%s, brought to 20 °C, is within 0.15 %% of a second source or says so',
    (id, gPerMl) => {
      const [, halfWidth, , , words] = row(id).density!;
      const off = Math.abs(at20(id) / gPerMl - 1);
      const said = Number(/differs by ([\d.]+) %/.exec(words)?.[1] ?? 0) / 100;
      expect(off).toBeLessThan(said > 0 ? said + 0.0005 : 0.0015);
      expect(Math.abs(at20(id) - gPerMl)).toBeLessThan(halfWidth + 0.0001);
    },
  );

  test('has the temperature that the handbook prints beside a density, and 25 of 34 agree', () => {
    // CRC Handbook, Physical Constants of Organic Compounds, as printed: value and °C in the superscript.
    const printed = [
      ['benzaldehyde', 1.0401, 25],
      ['ethyl-butyrate', 0.8735, 25],
      ['ethyl-benzoate', 1.0415, 25],
      ['ethyl-propionate', 0.8843, 25],
      ['acetic-acid', 1.0446, 25],
      ['benzyl-alcohol', 1.0419, 24],
      ['decanal', 0.83, 15],
      ['hexyl-acetate', 0.8779, 15],
      ['isoamyl-acetate', 0.876, 15],
      ['d-limonene', 0.8411, 20],
    ] as const;
    for (const [id, gPerMl, atC] of printed) {
      const [value, , at] = row(id).density!;
      expect([id, value, at]).toEqual([id, gPerMl, atC]);
    }
    const agree = Object.entries(second).filter(([id, gPerMl]) => Math.abs(at20(id) / gPerMl - 1) < 0.0015);
    expect([Object.keys(second).length, agree.length]).toEqual([34, 25]);
  });

  test('benzyl alcohol is the same in the catalogue and among the solvents, and so are drops of what hangs from a tip', () => {
    const solvent = solvents.find(({ id }) => id === 'benzyl-alcohol')!;
    expect(Math.abs(at20('benzyl-alcohol') / solvent.density.value - 1)).toBeLessThan(0.0015);
    for (const id of ['benzaldehyde', 'ethyl-acetate', 'ethyl-butyrate', 'isoamyl-acetate']) {
      const hanging = surfaceTensions.find((one) => one.id === id)!;
      expect([id, Math.abs(at20(id) / hanging.density - 1) < 0.0015]).toEqual([id, true]);
    }
  });

  test('calls what melts at 30 °C and above a solid, and says of the rest that it is not sure', () => {
    for (const id of ['l-menthol', 'thymol', 'cinnamyl-alcohol', 'levulinic-acid', 'p-cresol'])
      expect([id, row(id).form[0]]).toEqual([id, 'solid']);
    const liquid = rows.filter(({ form, melts }) => melts && melts[0] >= 25 && form[0] === 'liquid');
    expect(liquid.map(({ name }) => name)).toEqual([]);
    expect(row('p-anisyl-acetate').form).toEqual([null, expect.stringContaining('melting point 84 °C')]);
  });

  test('gives no density for solids, and none where published ones disagree by more than 1 %', () => {
    expect(rows.filter(({ form, density }) => form[0] === 'solid' && density).map(({ name }) => name)).toEqual([]);
    for (const id of ['vanillin', 'maltol', 'geraniol', 'phenethyl-acetate']) expect(row(id).density).toBeUndefined();
    expect(row('geraniol').notes![0]).toContain('disagree');
  });

  test('puts limits of a standard around an oil: cardamom 0.919 to 0.936 relative to water (ISO 4733:1981)', () => {
    const [middle, halfWidth] = row('cardamom-oil').density!;
    expect((middle - halfWidth) / 0.99821).toBeCloseTo(0.919, 3);
    expect((middle + halfWidth) / 0.99821).toBeCloseTo(0.936, 3);
  });

  test('gives thresholds as ranges with their medium, lower end first', () => {
    const all = rows.flatMap(({ thresholds = [] }) => thresholds);
    expect(all.length).toBe(284);
    expect(all.every(([medium, , low, high]) => ['water', 'air'].includes(medium) && low > 0 && low <= high)).toBe(
      true,
    );
  });

  test('knows that a flash point up to 60 °C means flammable, and no other code than the cautions table has', () => {
    for (const { name, flash, care = [] } of rows)
      expect([name, care.includes('flammable')]).toEqual([name, flash !== undefined && flash[0] <= 60]);
    const codes = new Set(cautions.map(({ code }) => code));
    expect(rows.flatMap(({ care = [] }) => care).filter((code) => !codes.has(code))).toEqual([]);
  });
});
