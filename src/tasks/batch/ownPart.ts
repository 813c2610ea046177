import { formatPlain } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { allergenWords } from '../../workshop/drinkable/allergensIn';
import { answer } from '../engine/answers';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { asked } from './plan/asked';
import { drinkOf, sourceOf, type DrinkAsked } from './plan/drinkAsked';
import { contentOf, ETHANOL, OWN_ACID } from './plan/goods';
import { NONE, ownAsked, ownLines, ownPlanned, type OwnPlanned } from './plan/ingredients';
import { wrongIn, type Part } from './page';
import { SUGAR } from '../../core/drink/batchPlan';
import { ethanolDensity } from '../../core/liquid/ethanol';
import { massFraction, REFERENCE_TEMPERATURE } from '../../core/number/units';

/** Ingredients of one's own: how much of which in a litre, and what they bring; null where the Shelf has none. */
export function ownPart(run: RunState, problem: string | null): Part | null {
  const all = ownAsked(run);
  if (all.length === 0) return null;
  const isThrown = answer(run, asked(run).parts) !== 0;
  const chosen = all.filter(({ what }) => answer(run, what) !== NONE);
  const parts = all.map(({ what, perL }) =>
    chosen.some((one) => one.what === what) ? `{${perL.name}} of {${what.name}}` : `{${what.name}}`,
  );
  const slots = all.flatMap(({ what, perL, into }, i): (readonly [string, SlotFacts])[] => [
    [what.name, { missing: 'an ingredient' }],
    [
      perL.name,
      {
        missing: 'how much',
        usual: chips(['10', '50', '100', '200'], 'g/L'),
        ...(isThrown ? { beside: [into] } : {}),
        ...wrongIn(i === chosen.length - 1 ? problem : null),
      },
    ],
  ]);
  return {
    ask: all.flatMap(({ what, perL, into }) =>
      chosen.some((one) => one.what === what) ? [what, perL, ...(isThrown ? [into] : [])] : [what],
    ),
    slots: Object.fromEntries(slots),
    section: { title: 'Ingredients', sentence: parts.join(', '), lines: broughtWords(run) },
  };
}

/** Sugar, acid and alcohol that they bring to the drink, which of it is more than was asked for, and allergens. */
function broughtWords(run: RunState): string[] {
  const { value: drink } = outcome(() => drinkOf(run));
  const own = ownPlanned(run, 1) ?? [];
  if (!drink || own.length === 0) return [];
  const { brix, acid, abv } = sumOf(own, drink);
  const brings = [
    brix > 0 && `‹${formatPlain(brix, 3)} °Brix›`,
    acid > 0 && `‹${formatPlain(acid, 3)} g/L› of acid`,
    abv > 0 && `‹${formatPlain(abv, 3)} % ABV›`,
  ].filter(Boolean);
  return [
    ...(brings.length > 0
      ? [`They bring ${brings.join(', ')} to the drink.`]
      : ['What they hold is not on their bottles: they count as water.']),
    ...(abv > drink.abv + 0.005 ? ['That is more alcohol than the drink was to have.'] : []), // under a hundredth nothing is seen
    ...allergensWords(run),
  ];
}

function sumOf(own: readonly OwnPlanned[], { litres, densityGPerMl }: DrinkAsked) {
  const sum = (id: string) => own.reduce((grams, { goods, mass }) => grams + mass * contentOf(goods, id), 0);
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  return {
    brix: sum(SUGAR) / (litres * densityGPerMl * 10), // kg to 100 g
    acid: sum(OWN_ACID) / litres,
    abv: sum(ETHANOL) / pure / (litres * 10), // mL in 100 mL
  };
}

function allergensWords(run: RunState): string[] {
  const bottles = ownLines(run).flatMap((line) => sourceOf(run, line)?.bottle ?? []);
  const named = [...new Set(bottles.flatMap(({ allergens }) => allergens ?? []))];
  const open = ownLines(run).filter((line) => sourceOf(run, line)?.bottle?.allergens === undefined);
  return [
    ...(named.length > 0 ? [`A label names ‹${allergenWords(named)}›.`] : []),
    ...(open.length > 0 ? [`Allergens not looked at: ${open.map(({ name }) => name).join(', ')}.`] : []),
  ];
}
