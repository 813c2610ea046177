import { csvOf } from '../../core/text/csv';
import { expanded } from '../../core/number/measured';
import { kindWords, type AnyRecord } from '../../records/kind/kinds';
import { describe } from '../describe/describe';
import type { StoryLine } from '../describe/story';
import { useName } from '../describe/wentIn';
import { kinBefore } from './relatives';

/** Any record as a table for a spreadsheet: numbers with ± and unit, facts, what it was made from, and of a run what was done. */
export function recordTable(record: AnyRecord, story: readonly StoryLine[] = []): string {
  const { title, code = '', grade = '', facts = [], results = [] } = describe(record);
  return csvOf([
    [kindWords(record), title],
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
    ...usesRows(record),
    [],
    ['how it belongs', 'steps away', 'what', 'title', 'line', 'g of it in this', '± (k = 2)'],
    ...kinBefore(record).map(({ record: one, steps, arrow, grams }) => {
      const { title: name, line } = describe(one);
      return [arrow, steps, kindWords(one), name, line, ...(grams ? [tidy(grams.value), tidy(expanded(grams))] : [])];
    }),
    ...(story.length > 0 ? [[], ['done (UTC)', 'what', 'asked', 'answered'], ...story.flatMap(storyRows)] : []),
  ]);
}

/** What went in, one row each; a record of the first version has its grams. */
function usesRows(record: AnyRecord): (string | number)[][] {
  const uses = 'uses' in record ? record.uses : [];
  if (uses.length === 0) return [];
  const rows = uses.map((use) => {
    const { massG, u, how = '', drops = '', ml = '', supplier = '', lot = '', dropper } = use;
    const [grams, off] = [Number(massG.toPrecision(6)), u === undefined ? '' : Number((2 * u).toPrecision(2))];
    return [useName(use), how, drops, ml, grams, off, dropper?.name ?? '', supplier, lot];
  });
  return [[], ['went in', 'how', 'drops', 'mL', 'g', '± g (k = 2)', 'dropper', 'supplier', 'lot'], ...rows];
}

/** Grams without digits that no one can know: six, of a sum over shares. */
function tidy(grams: number): number {
  return Number(grams.toPrecision(6));
}

function storyRows({ say, answers, at }: StoryLine): string[][] {
  const head = [at, say.replace(/[‹›]/g, '')];
  return answers.length === 0 ? [head] : answers.map((answer) => [...head, ...answer]);
}
