import type { Factors, Nutrient } from '../../core/nutrition/energy';

const ANNEX = 'Reg. (EU) 1169/2011 Annex XIV, read as reproduced';
const CFR = '21 CFR 101.9(c)(1)(i), from memory, check';

interface FactorRow {
  readonly of: Nutrient;
  readonly euKj: number;
  readonly euKcal: number;
  readonly usKcal: number;
  readonly source: string;
  readonly usSource: string;
}

/** Energy per gram as each law gives it. */
export const energyFactors: readonly FactorRow[] = [
  { of: 'carbohydrate', euKj: 17, euKcal: 4, usKcal: 4, source: ANNEX, usSource: CFR },
  { of: 'polyol', euKj: 10, euKcal: 2.4, usKcal: 2.4, source: ANNEX, usSource: `${CFR}; each sugar alcohol has its own, 1.6 (mannitol) to 3.0 (starch hydrolysates): sorbitol 2.6, xylitol 2.4, maltitol 2.1, isomalt and lactitol 2.0; glycerol is not listed` },
  { of: 'erythritol', euKj: 0, euKcal: 0, usKcal: 0.2, source: ANNEX, usSource: CFR },
  { of: 'fibre', euKj: 8, euKcal: 2, usKcal: 2, source: ANNEX, usSource: CFR },
  { of: 'fat', euKj: 37, euKcal: 9, usKcal: 9, source: ANNEX, usSource: CFR },
  { of: 'protein', euKj: 17, euKcal: 4, usKcal: 4, source: ANNEX, usSource: CFR },
  { of: 'organic acid', euKj: 13, euKcal: 3, usKcal: 4, source: ANNEX, usSource: `${CFR}; there it is in total carbohydrate, by difference` },
  { of: 'ethanol', euKj: 29, euKcal: 7, usKcal: 7, source: ANNEX, usSource: 'general Atwater factor, from memory, check; 21 CFR 101.9 names none' },
];

function column(of: 'euKj' | 'euKcal' | 'usKcal'): Factors {
  return Object.fromEntries(energyFactors.map((row) => [row.of, row[of]])) as Factors;
}

/** kJ per gram, EU. */
export const euKj = column('euKj');
/** kcal per gram, EU. */
export const euKcal = column('euKcal');
/** kcal ("Calories") per gram, US. */
export const usKcal = column('usKcal');
