import { labelDuties } from '../../tables/drinkLabel/labelDuties';
import { labelWarnings, type LabelWarning } from '../../tables/drinkLabel/labelWarnings';
import { formatFixed, formatPlain } from '../../ui/format';
import type { DrinkToLabel } from './drinkToLabel';
import { countedAs } from './ingredients';
import { nutritionOf } from './nutrition';

/** Words that the drink has to carry, with where the law says so. */
export interface Warned {
  readonly words: string;
  readonly source: string;
}

/** All warnings of a drink in the law of its market. */
export function warningsOf(drink: DrinkToLabel): Warned[] {
  const found = labelWarnings.filter((row) => row.market === drink.market && isReached(drink, row));
  const weaker = found.some(({ id }) => id === 'liquorice-strong');
  return [
    ...found.filter(({ id }) => !(weaker && id === 'liquorice')).map((row) => warned(drink, row)),
    ...(drink.market === 'EU' ? sweetened(drink) : usAlcohol(drink)),
  ];
}

const mgPerL = (drink: DrinkToLabel, cas: readonly string[]) => drink.held(cas) * drink.densityGPerMl;

function isReached(drink: DrinkToLabel, { cas, from, strong = from, above = false }: LabelWarning): boolean {
  const least = drink.abv > labelDuties.euAlcohol.abv ? strong : from;
  const there = mgPerL(drink, cas);
  return least !== null && there > 0 && (above ? there > least : there >= least);
}

function warned(drink: DrinkToLabel, { id, cas, words, source }: LabelWarning): Warned {
  if (id !== 'caffeine') return { words, source };
  return { words: `${words} (${formatFixed(mgPerL(drink, cas) / 10, 1)} mg per 100 mL)`, source };
}

/** With sweeteners, with both, phenylalanine, and polyols. */
function sweetened(drink: DrinkToLabel): Warned[] {
  const { source } = labelDuties.sweetened;
  const used = drink.puts.flatMap((put) => {
    const as = countedAs(put);
    return typeof as !== 'string' && as.category === 'sweetener' && put.gramsPerL > 0 ? [as] : [];
  });
  if (used.length === 0) return [];
  const hasSugar = drink.puts.some((put) => countedAs(put) === 'sugar' && put.gramsPerL > 0);
  const s = used.length > 1 ? 's' : '';
  const beside = `beside the name: “with ${hasSugar ? 'sugar and ' : ''}sweetener${s}”`;
  const { polyol = 0, erythritol = 0 } = nutritionOf(drink).grams;
  const { polyols } = labelDuties;
  return [
    { words: beside, source },
    ...(used.some(({ id }) => id === 'aspartame') ? [{ words: 'Contains a source of phenylalanine', source }] : []),
    ...(polyol + erythritol > polyols.grams ? [{ words: polyols.words, source: `${polyols.source}; ${formatPlain(polyol + erythritol, 2)} g in 100 mL` }] : []),
  ]; // prettier-ignore
}

function usAlcohol({ abv }: DrinkToLabel): Warned[] {
  const { usAlcohol: law } = labelDuties;
  return abv >= law.abv ? [{ words: law.words, source: law.source }] : [];
}
