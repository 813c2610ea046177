import type { Figure } from '../core/limits/figure';

/** A food additive or food of which an authority said that no number is needed, or which a list allows quantum satis. */
export interface NeedlessRow extends Figure {
  readonly cas: string;
  readonly name: string;
}

/**
 * Left out of the threshold of concern: a line that says "no figure found" for citric acid is noise. Limits and intakes that
 * other tables hold for them still count.
 */
export const needless: readonly NeedlessRow[] = [
  { cas: '77-92-9', name: 'citric acid (E 330)', source: 'Reg. (EC) 1333/2008 Annex II, group I: quantum satis', asOf: '', level: 'memory' },
  { cas: '5949-29-1', name: 'citric acid monohydrate (E 330)', source: 'Reg. (EC) 1333/2008 Annex II, group I: quantum satis', asOf: '', level: 'memory' },
  { cas: '6915-15-7', name: 'malic acid (E 296)', source: 'Reg. (EC) 1333/2008 Annex II, group I: quantum satis', asOf: '', level: 'memory' },
  { cas: '87-69-4', name: 'tartaric acid (E 334)', source: 'Reg. (EC) 1333/2008 Annex II, group I: quantum satis', asOf: '', level: 'memory' },
  { cas: '9000-01-5', name: 'gum arabic (E 414)', source: 'Reg. (EC) 1333/2008 Annex II, group I: quantum satis', asOf: '', level: 'memory' },
  { cas: '56-81-5', name: 'glycerol (E 422)', source: 'Reg. (EC) 1333/2008 Annex II, group I: quantum satis', asOf: '', level: 'memory' },
  { cas: '102-76-1', name: 'triacetin (E 1518)', source: 'JECFA: intake not specified', asOf: '1975', level: 'memory' },
  { cas: '73398-61-5', name: 'medium-chain triglycerides', source: 'a food oil', asOf: '', level: 'memory' },
];
