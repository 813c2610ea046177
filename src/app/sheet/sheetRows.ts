import type { Batch } from '../../records/kind/batch';
import { formatDay, measuredText } from '../../ui/format';
import { alcoholText } from '../../workshop/drinkable/alcoholOf';
import { refusalOf } from '../../workshop/drinkable/grade';
import { gasWords } from '../describe/describeBatch';
import { goneOnWith, NOT_FIT, overNotices } from '../describe/overFacts';
import { additivesOf, balanceOfBatch, procedureOf, type Stage } from '../describe/procedure';
import { slipWords } from '../describe/wentIn';
import { plannedText, weighedText } from '../../ui/weighed';

/** A row of a printed sheet: words at the left, numbers at the right. A note stands below what it belongs to. */
export interface SheetRow {
  readonly kind: 'title' | 'head' | 'line' | 'note';
  readonly words: string;
  readonly numbers: readonly string[];
}

/** What is signed on paper. */
export const SIGNED = ['Weighed by', 'Checked by', 'Date'] as const;

/** 'B2 · Low tide aperitif'; the name alone where a batch has no number. */
export function sheetTitle({ code, name }: Batch): string {
  return [code, name].filter(Boolean).join(' · ');
}

/** The sheet of a batch, row by row, as it is drawn into a picture. */
export function sheetRows(batch: Batch): SheetRow[] {
  const { formula, madeOn, drink, notes } = batch;
  const from = formula.version === null ? formula.name : `${formula.name}, version ${formula.version}`;
  const gas = drink.gas ? `; ${gasWords(drink.gas)}` : '';
  return [
    row('title', sheetTitle(batch)),
    row('note', `Made ${formatDay(madeOn)} from ${from}; ${drink.emulsion ? 'an emulsion' : 'a solution'}${gas}.`),
    ...barredRows(batch),
    ...(notes ? [row('note', notes)] : []),
    ...overRows(batch),
    ...procedureOf(batch).flatMap(stageRows),
    ...slipRows(batch),
    ...accountRows('In a litre', additivesOf(batch)),
    ...accountRows('Balance', balanceOfBatch(batch)),
    ...drinkRows(batch),
    row('head', `What the ${batch.jurisdiction} rules said`),
    ...batch.checks.flatMap(({ what, words, source }) => [
      row('line', `${what}: ${words}`),
      ...(source ? [row('note', source)] : []),
    ]),
    row('note', 'Minim warns, it does not certify. ± is twice the standard uncertainty.'),
    ...SIGNED.map((what) => row('line', `${what} ____________________`)),
  ];
}

/** That it may not be drunk, and why. */
function barredRows(batch: Batch): SheetRow[] {
  const why = refusalOf(batch);
  return why ? [row('head', 'SMELL ONLY'), row('note', why)] : [];
}

/** What it is over by the rules of today, and why it was made all the same. */
function overRows(batch: Batch): SheetRow[] {
  const notices = overNotices(batch);
  const reasons = goneOnWith(batch).map(([label, text]) => row('line', `${label}: ${text}`));
  return notices.length === 0
    ? reasons
    : [row('head', NOT_FIT), ...notices.map((words) => row('line', words)), ...reasons];
}

function stageRows({ title, does, rows, makes }: Stage, i: number): SheetRow[] {
  return [
    row('head', `${i + 1}. ${title}`, ['planned, g', 'weighed, g']),
    ...does.map((words) => row('note', words)),
    ...rows.flatMap((one) => [
      row('line', one.name, [plannedText(one.plannedG, one.massG), weighedText(one.massG, '')]),
      ...(one.lot ? [row('note', one.lot)] : []),
    ]),
    row('note', `Makes ${makes}.`),
  ];
}

function accountRows(title: string, rows: readonly (readonly [string, string, string?])[]): SheetRow[] {
  if (rows.length === 0) return [];
  const lines = rows.flatMap(([what, text, why = '']) => [
    row('line', what, [text]),
    ...(why ? [row('note', why)] : []),
  ]);
  return [row('head', title), ...lines];
}

function slipRows({ done }: Batch): SheetRow[] {
  const slips = done?.slips ?? [];
  if (slips.length === 0) return [];
  return [row('head', 'Not as planned'), ...slips.map((slip) => row('line', `${slip.what}: ${slipWords(slip)}`))];
}

function drinkRows(batch: Batch): SheetRow[] {
  const { drink, reached } = batch;
  return [
    row('head', 'What is in it'),
    row('line', 'Volume', [measuredText(drink.litres, 'L')]),
    row('line', 'Sugar', [measuredText(drink.brix, '°Brix')]),
    row('line', 'Alcohol', [alcoholText(batch)]),
    row('line', 'Density', [measuredText(drink.densityGPerMl, 'g/mL')]),
    ...reached.map(({ name, mgPerKg }) => row('line', name, [measuredText(mgPerKg, 'mg/kg')])),
  ];
}

function row(kind: SheetRow['kind'], words: string, numbers: readonly string[] = []): SheetRow {
  return { kind, words, numbers };
}
