import type { Figure, LimitRow } from '../core/limits/figure';

/**
 * What carries a flavour: rules that the tables of the EU and the US do not hold yet, and where each carrier is named. The
 * consolidated Annex III Part 4 of Reg. (EC) 1333/2008 could not be read here: these rows are from memory, so none is green.
 */

/** Highest amounts of carriers in a drink, beside those of tables/limitsEu.ts and tables/limitsUs.ts. */
export const limitsCarriers: readonly LimitRow[] = [
  { jurisdiction: 'EU', what: 'benzyl alcohol (E 1519)', cas: ['100-51-6'], max: 100, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'liqueur', outside: 'ask', source: 'Reg. (EC) 1333/2008 Annex III Part 4', asOf: '', level: 'memory', note: 'as a carrier only liqueurs, aromatised wines and their cocktails are named, at 100 mg/L; as a flavouring substance it has no number' },
];

/** Where a carrier is named, and the number that each list gives for a drink. */
export interface CarrierRow extends Figure {
  readonly cas: string;
  readonly eNumber: string;
  /** In a drink in the EU, in words; the numbers themselves are rows of limits. */
  readonly eu: string;
  /** Section of 21 CFR, with what it says of amounts. */
  readonly us: string;
}

/** By CAS number. US sections of triacetin, triethyl citrate and benzyl alcohol are from memory. */
export const carriers: readonly CarrierRow[] = [
  { cas: '57-55-6', eNumber: 'E 1520', eu: '1000 mg/L from all sources, cream liqueurs excepted', us: '21 CFR 184.1666', source: 'Reg. (EC) 1333/2008 Annex III Part 4', asOf: '', level: 'memory' },
  { cas: '102-76-1', eNumber: 'E 1518', eu: '3000 mg/kg together with E 1505, E 1517, E 1520', us: '21 CFR 184.1901, good practice', source: 'Reg. (EC) 1333/2008 Annex III Part 4', asOf: '', level: 'memory' },
  { cas: '77-93-0', eNumber: 'E 1505', eu: '3000 mg/kg together with E 1517, E 1518, E 1520', us: '21 CFR 184.1911, good practice', source: 'Reg. (EC) 1333/2008 Annex III Part 4', asOf: '', level: 'memory' },
  { cas: '25395-31-7', eNumber: 'E 1517', eu: '3000 mg/kg together with E 1505, E 1518, E 1520', us: '', source: 'Reg. (EC) 1333/2008 Annex III Part 4', asOf: '', level: 'memory' },
  { cas: '100-51-6', eNumber: 'E 1519', eu: '100 mg/L, named for liqueurs, aromatised wines and their cocktails only', us: '21 CFR 172.515, minimum quantity', source: 'Reg. (EC) 1333/2008 Annex III Part 4', asOf: '', level: 'memory' },
];
