import { describe, expect, test } from 'vitest';
import { casProblem } from '../../src/core/limits/cas';
import { oils } from '../../src/tables/catalogue/oils';
import type { CatalogueRow } from '../../src/tables/catalogue/row';
import { catalogueSources } from '../../src/tables/catalogue/sources';
import { substances } from '../../src/tables/catalogue/substances';
import { cautions } from '../../src/tables/cautions';

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

// DIPPR 105 liquid densities at 20 °C (Perry) or PPDS (VDI Heat Atlas), g/mL: a second, independent source for rows taken from
// the CRC Handbook. Read as printed coefficients, computed once; they agree with the CRC value within 1 %.
const second = {
  'ethyl-formate': 0.9219,
  'ethyl-acetate': 0.8995,
  'ethyl-butyrate': 0.8788,
  'ethyl-benzoate': 1.0468,
  'butyl-acetate': 0.8809,
  'methyl-salicylate': 1.1808,
  'hexan-1-ol': 0.8196,
  'benzyl-alcohol': 1.045,
  octanal: 0.8217,
  nonanal: 0.8267,
  decanal: 0.8246,
  benzaldehyde: 1.0455,
  furfural: 1.1594,
  acetophenone: 1.0274,
  'acetic-acid': 1.0471,
  'butyric-acid': 0.9559,
  'octanoic-acid': 0.9076,
  'propane-1-2-diol': 1.0364,
};

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
    '%s has the density of a second source, within its own width or 1 %%',
    (id, gPerMl) => {
      const [value, halfWidth] = row(id).density!;
      expect(Math.abs(value - gPerMl)).toBeLessThanOrEqual(halfWidth + 1e-9);
      expect(Math.abs(value / gPerMl - 1)).toBeLessThan(0.01);
    },
  );

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
