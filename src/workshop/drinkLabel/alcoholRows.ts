import { labelDuties } from '../../tables/drinkLabel/labelDuties';
import { formatFixed, formatPlain } from '../../ui/format';
import { isAlcoholic, type DraftRow, type DrinkToLabel } from './drinkToLabel';

const INVERT = 360.312 / 342.296; // g of invert sugar per g of sucrose: molar masses, IUPAC atomic weights

/** Strength and its tolerance, and the law that spirits have of their own; nothing for a drink without alcohol. */
export function alcoholRows(drink: DrinkToLabel): DraftRow[] {
  const { euAlcohol, usAlcohol } = labelDuties;
  if (drink.isAbvUnknown) return [unknown];
  if (!isAlcoholic(drink, { EU: euAlcohol.abv, US: usAlcohol.abv })) return [];
  return [strengthRow(drink), regimeRow(drink)];
}

const unknown: DraftRow = {
  what: 'Alcohol',
  words: 'not known: one of its solvents says no alcohol',
  notes: ['Without it no one can say which law holds.'],
  source: labelDuties.euAlcohol.source,
};

function strengthRow({ market, abv, abvOff }: DrinkToLabel): DraftRow {
  const { euTolerance, usTolerance, euAlcohol } = labelDuties;
  const law = market === 'EU' ? euTolerance : usTolerance;
  const allowed = `± ${formatPlain(law.abv)} % vol is allowed`;
  const known = abvOff === null ? '' : ` By what was weighed it is known to ± ${formatPlain(abvOff, 2)} % vol.`;
  const fruit = market === 'EU' ? `; ± ${formatPlain(euTolerance.macerated)} where fruit or plants lie in it` : '';
  return {
    what: 'Alcohol',
    words: market === 'EU' ? `‹alc. ${formatFixed(abv, 1)} % vol›` : `‹${formatFixed(abv, 1)} % alc/vol›`,
    notes: [`${allowed}${fruit}, at 20 °C.${known} Only a measured strength shows it.`],
    source: `${law.source}${market === 'EU' ? `. ${euAlcohol.source}` : ''}`,
  };
}

/** Which law the drink is under beside that of foods. */
function regimeRow(drink: DrinkToLabel): DraftRow {
  return drink.market === 'EU' ? euRegime(drink) : usRegime;
}

const usRegime: DraftRow = {
  what: 'Its own law',
  words: 'the Treasury (TTB): distilled spirits 27 CFR 5, wine 27 CFR 4, malt drinks 27 CFR 7',
  notes: ['It has its own names of classes, sizes of bottles and an approval of each label before it is sold.'],
  source: 'from memory, check; wine and cider under 7 % vol are labelled as foods, FDA CPG 510.450',
};

function euRegime({ abv, sugarPerL }: DrinkToLabel): DraftRow {
  const { abv: least, liqueurSugar, source } = labelDuties.euSpirit;
  const invert = sugarPerL * INVERT;
  if (abv < least)
    return {
      what: 'Its own law',
      words: `under ${formatPlain(least)} % vol it is no spirit drink: the law of foods holds`,
      notes: [
        'Wine, cider and beer, and what is flavoured from wine, have laws of their own: wine lists ingredients and energy since 2023.',
      ],
      source: `${source}. Wine: Reg. (EU) 2021/2117, from memory, check`,
    };
  const enough = invert >= liqueurSugar;
  const has = `${formatPlain(invert, 3)} g/L of sugar, as invert sugar`;
  return {
    what: 'Its own law',
    words:
      'a spirit drink, by Reg. (EU) 2019/787, if its alcohol is of agricultural origin: its legal name comes from there',
    notes: [
      enough
        ? `It has ${has}: a liqueur has at least ${formatPlain(liqueurSugar)}.`
        : `It has ${has}; a liqueur would have at least ${formatPlain(liqueurSugar)}. Without another name of that law it is “spirit drink”.`,
      'Alcohol tax and licence are beside it.',
    ],
    source,
  };
}
