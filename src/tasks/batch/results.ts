import { meetsTerm } from '../../core/liquid/alcoholTerm';
import { abvTerms } from '../../tables/abvTerms';
import { formatPlain } from '../../ui/format';
import { plannedText, weighedText } from '../../ui/weighed';
import type { How, Result } from '../../ui/controls/result';
import { unknownWords } from '../../workshop/thing/alcohol';
import type { Made, Making } from './progress';

const BY_MASS = 'Masses are added up: share of each thing in what was weighed together, from bottle to drink.';

/** The drink in numbers. */
export function drinkResults(making: Making, made: Made): Result[] {
  const inputs = inputsOf(making);
  const law = 'Density by the laws of sucrose and of ethanol in water, joined; acid and the like count as water.';
  const numbers: Result[] = [
    { label: 'Drink', amount: made.litres, unit: 'L', how: { words: ['Mass of it all over its density.'], inputs } },
    { label: 'Sugar', amount: made.brix, unit: '°Brix', how: { words: [BY_MASS, 'g of sugar in 100 g.'], inputs } },
    {
      label: 'Alcohol',
      amount: made.abv,
      unit: '% ABV',
      how: { words: made.unknown.length > 0 ? [unknownWords(made.unknown)] : [BY_MASS, law], inputs },
      ...(made.unknown.length > 0 ? { words: 'not known' } : {}),
    },
    { label: 'Density', amount: made.densityGPerMl, unit: 'g/mL', how: { words: [law], inputs } },
  ];
  const reached = made.reached.map(({ name, mgPerKg }) => ({
    label: name,
    amount: mgPerKg,
    unit: 'mg/kg',
    how: { words: [BY_MASS, 'mg of neat material per kg of drink.'], inputs },
  }));
  return [...numbers, ...reached];
}

/** Whether a drink that was meant to have no alcohol of its own is still under 0.05 and 0.5 % ABV, a sentence each. */
export function abvWords({ plan }: Making, { abv, unknown }: Made): string[] {
  if (unknown.length > 0) return [`Alcohol: ‹not known›. ${unknownWords(unknown)}`];
  if (plan.drink.abv > 0.5 || abv.value === 0) return [];
  return [0.05, 0.5].map((maxAbv) => {
    const verdict = meetsTerm(abv, { maxAbv, below: false });
    const limit = `${formatPlain(maxAbv)} % ABV`;
    const who = [...new Set(abvTerms.filter((row) => row.maxAbv === maxAbv).map(({ jurisdiction }) => jurisdiction))];
    if (verdict === 'close') return `‹Too close to ${limit}› to tell (${who.join(', ')}).`;
    return verdict === 'yes'
      ? `‹Under ${limit}›: within the limit (${who.join(', ')}).`
      : `‹Over ${limit}›: too much for “alcohol-free” (${who.join(', ')}).`;
  });
}

function inputsOf({ vessel, syrup }: Making): How['inputs'] {
  return [...vessel.pours, ...syrup.pours].flatMap(({ goods, mass, target }) =>
    mass === null
      ? []
      : [
          {
            words: goods.name,
            text: weighedText(mass),
            source: `${goods.source?.lot ?? 'your scale'}; planned ${plannedText(target, mass)} g`,
          },
        ],
  );
}
