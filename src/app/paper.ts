import { csvOf } from '../core/csv';
import { expanded } from '../core/measured';
import type { AnyRecord } from '../records/kinds';
import { ancestors } from '../records/lineage';
import { describe } from './describe';
import { kindWords } from './shelfIndex';

/** Any record as a table for a spreadsheet: numbers with ± and unit, facts, and what it was made from. */
export function recordTable(record: AnyRecord): string {
  const { title, code = '', grade = '', facts = [], results = [] } = describe(record);
  return csvOf([
    [kindWords[record.kind] ?? record.kind, title],
    ['code', code],
    ['grade', grade],
    ['made', record.made],
    ['id', record.id],
    ...(record.archived ? [['archived', record.archived]] : []),
    [],
    ['number', 'value', '± (k = 2)', 'unit'],
    ...results.map(({ label, amount, unit }) => [label, amount.value, expanded(amount), unit]),
    [],
    ['fact', 'text', 'source'],
    ...facts.map(([label, text, source = '']) => [label, text, source]),
    [],
    ['made from', 'what', 'title', 'line'],
    ...ancestors(record.id).map(({ record: one, steps }) => {
      const { title: name, line } = describe(one);
      return [steps, kindWords[one.kind] ?? one.kind, name, line];
    }),
  ]);
}
