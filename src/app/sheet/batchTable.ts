import { csvOf } from '../../core/text/csv';
import type { Batch } from '../../records/kind/batch';
import { alcoholIsUnknownOf } from '../../workshop/drinkable/alcoholOf';
import { goneOnWith, NOT_FIT, overNotices } from '../describe/overFacts';
import { keepingFacts } from '../describe/keepingFacts';
import { additivesOf, balanceOfBatch, procedureOf } from '../describe/procedure';
import { forFile, formatPlain, measuredCells } from '../../ui/format';
import { refusalOf } from '../../workshop/drinkable/grade';
import { plannedText, weighedCells } from '../../ui/weighed';

/** A batch as a table for a spreadsheet: what was weighed, what is in the drink, and what the rules said. */
export function batchTable(batch: Batch): string {
  return forFile(() => csvOf(rowsOf(batch)));
}

function rowsOf(batch: Batch): (string | number | null)[][] {
  const { litres, brix, abv, densityGPerMl, emulsion, gas } = batch.drink;
  const drink = [
    ['volume', litres, 'L'],
    ['sugar', brix, '°Brix'],
    ['alcohol', alcoholIsUnknownOf(batch) ? null : abv, '% ABV'],
    ['density', densityGPerMl, 'g/mL'],
  ] as const;
  return [
    ['batch', batch.name, batch.code ?? ''],
    ['made', batch.madeOn],
    ...barredRows(batch),
    ['formula', batch.formula.name, batch.formula.version],
    ['kind', emulsion ? 'emulsion' : 'solution'],
    ...overNotices(batch).map((words) => [NOT_FIT.toLowerCase(), words]),
    ...goneOnWith(batch).map(([label, text]) => [label.toLowerCase(), text]),
    [],
    ['into', 'what', 'lot', 'planned g', 'weighed g', '± g (k = 2)'],
    ...batch.weighed.map((one) => [
      one.into,
      one.name,
      one.lot,
      plannedText(one.plannedG, one.massG),
      ...weighedCells(one.massG),
    ]),
    ...procedureRows(batch),
    ...slipRows(batch),
    [],
    ['drink', 'value', '± (k = 2)', 'unit'],
    ...drink.map(([name, amount, unit]) => [name, ...(amount ? measuredCells(amount) : ['not known', '']), unit]),
    ...gasRows(gas),
    [],
    ['material', 'mg/kg', '± mg/kg (k = 2)', 'mg/L', '± mg/L (k = 2)'],
    ...batch.reached.map(({ name, mgPerKg, mgPerL }) => [name, ...measuredCells(mgPerKg), ...measuredCells(mgPerL)]),
    [],
    ['check', 'result', 'source'],
    ...batch.checks.map(({ what, words, source }) => [what, words, source]),
  ];
}

/** What is done in each vessel and what that makes; acid and preservatives in a litre; where the concentrate is. */
function procedureRows(batch: Batch): string[][] {
  const stages = procedureOf(batch).flatMap(({ title, does, makes }) => [
    ...does.map((words) => [title, 'to do', words]),
    [title, 'makes', makes],
  ]);
  return [
    ...(stages.length > 0 ? [[], ...stages] : []),
    ...accountRows('in a litre', additivesOf(batch)),
    ...accountRows('keeping', keepingFacts(batch)),
    ...accountRows('balance', balanceOfBatch(batch)),
  ];
}

function accountRows(title: string, rows: readonly (readonly [string, string, string?])[]): string[][] {
  return rows.length === 0 ? [] : [[], [title], ...rows.map(([what, text, why = '']) => [what, text, why])];
}

function barredRows(batch: Batch): string[][] {
  const why = refusalOf(batch);
  return why ? [['grade', 'smell only', why]] : [];
}

function gasRows(gas: Batch['drink']['gas']): (string | number)[][] {
  if (!gas) return [];
  return [
    ['CO2', formatPlain(gas.volumes), '', 'volumes'],
    [`gauge at ${gas.atC} °C`, formatPlain(gas.gaugeBar, 3), '', 'bar'],
  ];
}

function slipRows({ done }: Batch): (string | number)[][] {
  const slips = done?.slips ?? [];
  if (slips.length === 0) return [];
  const rows = slips.map(({ what, planned, counted, way }) => [what, formatPlain(planned), formatPlain(counted), way]);
  return [[], ['not as planned', 'planned g', 'weighed g', 'what was done'], ...rows];
}
