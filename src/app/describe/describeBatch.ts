import type { Batch } from '../../records/kind/batch';
import { BESIDE_LIMIT, formatDay, formatKnown, formatPlain, measuredText } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import { plannedText, weighedText } from '../../ui/weighed';
import { facts, type Description } from './description';
import { doneFacts, lostFacts } from './wentIn';
import { alcoholIsUnknownOf } from '../../workshop/drinkable/alcoholOf';
import { allergensIn, allergenWords } from '../../workshop/drinkable/allergensIn';
import { tagOf } from '../../workshop/thing/labelled';
import { goneOnWith } from './overFacts';
import { sinceFacts } from './sinceFacts';

/** A batch in words: what became of it, from which lots, and what the rules said on the day. */
export function describeBatch(r: Batch): Description {
  const { litres, brix, abv, gas, emulsion } = r.drink;
  const isUnknown = alcoholIsUnknownOf(r);
  const drink = drinkWords(r);
  return {
    title: r.name,
    ...(r.code === undefined ? {} : { code: tagOf(r) }),
    line: `${formatDay(r.madeOn)}, ${drink}`,
    did: drink,
    facts: [
      ...goneOnWith(r),
      ...facts(
        ['Made', formatDay(r.madeOn)],
        ['Formula', `${r.formula.name}${r.formula.version === null ? '' : `, version ${r.formula.version}`}`],
        ['Kind', emulsion ? 'cloudy, from an emulsion' : 'from a solution'],
        ['Gas', gas && gasWords(gas)],
        ['Allergens', allergensWords(r)],
        ...weighedFacts(r),
        ...r.checks
          .filter(({ state }) => WORST.includes(state))
          .map(({ what, words }) => [`When made: ${what}`, words] as const),
        ['Rules', `${r.jurisdiction}, as read on ${formatDay(r.madeOn)}; Minim warns, it does not certify`],
        ['Notes', r.notes],
      ),
      ...doneFacts(r.done),
      ...lostFacts(r),
      ...sinceFacts(r),
    ],
    results: [
      resultOf(r, 'Drink', { amount: litres, unit: 'L' }),
      resultOf(r, 'Sugar', { amount: brix, unit: '°Brix' }),
      { ...resultOf(r, 'Alcohol', { amount: abv, unit: '% ABV' }), ...(isUnknown ? { words: 'not known' } : {}) },
      ...r.reached.map(({ name, mgPerKg }) => resultOf(r, name, { amount: mgPerKg, unit: 'mg/kg' })),
    ],
  };
}

/** '20.00 ± 0.05 L, 7 °Brix, 0 % ABV'. */
export function drinkWords(batch: Batch): string {
  const { litres, brix, abv } = batch.drink;
  const alcohol = alcoholIsUnknownOf(batch) ? 'alcohol not known' : `${formatKnown(abv, BESIDE_LIMIT)} % ABV`;
  return `${measuredText(litres, 'L')}, ${formatKnown(brix, BESIDE_LIMIT)} °Brix, ${alcohol}`;
}

/** What a label has to name, from the bottles of today; '' where none of them says anything. */
function allergensWords(r: Batch): string {
  const { known, all } = allergensIn(r);
  if (known.length === 0) return '';
  return `${allergenWords(known)}${all ? '' : '; not all bottles were looked at'}`;
}

/** What was weighed, and from which lot. */
export function weighedFacts({ weighed }: Batch): (readonly [string, string])[] {
  return weighed.map(({ name, massG, lot }) => [name, [weighedText(massG), lot].filter(Boolean).join(', ')]);
}

/** How much carbon dioxide, and the pressure that holds it. */
export function gasWords({ volumes, gaugeBar, atC }: NonNullable<Batch['drink']['gas']>): string {
  return `${formatPlain(volumes)} volumes of CO₂, ${formatPlain(gaugeBar, 3)} bar on the gauge at ${formatPlain(atC)} °C`;
}

/** States that stand on the page of a batch; all of them stand on its sheet. */
const WORST = ['prohibited', 'over', 'at', 'near', 'look'];

function resultOf(r: Batch, label: string, { amount, unit }: Pick<Result, 'amount' | 'unit'>): Result {
  const inputs = r.weighed.map((one) => ({
    words: one.name,
    text: weighedText(one.massG),
    source: [one.lot, `planned ${plannedText(one.plannedG, one.massG)} g`].filter(Boolean).join('; '),
  }));
  return {
    label,
    amount,
    unit,
    how: {
      words: [
        'Masses added up, from bottle to drink, as they were weighed. Volumes and densities are those at 20 °C; °Brix is the sugar alone, a refractometer shows acid and alcohol, too.',
      ],
      inputs,
    },
  };
}
