import { meetsTerm } from '../../core/liquid/alcoholTerm';
import { abvTerms } from '../../tables/abvTerms';
import { formatPlain } from '../../ui/format';
import { unknownWords } from '../../workshop/thing/alcohol';
import { alcoholIsUnknown, type Glass } from './glass';

const ASKED = [0.05, 0.5]; // % ABV, what a drink without alcohol is asked for

type Verdict = 'met' | 'exceeded' | 'too close to tell';

/** Whether a drink that had no alcohol of its own is still under 0.05 and 0.5 % ABV, and who asks that, one line each. */
export function abvLines(glass: Glass): string[] {
  const unknown = alcoholIsUnknown(glass);
  if (unknown.length > 0) return [`Alcohol: not known. ${unknownWords(unknown)}`];
  return termsOf(glass).map(({ maxAbv, verdict, who }) => `${formatPlain(maxAbv)} % ABV: ${verdict} (${who}).`);
}

/** The same in a few words, beside its % ABV; '' for a drink with alcohol of its own. */
export function abvWords(glass: Glass): string {
  const terms = termsOf(glass);
  if (terms.length === 0) return '';
  const met = terms.find(({ verdict }) => verdict === 'met');
  if (met?.maxAbv === ASKED[0]) return 'still alcohol-free';
  return met ? `under ${formatPlain(met.maxAbv)} %` : 'no longer alcohol-free';
}

function termsOf({ dose, base }: Glass): { maxAbv: number; verdict: string; who: string }[] {
  if (base.facts.abv > ASKED.at(-1)!) return [];
  return ASKED.map((maxAbv) => {
    const rows = abvTerms.filter((row) => row.maxAbv === maxAbv);
    const verdicts = { yes: 'met', no: 'exceeded', close: 'too close to tell', 'no number': '' } as const;
    const said = [...new Set(rows.map((row): Verdict | '' => verdicts[meetsTerm(dose.abv, row)]))];
    const first = rows.filter(
      (row, k) => rows.findIndex(({ jurisdiction }) => jurisdiction === row.jurisdiction) === k,
    );
    const who = first.map(({ jurisdiction, term }) => `${jurisdiction} ${term}`).join(', ');
    return { maxAbv, verdict: said.join(' or '), who };
  });
}
