import type { Batch } from '../../records/kind/batch';
import { isOf, type AnyRecord, type RecordOf } from '../../records/kind/kinds';
import type { Use } from '../../records/kind/quantity';
import { restOf, type Vial } from '../../records/kind/vial';
import { find } from '../../records/shelf';
import { isStocked } from '../../records/stock';
import { alcoholIsUnknownOf } from '../../workshop/drinkable/alcoholOf';
import { useByOf } from '../../workshop/useBy';
import { formatDay, formatGiven, formatMoment, formatPlain, formatTime, measuredText } from '../../ui/format';
import { weighedText } from '../../ui/weighed';
import { gasWords, weighedFacts } from '../describe/describeBatch';
import { dippedText } from '../describe/describeLayering';
import { standingWords, takenTo } from '../describe/describeProportions';
import type { Description } from '../describe/description';
import { sinceFacts } from '../describe/sinceFacts';
import { ownWords } from './ownWords';
import { doneFacts, lostFacts, slipWords, wentIn, wentInRows, type WentIn } from '../describe/wentIn';

/** What the page of a thing shows apart from its list of facts. */
export interface Thing {
  /** Lines under its name. */
  readonly under: readonly string[];
  /** The person's own words, and how it was liked. */
  readonly own: readonly string[];
  readonly inIt: readonly WentIn[];
  /** What the plan was, and what did not go by it. */
  readonly remarks: readonly string[];
  /** What is left to be said as a list. */
  readonly facts: NonNullable<Description['facts']>;
}

/** What the page of a record shows in its own places, and the facts that are left for the list. */
export function thingOf(record: AnyRecord, description: Description): Thing {
  const uses = 'uses' in record ? record.uses : [];
  const shown = new Set([
    ...(isOf('batch', record)
      ? [...weighedFacts(record), ...lostFacts(record), ...sinceFacts(record)]
      : wentIn(uses)
    ).map(asOne),
    ...doneFacts(record.done).map(asOne),
  ]);
  return {
    under: underOf(record, description),
    own: ownWords(record),
    inIt: isOf('batch', record) || isOf('proportions', record) ? [] : inItOf(record, uses),
    remarks: remarksOf(record),
    facts: (description.facts ?? []).filter(
      (fact) => !shown.has(asOne(fact)) && (fact[2] !== undefined || !ELSEWHERE[record.kind]?.includes(fact[0])),
    ),
  };
}

/** Where its last day comes from, and when it is time for more. */
export function keepingOf(record: AnyRecord): Thing['facts'] {
  const useBy = isOf('vial', record) ? null : useByOf(record); // of a vial it was asked
  const lowAt = isStocked(record) ? record.lowAt : undefined;
  const unit = isOf('supply', record) ? record.unit : 'g';
  return [
    ...(useBy ? [['Use by', formatDay(useBy.day), useBy.words] as const] : []),
    ...(lowAt === undefined ? [] : [['Low at', `${formatPlain(lowAt)} ${unit}`] as const]),
  ];
}

function asOne([label, text]: readonly [string, string, ...unknown[]]): string {
  return `${label}: ${text}`;
}

/** Facts that are in the head of a page, in its own words or in its tables: paper and tables have them as facts. */
const ELSEWHERE: { readonly [K in AnyRecord['kind']]?: readonly string[] } = {
  vial: ['Grade', 'Formula', 'Solvent', 'Solvent from', 'Vial', 'Made', 'Use by', 'Lot', 'What went in'],
  bottle: ['Supplier', 'Lot', 'Received'],
  tasting: ['Drink', 'Glass', 'Alcohol of the whole', 'Verdict', 'Liking', 'What went in'],
  layering: ['Verdict', 'Liking', 'Note', 'Dipped'],
  proportions: ['Best'],
  batch: ['Made', 'Formula', 'Gas', 'Notes'],
  formula: ['Notes'],
  test: ['Outcome'],
  supply: ['Supplier', 'Lot', 'Amount', 'Use by'],
  calibration: ['Liquid'],
};

function underOf(record: AnyRecord, { line }: Description): string[] {
  const day = record.done ? formatMoment(record.done.to) : formatMoment(record.made);
  if (isOf('vial', record)) return vialLines(record);
  if (isOf('batch', record)) return batchLines(record);
  if (isOf('bottle', record)) return [line, record.received ? `received ${formatDay(record.received)}` : ''];
  if (isOf('tasting', record)) {
    const { volumeMl, brix, abv } = record.base;
    const known = record.abv ? measuredText(record.abv, '% ABV') : `${formatGiven(abv)} % ABV`;
    const whole = alcoholIsUnknownOf(record) ? 'alcohol not known' : known;
    return [`${formatPlain(volumeMl)} mL, ${formatGiven(brix)} °Brix, ${whole}`, glassWords(record), day];
  }
  if (isOf('layering', record)) return [verdictHead(record), dippedWords(record) || day, ...takenTo(record.id)];
  if (isOf('proportions', record)) return [...standingWords(record), day];
  if (isOf('calibration', record)) return ['mean of its weighings', day];
  if (isOf('test', record)) return [line, day];
  if (isOf('formula', record)) return [line, formatDay(record.made)];
  return [line];
}

function glassWords({ glass }: RecordOf<'tasting'>): string {
  return glass ? `glass ${glass.code}${glass.best ? ', the best of the series' : ''}` : '';
}

/** The decision as a line of its own. */
function verdictHead({ verdict: { decision } }: RecordOf<'layering'>): string {
  if (decision === 'keep') return 'Keep';
  if (decision === 'try again') return 'Try again';
  return decision === 'drop' ? 'Rejected' : decision;
}

function dippedWords(record: RecordOf<'layering'>): string {
  const when = dippedText(record);
  return when && `dipped ${when}`;
}

function vialLines(vial: Vial): string[] {
  const at = vial.done ? `, ${formatTime(vial.done.to)}` : '';
  return [
    formulaWords(vial),
    `${vial.contents.length > 1 ? `${measuredText(vial.massG, 'g')}, ` : ''}in a ${formatGiven(vial.sizeMl)} mL vial`,
    `made ${formatDay(vial.madeOn)}${at}`,
  ];
}

/** The formula that a trial was counted from. */
function formulaWords({ from, contents }: Vial): string {
  const [formula] = contents.length > 1 ? from.flatMap((id) => find('formula', id) ?? []) : [];
  return formula ? `from ${formula.name}, version ${formula.version}` : '';
}

function batchLines({ formula, drink, madeOn, done }: Batch): string[] {
  return [
    `from ${formula.name}${formula.version === null ? '' : `, version ${formula.version}`}`,
    drink.gas ? gasWords(drink.gas) : 'Still',
    `made ${formatDay(madeOn)}${done ? `, ${formatTime(done.to)}` : ''}`,
  ];
}

/** What went in by name, and the rest of a vial: its solvent, where no bottle of that was named. */
function inItOf(record: AnyRecord, uses: readonly Use[]): WentIn[] {
  const rows = wentInRows(uses);
  if (!isOf('vial', record) || !record.solvent) return rows;
  const rest = restOf(record);
  const { id, name } = record.solvent;
  if (rest <= 0 || uses.some((use) => use.id === id)) return rows;
  const grams = weighedText({ value: rest, sources: record.massG.sources });
  return [...rows, { id, name, amount: grams, more: '', lot: '' }];
}

function remarksOf({ done }: AnyRecord): string[] {
  const several = (done?.plan?.lines.length ?? 0) > 1; // a plan of one vial is shown by what did not go by it
  const planned = several ? doneFacts(done).filter(([label]) => label === 'Planned') : [];
  return [
    ...planned.map(([label, text]) => `${label}: ${text}.`),
    ...(done?.slips ?? []).map((slip) => `Not as planned: ${slip.what}, ${slipWords(slip)}.`),
  ];
}
