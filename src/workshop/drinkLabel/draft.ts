import { labelDuties } from '../../tables/drinkLabel/labelDuties';
import { allergens as allergenRows } from '../../tables/allergens';
import { formatDay, formatFixed, formatPlain } from '../../ui/format';
import { allergenWords } from '../drinkable/allergensIn';
import { isAlcoholic, type DraftRow, type DrinkToLabel } from './drinkToLabel';
import { alcoholRows } from './alcoholRows';
import { flavouringWays } from './flavouring';
import { allergensOf, listOf, numbersOf, sharesIn } from './ingredients';
import { euDeclaration, usFacts } from './nutrition';
import { warningsOf } from './warnings';

const FREE = 'Not required above 1.2 % vol; allowed.';
const OPEN = 'you write it';

/** What every draft says of itself. */
export const ONLY_A_DRAFT =
  'A draft, never the law: check all of it against the law in force where you sell. “From memory” was not read in the law.';

/** The label of a drink as a draft, in the order of a label: each line with what to know about it, and where the law says so. */
export function draftOf(drink: DrinkToLabel): DraftRow[] {
  const isFree = drink.market === 'EU' && isAlcoholic(drink, ABOVE);
  return [
    nameRow(drink),
    ingredientsRow(drink, isFree),
    ...quantityRows(drink),
    allergenRow(drink, isFree),
    ...alcoholRows(drink),
    netRow(drink),
    nutritionRow(drink, isFree),
    ...warningsOf(drink).map(({ words, source }) => row('Warning', `‹${words}›`, [], source)),
    ...flavouringRows(drink),
    dateRow(drink),
    storageRow(drink),
    row(
      'Lot',
      drink.lot ? `L ${drink.lot}` : 'the code of the batch, once it is made',
      [],
      labelDuties.lot[drink.market],
    ),
    row('Made by', `name and address: ${OPEN}`, [], labelDuties.madeBy[drink.market]),
    row('Letters', drink.market === 'EU' ? EU_LETTERS : US_LETTERS, [], labelDuties.letters[drink.market]),
    row('Hazard signs', 'none: food law holds for a finished drink', [CHEMICAL], labelDuties.clp[drink.market]),
  ];
}

const EU_LETTERS = 'small ones at least 1.2 mm high, 0.9 mm where the largest side is under 80 cm²';
const US_LETTERS = 'at least 1/16 inch high';
const ABOVE = { EU: labelDuties.euAlcohol.abv, US: labelDuties.usAlcohol.abv };
const CHEMICAL = 'Vials, stocks and concentrates that are sold as such are chemicals: their labels are another matter.';

function row(what: string, words: string, notes: readonly string[], source: string): DraftRow {
  return { what, words, notes, source };
}

function nameRow({ name, market }: DrinkToLabel): DraftRow {
  const words = name === '' ? `what it is, as the law or custom calls it: ${OPEN}` : `‹${name}›`;
  const note = 'A fancy name goes beside it, never in its place.';
  return row('Name', words, [note], labelDuties.called[market]);
}

function ingredientsRow(drink: DrinkToLabel, isFree: boolean): DraftRow {
  const notes = [
    ...(isFree ? [FREE] : []),
    'Most first, by weight as it went in. Carriers of the flavouring are not listed.',
    ...numbersNote(drink),
  ];
  return row('Ingredients', `${listOf(drink).join(', ')}`, notes, labelDuties.order[drink.market]);
}

/** E numbers of what is in it, which may take the place of its names. */
function numbersNote(drink: DrinkToLabel): string[] {
  const numbers = drink.market === 'EU' ? numbersOf(drink) : [];
  return numbers.length === 0 ? [] : [`Each additive by name or by number: ${numbers.join(', ')}.`];
}

/** What the name or a picture speaks of is said in percent. */
function quantityRows(drink: DrinkToLabel): DraftRow[] {
  const shares = sharesIn(drink);
  const note =
    'In percent where the name, a word or a picture on the label mentions it, as it went in; a flavouring never needs it.';
  return shares.length === 0 ? [] : [row('Quantities', shares.join(', '), [note], labelDuties.quid[drink.market])];
}

function allergenRow({ puts, market }: DrinkToLabel, isFree: boolean): DraftRow {
  const found = allergensOf(puts);
  const known = found.known.filter((id) => market === 'EU' || allergenRows.some((one) => one.id === id && one.us));
  const none = found.all ? 'none that its bottles name' : 'not known yet: not all of its bottles say what they hold';
  const said = isFree || market === 'US' ? 'contains' : 'set apart in the list:';
  const words = known.length === 0 ? none : `${said} ‹${allergenWords(known)}›`;
  const open = found.all ? [] : ['Ask the suppliers of those that say nothing, and note it on each bottle.'];
  return row('Allergens', words, open, labelDuties.allergens[market]);
}

const OUNCE = 29.5735; // mL per US fluid ounce, by definition

function netRow({ netMl, market, lot }: DrinkToLabel): DraftRow {
  const source = labelDuties.net[market];
  if (netMl === null) return row('Volume', `mL in a bottle: ${lot === '' ? 'add the bottle size' : OPEN}`, [], source);
  const ounces = market === 'US' ? ` (${formatFixed(netMl / OUNCE, 1)} fl oz)` : '';
  return row('Volume', `‹${formatPlain(netMl)} mL›${ounces}`, [], source);
}

const EU_FACTORS = 'factors: Reg. (EU) 1169/2011 Annex XIV, read as reproduced; rounded by the Commission guidance of 2012, from memory, check'; // prettier-ignore
const US_FACTORS = 'factors and rounding: 21 CFR 101.9(c), from memory, check';

function nutritionRow(drink: DrinkToLabel, isFree: boolean): DraftRow {
  const note = `Of juice and extract only sugar, alcohol and acid are counted; a little fat or protein is not.${glycol(drink)}`;
  if (drink.market === 'EU') {
    const notes = [...(isFree ? [`${FREE} The energy alone will do.`] : []), note];
    return row('In 100 mL', euDeclaration(drink, isFree).join(', '), notes, EU_FACTORS);
  }
  const isTreasury = drink.abv >= labelDuties.usAlcohol.abv;
  const { ml, source } = usServing(drink, isTreasury);
  const notes = [...(isTreasury ? ['The Treasury does not require these; allowed.'] : []), note];
  return row(`In ${formatPlain(ml)} mL`, usFacts(drink, ml).join(', '), notes, `${US_FACTORS}. ${source}`);
}

/** mL of what counts as a serving: of a small bottle all of it. */
function usServing({ abv, netMl }: DrinkToLabel, isTreasury: boolean): { ml: number; source: string } {
  const { usServing: food, usAlcoholServing: alcohol } = labelDuties;
  if (isTreasury) return { ml: alcohol.steps.find(({ upTo }) => abv <= upTo)!.ml, source: alcohol.source };
  return { ml: netMl !== null && netMl < food.single ? netMl : food.ml, source: food.source };
}

function glycol({ puts }: DrinkToLabel): string {
  const isIn = puts.some(({ id }) => id === 'propylene-glycol');
  return isIn ? ' Propylene glycol has no factor in the law, and is not counted.' : '';
}

function flavouringRows(drink: DrinkToLabel): DraftRow[] {
  const [first, ...notes] = flavouringWays(drink);
  if (first === undefined) return [];
  return [row('Flavouring', first, notes, labelDuties.flavouring[drink.market])];
}

function dateRow({ market, abv, bestBefore, treated, lot }: DrinkToLabel): DraftRow {
  const { abv: strong } = labelDuties.euNoDate;
  const open = lot === '' ? 'set the day under Keeping' : `the day: ${OPEN}`;
  const none = market === 'EU' && abv >= strong ? `none needed from ${formatPlain(strong)} % vol on` : open;
  const perishes = treated === 'cold' ? ['What keeps by cold alone spoils fast: then it is “use by”.'] : [];
  return row('Best before', bestBefore ? `‹${formatDay(bestBefore)}›` : none, perishes, labelDuties.dated[market]);
}

function storageRow({ treated, market }: DrinkToLabel): DraftRow {
  const words = treated === 'cold' ? 'keep refrigerated, below 5 °C' : 'keep cool and out of the light';
  const note = 'Once it is open: keep it cold, and how many days you found that it keeps.';
  return row('Storage', words, [note], labelDuties.stored[market]);
}
