import { search, searchIndex, type Searchable, type SearchIndex } from '../../core/text/search';
import { csvOf } from '../../core/text/csv';
import { endOf } from '../../records/endedRuns';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { ancestors, descendants } from '../../records/lineage';
import type { Run } from '../../records/kind/run';
import { list, shelf } from '../../records/shelf';
import { idle } from '../../records/store/idle';
import { shelfTasks, tasks } from '../../tasks';
import { describe } from './describe';
import { formatDay } from '../../ui/format';
import { prepare } from './prepare';
import { daysOf } from './shelfIndex';
import { tagOf } from '../../workshop/thing/labelled';

/** What the Book is narrowed down to; '' is everything. */
export interface Narrowing {
  readonly task: string;
  /** Id of a material or vial. */
  readonly of: string;
  readonly words: string;
}

/** The name of a task, as on its card. */
export function taskName(id: string): string {
  return [...tasks, ...shelfTasks].find((task) => task.id === id)?.name ?? id;
}

/** What a run ended in, as far as it is still kept. */
export function keptOf(run: Run): AnyRecord[] {
  return run.kept.flatMap((id) => shelf.records.value.get(id) ?? []);
}

/** Materials and vials by which the Book can be narrowed down. */
export function narrowers(): { value: string; label: string; hint: string }[] {
  return [
    ...list('material').map(({ id, code, name }) => ({ value: id, label: `${code} · ${name}`, hint: 'material' })),
    ...list('vial').map((vial) => ({
      value: vial.id,
      label: `${tagOf(vial)} · ${vial.name}`,
      hint: `vial made ${formatDay(vial.madeOn)}`,
    })),
  ];
}

/** Whether a run has to do with a material or a vial: what it ended in is it, came from it, or holds it. */
function concerns(run: Run, family: ReadonlySet<string>): boolean {
  return run.kept.some((id) => family.has(id));
}

const made = new WeakMap<Run, { of: ReadonlyMap<string, AnyRecord>; entry: Searchable }>();

function searchableOf(run: Run): Searchable {
  const known = made.get(run);
  if (known && known.of === shelf.records.value) return known.entry;
  const texts = keptOf(run).flatMap((record): (readonly [string, number])[] => {
    const { title, line, code = '', facts = [] } = describe(record);
    return [
      [title, 4],
      [code, 6],
      [line, 2],
      [facts.map(([, text]) => text).join(' '), 1],
      [daysOf(record), 1],
    ];
  });
  const entry = { id: run.id, texts: [[run.title, 5], [taskName(run.task), 3], [daysOf(run), 1], ...texts] as const };
  made.set(run, { of: shelf.records.value, entry });
  return entry;
}

/** The runs that a narrowing leaves; with words the best first, else newest first as they came. */
export function narrowed(runs: readonly Run[], { task, of, words }: Narrowing): Run[] {
  const family = of === '' ? null : new Set([of, ...descendants(of).map(({ record }) => record.id)]);
  const left = runs.filter((run) => (task === '' || run.task === task) && (family === null || concerns(run, family)));
  if (words.trim() === '') return left;
  const byId = new Map(left.map((run) => [run.id, run]));
  return search(indexOf(left, { runs, task, of }), words, left.length).map(({ id }) => byId.get(id)!);
}

/** What is searched with each key is put together once, until a record or what else narrows the Book changes. */
let indexed: { key: readonly unknown[]; index: SearchIndex } | null = null;

function indexOf(
  left: readonly Run[],
  { runs, task, of }: { runs: readonly Run[]; task: string; of: string },
): SearchIndex {
  const key = [runs, task, of, shelf.records.value];
  if (!indexed || key.some((one, i) => one !== indexed!.key[i]))
    indexed = { key, index: searchIndex(left.map(searchableOf)) };
  return indexed.index;
}

/** Makes runs findable while nothing else is to be done, until `isGone`. */
export async function prepareBook(runs: readonly Run[], isGone: () => boolean): Promise<void> {
  await prepare(runs, searchableOf, isGone);
  await idle(1000);
  if (!isGone()) indexOf(runs, { runs, task: '', of: '' });
}

/** The Book as a table for a spreadsheet: one line for each thing that was made. */
export function bookTable(runs: readonly Run[]): string {
  const lines = runs.flatMap((run) => {
    const head = [endOf(run), taskName(run.task), run.title];
    const kept = keptOf(run);
    if (kept.length === 0) return [[...head, '', '', '', '', '', run.id]];
    return kept.map((record) => {
      const { title, line, code = '', did = '' } = describe(record);
      return [...head, record.kind, code, `${title}${line ? `, ${line}` : ''}`, did, lotsOf(record), record.id];
    });
  });
  return csvOf([['ended (UTC)', 'task', 'run', 'kind', 'code', 'what', 'counted', 'lots', 'id'], ...lines]);
}

/** Lots that are in it; what only led to it is none of them. */
function lotsOf(record: AnyRecord): string {
  const own = [record, ...ancestors(record.id, 'is in it').map(({ record: one }) => one)];
  return own.flatMap((one) => ((isOf('bottle', one) || isOf('supply', one)) && one.lot ? one.lot : [])).join('; ');
}
