import { csvOf } from '../../core/text/csv';
import { expanded } from '../../core/number/measured';
import type { Batch } from '../../records/kind/batch';

/** A batch as a table for a spreadsheet: what was weighed, what is in the drink, and what the rules said. */
export function batchTable(batch: Batch): string {
  const { litres, brix, abv, densityGPerMl, emulsion, gas } = batch.drink;
  const drink = [
    ['volume', litres, 'L'],
    ['sugar', brix, '°Brix'],
    ['alcohol', abv, '% ABV'],
    ['density', densityGPerMl, 'g/mL'],
  ] as const;
  return csvOf([
    ['batch', batch.name, batch.code ?? ''],
    ['made', batch.madeOn],
    ['formula', batch.formula.name, batch.formula.version],
    ['kind', emulsion ? 'emulsion' : 'solution'],
    [],
    ['into', 'what', 'lot', 'planned g', 'weighed g', '± g (k = 2)'],
    ...batch.weighed.map(({ into, name, lot, plannedG, massG }) => [
      into,
      name,
      lot,
      plannedG,
      massG.value,
      expanded(massG),
    ]),
    ...slipRows(batch),
    [],
    ['drink', 'value', '± (k = 2)', 'unit'],
    ...drink.map(([name, amount, unit]) => [name, amount.value, expanded(amount), unit]),
    ...gasRows(gas),
    [],
    ['material', 'mg/kg', '± mg/kg (k = 2)', 'mg/L'],
    ...batch.reached.map(({ name, mgPerKg, mgPerL }) => [name, mgPerKg.value, expanded(mgPerKg), mgPerL.value]),
    [],
    ['check', 'result', 'source'],
    ...batch.checks.map(({ what, words, source }) => [what, words, source]),
  ]);
}

function gasRows(gas: Batch['drink']['gas']): (string | number)[][] {
  if (!gas) return [];
  return [
    ['CO2', gas.volumes, '', 'volumes'],
    [`gauge at ${gas.atC} °C`, gas.gaugeBar, '', 'bar'],
  ];
}

function slipRows({ done }: Batch): (string | number)[][] {
  const slips = done?.slips ?? [];
  if (slips.length === 0) return [];
  const rows = slips.map(({ what, planned, counted, way }) => [what, planned, counted, way]);
  return [[], ['not as planned', 'planned g', 'weighed g', 'what was done'], ...rows];
}
