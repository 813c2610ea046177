import { describe, expect, test } from 'vitest';
import { oils } from '../../src/tables/catalogue/oils';
import { substances } from '../../src/tables/catalogue/substances';
import published from '../reference/catalogue.json';

interface Published {
  readonly gPerMol: number | null;
  readonly gPerMl: readonly number[];
  readonly meltsC: number | null;
  readonly boilsC: number | null;
  readonly flashC: number | null;
  readonly waterMgPerL: number | null;
}
type Threshold = readonly [id: string, medium: string, low: number, high: number, unit: string, source: string];
type Limits = readonly [low: number, high: number, atC: number, source: string];

const ofSubstances = published.substances as unknown as Readonly<Record<string, Published>>;
const thresholds = published.thresholds as unknown as readonly Threshold[];
const ofOils = published.oils as unknown as Readonly<Record<string, readonly Limits[]>>;

const L_PER_MOL = 24.45; // of a gas at 25 °C and 101.325 kPa
const FACTORS: Readonly<Record<string, number>> = {
  'ug/L as µg/L': 1,
  'ug/L as µg/kg': 1, // in water
  'ug/kg as µg/kg': 1,
  'ppb as µg/kg': 1,
  'mg/L as µg/kg': 1000, // in water
  'mg/L as mg/L': 1,
  'ppm as µg/kg': 1000,
  'mg/m3 as mg/m³': 1,
};

describe('the catalogue says what was published', () => {
  test('melting, boiling and flash points, and what water holds, each as its source has it', () => {
    let checked = 0;
    for (const { id, melts, boils, flash, water } of substances) {
      const { meltsC, boilsC, flashC, waterMgPerL } = ofSubstances[id]!;
      const pairs = [[melts, meltsC], [boils, boilsC], [flash, flashC], [water, waterMgPerL]] as const; // prettier-ignore
      for (const [ours, theirs] of pairs) if (ours && ++checked) expect(ours[0], id).toBe(theirs);
    }
    expect(checked).toBeGreaterThan(600);
  });

  test('densities lie within 0.05 % of a printed value, with a ± of at most 1.3 %', () => {
    for (const { id, density } of substances) {
      if (!density) continue;
      const [ours, halfWidth] = density;
      const off = ofSubstances[id]!.gPerMl.map((theirs) => Math.abs(ours / theirs - 1));
      if (off.length > 0) expect(Math.min(...off), id).toBeLessThan(5e-4);
      expect(halfWidth, id).toBeGreaterThan(0);
      expect(halfWidth / ours, id).toBeLessThan(0.013);
    }
  });

  test('densities of oils are the middle of printed limits, with half their width', () => {
    for (const { id, density } of oils) {
      if (!density) continue;
      const [middle, halfWidth, atC] = density;
      const limits = ofOils[id]!;
      const isOne = (ours: number, theirs: readonly number[]) => theirs.some((one) => Math.abs(one - ours) < 2e-4);
      expect(
        isOne(
          middle - halfWidth,
          limits.map(([low]) => low),
        ),
        `${id}, low`,
      ).toBe(true);
      expect(
        isOne(
          middle + halfWidth,
          limits.map(([, high]) => high),
        ),
        `${id}, high`,
      ).toBe(true);
      expect(
        limits.map(([, , at]) => at),
        id,
      ).toContain(atC);
    }
  });

  test('thresholds of smelling are those of their source; what it has in ppm of air by volume is converted here', () => {
    let checked = 0;
    const compiled = new Set(thresholds.map(([, , , , , source]) => source));
    for (const { id, thresholds: ours = [] } of substances)
      for (const [medium, , low, high, unit, source] of ours) {
        if (!compiled.has(source)) continue;
        const found = thresholds.filter(([of, into, , , , by]) => of === id && into === medium && by === source);
        const isSame = found.some(([, , least, most, theirUnit]) => {
          const factor = factorOf(medium, `${theirUnit} as ${unit}`, id);
          return [low / least, high / most].every((ratio) => Math.abs(ratio / factor - 1) < 0.012);
        });
        expect(isSame, `${id}: ${medium} ${low} to ${high} ${unit}, ${source} of ${JSON.stringify(found)}`).toBe(true);
        checked++;
      }
    expect(checked).toBeGreaterThan(200);
  });
});

/** By how much a printed threshold is to be multiplied to have it in our unit; NaN where it cannot be. */
function factorOf(medium: string, units: string, id: string): number {
  if (medium === 'air' && units === 'ppm as mg/m³') return ofSubstances[id]!.gPerMol! / L_PER_MOL;
  return FACTORS[units] ?? NaN;
}
