import { forFile, formatPlain, measuredCells } from '../../ui/format';
import { resultCells } from '../../ui/controls/result';
import { csvOf } from '../../core/text/csv';
import { kindWords, type AnyRecord } from '../../records/kind/kinds';
import { describe } from '../describe/describe';
import { NOT_FIT, overNotices, standingWord } from '../describe/overFacts';
import type { StoryLine } from '../describe/story';
import { massCells, useName } from '../describe/wentIn';
import { kinBefore } from './relatives';

/** Any record as a table for a spreadsheet: numbers with ± and unit, facts, what it was made from, and of a run what was done. */
export function recordTable(record: AnyRecord, story: readonly StoryLine[] = []): string {
  const { title, code = '', grade = '', facts = [], results = [] } = describe(record);
  const notices = overNotices(record);
  return csvOf([
    [kindWords(record), title],
    ['code', code],
    ['grade', standingWord(grade, notices.length > 0) ?? ''],
    ...notices.map((words) => [NOT_FIT.toLowerCase(), words]),
    ['made', record.made],
    ['id', record.id],
    ...(record.archived ? [['archived', record.archived]] : []),
    [],
    ['number', 'value', '± (k = 2)', 'unit'],
    ...results.map((one) => [one.label, ...resultCells(one), one.unit]),
    [],
    ['fact', 'text', 'source'],
    ...facts.map(([label, text, source = '']) => [label, text, source]),
    ...usesRows(record),
    [],
    ['how it belongs', 'steps away', 'what', 'title', 'line', 'g of it in this', '± (k = 2)'],
    ...kinBefore(record).map(({ record: one, steps, arrow, grams }) => {
      const { title: name, line } = describe(one);
      return [arrow, steps, kindWords(one), name, line, ...(grams ? measuredCells(grams) : [])];
    }),
    ...(story.length > 0 ? [[], ['done (UTC)', 'what', 'asked', 'answered'], ...story.flatMap(storyRows)] : []),
  ]);
}

/** What went in, one row each; a record of the first version has its grams. */
function usesRows(record: AnyRecord): (string | number)[][] {
  const uses = 'uses' in record ? record.uses : [];
  if (uses.length === 0) return [];
  const rows = uses.map((use) => {
    const { how = '', drops = '', ml, supplier = '', lot = '', dropper } = use;
    const poured = ml === undefined ? '' : forFile(() => formatPlain(ml, 3));
    return [useName(use), how, drops, poured, ...massCells(use), dropper?.name ?? '', supplier, lot];
  });
  return [[], ['went in', 'how', 'drops', 'mL', 'g', '± g (k = 2)', 'dropper', 'supplier', 'lot'], ...rows];
}

function storyRows({ say, answers, at }: StoryLine): string[][] {
  const head = [at, say.replace(/[‹›]/g, '')];
  return answers.length === 0 ? [head] : answers.map((answer) => [...head, ...answer]);
}
