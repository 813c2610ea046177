import { plus, scaled } from '../../core/number/measured';
import type { Tasting } from '../../records/kind/drink';
import type { Result } from '../../ui/controls/result';
import { formatGiven, measuredText } from '../../ui/format';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { dropsText } from '../../workshop/dropWords';
import { facts, type Description } from './description';
import { doneFacts, dropsLine, wentIn } from './wentIn';
import { alcoholIsUnknownOf } from '../../workshop/drinkable/alcoholOf';
import { tagOfId } from '../../workshop/thing/labelled';
import { goneOnWith } from './overFacts';

/** A drink in words: its drops, what they made of it, and how it was. */
export function describeTasting(r: Tasting): Description {
  const { volumeMl, brix, abv, name } = r.base;
  const known = r.uses.some(({ how }) => how !== undefined);
  return {
    title: name,
    line: r.reached.map((part) => `${part.name} ${measuredText(part.mgPerKg, 'mg/kg')}`).join(', '),
    ...(dropsLine(r.uses)
      ? { did: `${dropsLine(r.uses)} into ${formatGiven(Number(volumeMl.toPrecision(3)))} mL` }
      : {}),
    facts: [
      ...(isSmellOnly(r) ? facts(['What is left of it', 'Smell it, do not taste it.']) : []),
      ...goneOnWith(r),
      ...facts([
        'Drink',
        `${formatGiven(Number(volumeMl.toPrecision(6)))} mL, ${formatGiven(brix)} °Brix, ${formatGiven(abv)} % ABV`,
      ]),
      ...(known ? wentIn(r.uses) : earlier(r)),
      ...facts(
        ['Glass', r.glass && `${r.glass.code}${r.glass.best ? ', the best of the series' : ''}`],
        ['Blank beside it', r.glass?.blank && blankWords(r.glass.blank)],
        ['Alcohol of the whole', alcoholIsUnknownOf(r) ? 'not known' : r.abv && measuredText(r.abv, '% ABV')],
        ['Verdict', r.verdict],
        ['Liking', r.liking ?? undefined],
      ),
      ...doneFacts(r.done),
    ],
    results: resultsOf(r),
  };
}

/** '288, 43 drops ethanol 96 % vol, liked 5 of 9, flat' */
function blankWords({
  code,
  solvent,
  drops,
  liking,
  verdict,
}: NonNullable<NonNullable<Tasting['glass']>['blank']>): string {
  const poured = solvent === undefined ? 'the drink alone' : `${dropsText(drops ?? 0)} ${solvent}`;
  return [code, poured, liking !== null && `liked ${liking} of 9`, verdict].filter(Boolean).join(', ');
}

/** The doses of a record of the first version: it kept codes and drops. */
function earlier(r: Tasting): NonNullable<Description['facts']> {
  return facts(
    ...r.doses.map(
      ({ vial, code, drops, massG }) =>
        [tagOfId(vial) ?? code, drops === null ? measuredText(massG, 'g') : dropsText(drops)] as const,
    ),
  );
}

/** All materials together where there are several, then each. */
function resultsOf({ reached, doses }: Tasting): Result[] {
  const inputs = doses.map(({ vial, code, drops, massG }) => ({
    words: tagOfId(vial) ?? code,
    text: measuredText(scaled(massG, 1000), 'mg'),
    source: drops === null ? 'weighed' : `${dropsText(drops)} counted`,
  }));
  const how = { words: ['Mass of the material over mass of the drink.'], inputs };
  const all = plus(...reached.map(({ mgPerKg }) => mgPerKg));
  return [
    ...(reached.length > 1 ? [{ label: 'All neat material together', amount: all, unit: 'mg/kg', how }] : []),
    ...reached.map(({ name, mgPerKg }) => ({ label: name, amount: mgPerKg, unit: 'mg/kg', how })),
  ];
}
