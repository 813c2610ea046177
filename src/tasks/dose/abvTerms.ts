import { meetsTerm } from '../../core/liquid/alcoholTerm';
import { abvTerms } from '../../tables/abvTerms';
import { formatPlain } from '../../ui/format';
import { unknownWords } from '../../workshop/thing/alcohol';
import { alcoholIsUnknown, type Glass } from './glass';

const ASKED = [0.05, 0.5]; // % ABV, what a drink without alcohol is asked for

/** Whether a drink that had no alcohol of its own is still under 0.05 and 0.5 % ABV, and who asks that, one line each. */
export function abvLines(glass: Glass): string[] {
  const { dose, base } = glass;
  const unknown = alcoholIsUnknown(glass);
  if (unknown.length > 0) return [`Alcohol: ‹not known›. ${unknownWords(unknown)}`];
  if (base.facts.abv > ASKED.at(-1)!) return [];
  return ASKED.map((maxAbv) => {
    const rows = abvTerms.filter((row) => row.maxAbv === maxAbv);
    const verdicts = { yes: 'kept', no: 'broken', close: 'too close to tell', 'no number': '' };
    const said = [...new Set(rows.map((row) => meetsTerm(dose.abv, row)))].map((one) => verdicts[one]).join(' or ');
    const first = rows.filter(
      (row, k) => rows.findIndex(({ jurisdiction }) => jurisdiction === row.jurisdiction) === k,
    );
    const who = first.map(({ jurisdiction, term }) => `${jurisdiction} ${term}`).join(', ');
    return `${formatPlain(maxAbv)} % ABV: ‹${said}› (${who}).`;
  });
}
