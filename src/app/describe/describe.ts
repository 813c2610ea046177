import { byKind, isOf, kindOf, type AnyRecord, type OwnPageKind, type RecordOf } from '../../records/kind/kinds';
import type { PlainPage, Value } from '../../records/kind/record';
import { find } from '../../records/shelf';
import { gradeWord, isSmellOnly, refusalOf } from '../../workshop/drinkable/grade';
import { isGraded, type Graded } from '../../workshop/drinkable/gradeCause';
import { dropsText } from '../../workshop/dropWords';
import { facts, type Description } from './description';
import { describeBatch } from './describeBatch';
import { describeLayering } from './describeLayering';
import { describeBottle, describeMaterial } from './describeMaterial';
import { describeProportions } from './describeProportions';
import { describeTasting } from './describeTasting';
import { describeTest } from './describeTest';
import { describeVial, headOfVial } from './describeVial';
import { stripToDrinkOf } from './stripToDrink';
import { formatDay, formatGiven, formatPlain, measuredText } from '../../ui/format';
import { ownAlcoholText } from '../../workshop/thing/alcohol';

/** Title, one line, facts and numbers of any record. One that breaks takes no list, search or table with it: it has a `fault`. */
export function describe(record: AnyRecord): Description {
  try {
    const { page } = kindOf(record);
    const description = page === 'own' ? byKind(pages, record as RecordOf<OwnPageKind>) : describePlain(page, record);
    return isGraded(record) ? withGrade(description, record) : description;
  } catch (error) {
    return { title: `${record.kind} ${record.id}`, line: 'cannot be shown', fault: { error } };
  }
}

/** Title, line and code alone, as a search needs them of every record. */
export function headOf(record: AnyRecord): Pick<Description, 'title' | 'line' | 'code' | 'fault'> {
  if (!isOf('vial', record)) return describe(record);
  try {
    return headOfVial(record);
  } catch {
    return describe(record);
  }
}

function describePlain(page: PlainPage<AnyRecord>, record: AnyRecord): Description {
  return {
    title: page.title(record),
    line: page.line(record).map(textOf).filter(Boolean).join(', '),
    facts: facts(...page.facts(record).map(([label, value]) => [label, textOf(value)] as const)),
  };
}

/** With its grade now, and why it is smell only where it is. A vial says it in any case. */
function withGrade(description: Description, record: Graded): Description {
  const grade = gradeWord(record);
  if (grade === undefined) return description;
  const why = refusalOf(record) ?? undefined;
  const fact = why ? ([['Grade', grade, why]] as const) : isOf('vial', record) ? ([['Grade', grade]] as const) : [];
  const word = why ? grade : (description.grade ?? grade);
  return { ...description, grade: word, facts: [...fact, ...(description.facts ?? [])] };
}

function textOf(value: Value): string {
  if (value === undefined || typeof value === 'string') return value ?? '';
  return 'day' in value ? formatDay(value.day) : `${formatPlain(value.amount)} ${value.unit}`;
}

const pages: { readonly [K in OwnPageKind]: (record: RecordOf<K>) => Description } = {
  material: describeMaterial,
  bottle: describeBottle,
  solvent: (r) => ({
    title: r.name,
    line: isSmellOnly(r) ? 'not for food' : 'food grade',
    facts: facts(
      ['Density', `${formatGiven(r.density.gPerMl)} g/mL at ${r.density.atC} °C (${r.density.source})`],
      ['Alcohol', ownAlcoholText(r.abv)],
      ['CAS number', r.cas],
      ['Dries off', r.dryOff],
    ),
  }),
  vial: describeVial,
  calibration: (r) => ({
    title: `${find('dropper', r.dropper)?.name ?? 'a dropper'} · ${r.liquid.name}`,
    line: measuredText(r.mgPerDrop, 'mg per drop'),
    facts: facts(
      ['Liquid', r.liquid.name],
      ['Scale shows', `${formatGiven(r.readabilityG)} g`],
      ['Room', r.temperatureC && `${formatGiven(r.temperatureC)} °C`],
      ...r.readings.map(
        ({ drops, massG, out }, i) =>
          [`Weighing ${i + 1}`, `${dropsText(drops)}, ${formatGiven(massG)} g${out ? ', left out' : ''}`] as const,
      ),
    ),
    results: [
      {
        label: 'One drop weighs',
        amount: r.mgPerDrop,
        unit: 'mg',
        how: {
          words: ['The mean of the weighings: mass over drops.'],
          inputs: r.readings
            .filter(({ out }) => !out)
            .map(({ drops, massG }, i) => ({
              words: `Weighing ${i + 1}`,
              text: `${dropsText(drops)}, ${formatGiven(massG)} g`,
              source: 'your scale',
            })),
        },
      },
    ],
  }),
  formula: (r) => ({
    title: r.name,
    line: `version ${r.version}, ${r.lines.length === 1 ? '1 material' : `${r.lines.length} materials`}`,
    facts: [
      ...facts(
        ...r.lines.map(
          (line) =>
            [
              line.name,
              `${formatPlain((line.share / r.lines.reduce((sum, { share }) => sum + share, 0)) * 100, 3)} % by mass`,
            ] as const,
        ),
        ['Notes', r.notes],
      ),
      ...stripToDrinkOf(r.lines.map(({ material }) => material)),
    ],
  }),
  layering: describeLayering,
  proportions: describeProportions,
  base: (r) => ({
    title: r.name,
    line: `${formatGiven(r.volumeMl)} mL, ${formatGiven(r.brix)} °Brix, ${formatGiven(r.abv)} % ABV`,
    facts: facts(
      ['Volume', `${formatPlain(r.volumeMl)} mL`],
      ['Sugar', `${formatPlain(r.brix)} °Brix`],
      ['Alcohol', `${formatPlain(r.abv)} % ABV`],
      ['Density', `${formatPlain(r.densityGPerMl)} g/mL`],
      ['pH', r.pH && formatGiven(r.pH)],
      ['Gas', r.carbonation],
    ),
  }),
  tasting: describeTasting,
  batch: describeBatch,
  test: describeTest,
};
