import { labelDuties } from '../../tables/drinkLabel/labelDuties';
import { CARRIERS_SOURCE } from '../../tables/drinkLabel/declaredAdditives';
import { allergens as allergenRows } from '../../tables/allergens';
import { formatDay, formatFixed, formatPlain } from '../../ui/format';
import { allergenWords } from '../drinkable/allergensIn';
import { isAlcoholic, type DraftRow, type DrinkToLabel } from './drinkToLabel';
import { alcoholRows } from './alcoholRows';
import { flavouringWays } from './flavouring';
import { allergensOf, listOf, sharesIn } from './ingredients';
import { euDeclaration, usFacts } from './nutrition';
import { warningsOf } from './warnings';

const FREE = 'Not asked for above 1.2 % vol; allowed.';
const OPEN = 'you write it';

/** What every draft says of itself. */
export const ONLY_A_DRAFT =
  'A draft, never the law: check each line with the law in force where you sell. “From memory” was not read in the law.';

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
    row('Lot', drink.lot ? `L ${drink.lot}` : 'the code of the batch, once it is made', [], labelDuties.lot.source),
    row('Made by', `name and address: ${OPEN}`, [], labelDuties.madeBy.source),
    row(
      'Letters',
      `small ones at least ${drink.market === 'EU' ? '1.2 mm' : '1/16 inch'} high`,
      [],
      labelDuties.letters.source,
    ),
    row('Not on it', 'no hazard pictogram: food law holds for a finished drink', [CHEMICAL], labelDuties.clp.source),
  ];
}

const ABOVE = { EU: labelDuties.euAlcohol.abv, US: labelDuties.usAlcohol.abv };
const CHEMICAL = 'Vials, stocks and concentrates that are sold as such are chemicals: their labels are another matter.';

function row(what: string, words: string, notes: readonly string[], source: string): DraftRow {
  return { what, words, notes, source };
}

function nameRow({ name }: DrinkToLabel): DraftRow {
  const words = name === '' ? `what it is, as the law or custom calls it: ${OPEN}` : `‹${name}›`;
  const note = 'A fancy name does not take its place. What it is called says what has to be told of: a fruit, a juice.';
  return row('Name', words, [note], 'EU: Reg. (EU) 1169/2011 Art. 17; US: 21 CFR 101.3; from memory, check');
}

function ingredientsRow(drink: DrinkToLabel, isFree: boolean): DraftRow {
  const notes = [
    ...(isFree ? [FREE] : []),
    'Most first, by weight as it went in. Carriers of the flavouring are not listed. Each additive goes by name or by E number.',
  ];
  return row('Ingredients', `${listOf(drink).join(', ')}`, notes, `${labelDuties.order.source}. ${CARRIERS_SOURCE}`);
}

/** What the name or a picture speaks of is said in percent. */
function quantityRows(drink: DrinkToLabel): DraftRow[] {
  const shares = sharesIn(drink);
  const note =
    'In percent where the name, a word or a picture speaks of it, as it went in; a flavouring never needs it.';
  return shares.length === 0 ? [] : [row('Quantities', shares.join(', '), [note], labelDuties.quid.source)];
}

function allergenRow({ puts, market }: DrinkToLabel, isFree: boolean): DraftRow {
  const found = allergensOf(puts);
  const known = found.known.filter((id) => market === 'EU' || allergenRows.some((one) => one.id === id && one.us));
  const none = found.all ? 'none that its bottles name' : 'not known yet: not all of its bottles say what they hold';
  const said = isFree || market === 'US' ? 'contains' : 'set apart in the list:';
  const words = known.length === 0 ? none : `${said} ‹${allergenWords(known)}›`;
  const open = found.all ? [] : ['Ask the suppliers of those that say nothing, and note it on each bottle.'];
  return row('Allergens', words, open, labelDuties.allergens.source);
}

const OUNCE = 29.5735; // mL per US fluid ounce, by definition

function netRow({ netMl, market }: DrinkToLabel): DraftRow {
  const source = labelDuties.net.source;
  if (netMl === null) return row('Volume', 'mL in a bottle: add the bottle size', [], source);
  const ounces = market === 'US' ? ` (${formatFixed(netMl / OUNCE, 1)} fl oz)` : '';
  return row('Volume', `‹${formatPlain(netMl)} mL›${ounces}`, [], source);
}

function nutritionRow(drink: DrinkToLabel, isFree: boolean): DraftRow {
  const sources =
    'Factors: EU Reg. (EU) 1169/2011 Annex XIV, read as reproduced; US 21 CFR 101.9(c), from memory, check';
  const note = `Of juice and extract only sugar, alcohol and acid are counted; a little fat or protein is not.${glycol(drink)}`;
  if (drink.market === 'EU') {
    const notes = [...(isFree ? [`${FREE} The energy alone will do.`] : []), note];
    return row('In 100 mL', euDeclaration(drink, isFree).join(', '), notes, `${sources}. Rounded by the Commission guidance of 2012, from memory, check`);
  } // prettier-ignore
  const { ml: usual, single, source } = labelDuties.usServing;
  const ml = drink.netMl !== null && drink.netMl < single ? drink.netMl : usual;
  const notes =
    drink.abv >= labelDuties.usAlcohol.abv ? ['Of the Treasury it wants no such facts; allowed.', note] : [note];
  return row(`In ${formatPlain(ml)} mL`, usFacts(drink, ml).join(', '), notes, `${sources}. ${source}`);
}

function glycol({ puts }: DrinkToLabel): string {
  const isIn = puts.some(({ id }) => id === 'propylene-glycol');
  return isIn ? ' Propylene glycol has no factor in the law, and is not counted.' : '';
}

function flavouringRows(drink: DrinkToLabel): DraftRow[] {
  const [first, ...notes] = flavouringWays(drink);
  if (first === undefined) return [];
  const source = drink.market === 'EU' ? labelDuties.naturalX.source : labelDuties.usFlavor.source;
  return [row('Flavouring', first, notes, source)];
}

function dateRow({ market, abv, bestBefore, treated }: DrinkToLabel): DraftRow {
  const { abv: strong, source } = labelDuties.euNoDate;
  const none = abv >= strong ? `none needed from ${formatPlain(strong)} % vol on` : 'set the day under Keeping';
  const perishes = treated === 'cold' ? ['What keeps by cold alone spoils fast: then it is “use by”.'] : [];
  const law = market === 'EU' ? source : 'US: no federal rule for drinks, some states have one; from memory, check';
  return row('Best before', bestBefore ? `‹${formatDay(bestBefore)}›` : none, perishes, law);
}

function storageRow({ treated }: DrinkToLabel): DraftRow {
  const words = treated === 'cold' ? 'keep refrigerated, below 5 °C' : 'keep cool and out of the light';
  const note = 'Once it is open: keep it cold, and how many days you found that it keeps.';
  return row('Storage', words, [note], 'EU: Reg. (EU) 1169/2011 Art. 25, from memory, check');
}
