import { SUGAR, WATER } from '../../core/drink/batchPlan';
import { carbonDioxidePerLitre } from '../../core/liquid/carbonation';
import { isOf } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import { declaredAdditives, type DeclaredAdditive } from '../../tables/drinkLabel/declaredAdditives';
import { namedFlavourings } from '../../tables/drinkLabel/labelWarnings';
import { formatPlain } from '../../ui/format';
import { allergensIn, allergenWords } from '../drinkable/allergensIn';
import type { DrinkToLabel, Put } from './drinkToLabel';

const WATERS: readonly string[] = [WATER, 'emulsion-water'];
const ALCOHOLS: readonly string[] = ['spirit', 'ethanol'];

/** What a thing counts as in a list of ingredients. */
export type Counted = 'water' | 'sugar' | 'alcohol' | 'own' | 'flavouring' | DeclaredAdditive;

/** An additive is known by the id it is weighed under, a material of one's own by its CAS number; the rest of a formula is flavouring. */
export function countedAs({ id, own }: Pick<Put, 'id' | 'own'>): Counted {
  if (WATERS.includes(id)) return 'water';
  if (id === SUGAR) return 'sugar';
  if (ALCOHOLS.includes(id)) return 'alcohol';
  const cas = find('material', id)?.cas;
  return declaredAdditives.find((row) => row.id === id || row.id === cas) ?? (own ? 'own' : 'flavouring');
}

/** An entry of the list, with its g in a litre, allergens in ‹ ›; of an ingredient of one's own its share of all that went in, %. */
interface Listed {
  readonly words: string;
  readonly gramsPerL: number;
}

/** The list of ingredients, most first. */
export function listOf(drink: DrinkToLabel): string[] {
  const counted = drink.puts.map((put) => ({ put, as: countedAs(put) }));
  const putsOf = (as: Counted) => counted.flatMap((one) => (one.as === as ? [one.put] : []));
  const plain = (['water', 'sugar', 'alcohol'] as const).map((as) => entry(as, putsOf(as)));
  const own = putsOf('own').map((put) => entry(put.name, [put]));
  const gas = { words: 'carbon dioxide', gramsPerL: carbonDioxidePerLitre(drink.volumes) };
  const flavouring = entry(flavouringWords(drink), putsOf('flavouring'));
  return [...plain, ...own, gas, ...additivesIn(drink, counted), flavouring]
    .filter(({ gramsPerL }) => gramsPerL > 0)
    .sort((one, other) => other.gramsPerL - one.gramsPerL)
    .map(({ words }) => words);
}

/** Additives: in the EU one entry for each category, in the US one for each of them. */
function additivesIn({ market }: DrinkToLabel, counted: readonly { put: Put; as: Counted }[]): Listed[] {
  const additives = counted.flatMap(({ put, as }) => (typeof as === 'string' ? [] : [{ put, as }]));
  const kindOf = ({ as }: (typeof additives)[number]) => (market === 'EU' ? as.category : as.us);
  return [...new Set(additives.map(kindOf))].map((kind) => {
    const all = additives.filter((one) => kindOf(one) === kind);
    const puts = all.map(({ put }) => put);
    const names = [...new Set(all.map(({ as }) => as.name))];
    return entry(market === 'EU' ? `${kind}${names.length > 1 ? 's' : ''}: ${names.join(', ')}` : kind, puts);
  });
}

/** 'citric acid E 330', once for each additive. */
export function numbersOf({ puts }: DrinkToLabel): string[] {
  const all = puts.flatMap((put) => {
    const as = countedAs(put);
    return typeof as === 'string' || put.gramsPerL === 0 ? [] : [`${as.name} ${as.eNumber}`];
  });
  return [...new Set(all)];
}

function entry(words: string, puts: readonly Put[]): Listed {
  const known = allergensOf(puts).known;
  return {
    words: known.length > 0 ? `${words} (‹${allergenWords(known)}›)` : words,
    gramsPerL: puts.reduce((sum, { gramsPerL }) => sum + gramsPerL, 0),
  };
}

/** 'flavouring', and what has to be named after it. */
function flavouringWords(drink: DrinkToLabel): string {
  if (drink.market === 'US') return 'flavor (natural or artificial, as below)';
  const named = namedFlavourings.filter(({ cas }) => drink.held(cas) > 0).map(({ name }) => name);
  return named.length > 0 ? `flavouring (${named.join(', ')})` : 'flavouring';
}

/** Allergens that the bottles of so many things name, and whether someone looked at each of them. */
export function allergensOf(puts: readonly Put[]): { known: string[]; all: boolean } {
  const found = puts.flatMap(({ source }) => (source && !isOf('supply', source) ? [allergensIn(source)] : []));
  return { known: [...new Set(found.flatMap(({ known }) => known))], all: found.every(({ all }) => all) };
}

/** Shares of what the name or a picture may speak of, most first: 'lemon juice 6.2 %'. */
export function sharesIn({ puts }: DrinkToLabel): string[] {
  const all = puts.reduce((sum, { gramsPerL }) => sum + gramsPerL, 0);
  return puts
    .filter((put) => countedAs(put) === 'own')
    .sort((one, other) => other.gramsPerL - one.gramsPerL)
    .map(({ name, gramsPerL }) => `${name} ${formatPlain((100 * gramsPerL) / all, 2)} %`);
}
