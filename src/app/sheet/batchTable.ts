import { csvOf } from '../../core/text/csv';
import type { Batch } from '../../records/kind/batch';
import { alcoholIsUnknownOf } from '../../workshop/thing/alcohol';
import { goneOnWith, NOT_FIT, overNotices } from '../describe/overFacts';
import { lostFacts } from '../describe/wentIn';
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
    ...slipRows(batch),
    ...lostRows(batch),
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

/** Grams that got into nothing. */
function lostRows(batch: Batch): (string | number)[][] {
  const rows = lostFacts(batch).map(([what, grams, why = '']) => [what, grams, why]);
  return rows.length === 0 ? [] : [[], ...rows];
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
