import type { Figure } from '../core/limits/figure';

/** What a drink of little alcohol may be called. Alcohol law is local; the app only flags. */
export interface AbvTerm extends Figure {
  readonly jurisdiction: 'UK' | 'EU' | 'US';
  readonly term: string;
  /** % v/v, null where the rule has no number. */
  readonly maxAbv: number | null;
  /** True: strictly less than the number; false: not more than. */
  readonly below: boolean;
  readonly rule: string;
  readonly status: string;
}

/** Terms and their strengths. */
export const abvTerms: readonly AbvTerm[] = [
  { jurisdiction: 'UK', term: 'alcohol-free', maxAbv: 0.05, below: false, rule: 'not more than 0.05 % ABV', status: 'voluntary guidance', source: 'UK low alcohol descriptors guidance, as quoted', asOf: '', level: 'secondary', note: 'drinks up to 0.5 % from other countries are sold as alcohol free in the UK; a change to 0.5 % has been consulted on (from memory)' },
  { jurisdiction: 'UK', term: 'de-alcoholised', maxAbv: 0.5, below: false, rule: 'alcohol removed, not more than 0.5 % ABV; strength shown', status: 'voluntary guidance', source: 'UK low alcohol descriptors guidance, as quoted', asOf: '', level: 'secondary' },
  { jurisdiction: 'UK', term: 'low alcohol', maxAbv: 1.2, below: false, rule: 'not more than 1.2 % ABV; strength shown', status: 'voluntary guidance', source: 'UK low alcohol descriptors guidance, as quoted', asOf: '', level: 'secondary' },
  { jurisdiction: 'UK', term: 'non-alcoholic', maxAbv: null, below: false, rule: 'not to be used with a name commonly given to an alcoholic drink (exception communion wine)', status: 'voluntary guidance', source: 'UK low alcohol descriptors guidance, as quoted', asOf: '', level: 'secondary' },
  { jurisdiction: 'UK', term: "not 'alcohol' for licensing", maxAbv: 0.5, below: false, rule: 'at or below 0.5 % ABV at sale the drink is outside the Licensing Act', status: 'law', source: 'Licensing Act 2003, as quoted', asOf: '', level: 'secondary' },
  { jurisdiction: 'EU', term: 'de-alcoholised wine', maxAbv: 0.5, below: false, rule: 'not more than 0.5 % vol', status: 'law', source: 'Reg. 1308/2013 Art. 119 as amended by Reg. 2021/2117', asOf: '', level: 'secondary' },
  { jurisdiction: 'EU', term: 'partially de-alcoholised wine', maxAbv: null, below: false, rule: 'above 0.5 % vol and below the category minimum', status: 'law', source: 'Reg. 1308/2013 Art. 119 as amended by Reg. 2021/2117', asOf: '', level: 'secondary' },
  { jurisdiction: 'EU', term: 'alcohol-free (wine; proposal)', maxAbv: 0.5, below: false, rule: "proposal to allow 'alcohol-free' to 0.5 % and '0.0 %' to 0.05 %", status: 'proposal; check whether adopted', source: 'Commission proposal, as quoted', asOf: '', level: 'secondary' },
  { jurisdiction: 'EU', term: 'strength must be stated', maxAbv: 1.2, below: false, rule: 'drinks above 1.2 % vol must show the alcohol strength', status: 'law', source: 'Reg. 1169/2011 Art. 9(1)(k), 28', asOf: '', level: 'memory' },
  { jurisdiction: 'EU', term: "'alcohol-free' for other drinks", maxAbv: null, below: false, rule: 'no EU-wide definition; national rules differ', status: 'none', source: 'not read', asOf: '', level: 'memory' },
  { jurisdiction: 'US', term: 'non-alcoholic (malt beverage)', maxAbv: 0.5, below: true, rule: "only with the words 'contains less than 0.5 percent (or .5%) alcohol by volume'", status: 'law', source: 'former 27 CFR 7.26(c)', asOf: '', level: 'secondary', note: 'strictly LESS than 0.5' },
  { jurisdiction: 'US', term: 'alcohol free (malt beverage)', maxAbv: 0.0, below: false, rule: 'only if it contains no alcohol', status: 'law', source: 'former 27 CFR 7.26(d)', asOf: '', level: 'secondary' },
  { jurisdiction: 'US', term: 'low / reduced alcohol (malt beverage)', maxAbv: 2.5, below: true, rule: 'less than 2.5 % ABV', status: 'law', source: 'former 27 CFR 7.26(b)', asOf: '', level: 'secondary' },
  { jurisdiction: 'US', term: 'dealcoholized / alcohol-removed wine', maxAbv: 0.5, below: true, rule: 'less than 0.5 % with statement', status: 'agency policy', source: 'FDA CPG 510.400', asOf: '', level: 'primary' },
  { jurisdiction: 'US', term: 'wine or cider below 7 % ABV', maxAbv: 7, below: false, rule: 'label under FDA rules', status: 'agency policy', source: 'FDA CPG 510.450', asOf: '', level: 'primary' },
];
