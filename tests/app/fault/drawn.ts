import { h, options, render } from 'preact';
import { App } from '../../../src/app/App';
import { bookTable } from '../../../src/app/describe/bookEntries';
import { describe as wordsOf } from '../../../src/app/describe/describe';
import { searchShelf } from '../../../src/app/describe/shelfIndex';
import { go, route } from '../../../src/app/nav/route';
import { recordTable } from '../../../src/app/record/paper';
import { batchTable } from '../../../src/app/sheet/batchTable';
import { openBackup, planRestore, restore } from '../../../src/records/backup/backup';
import { isEditable, isLabelled, isOf, kindNames, type AnyRecord } from '../../../src/records/kind/kinds';
import { endedRuns } from '../../../src/records/endedRuns';
import { load, shelf } from '../../../src/records/shelf';
import { isStocked } from '../../../src/records/stock';
import { shelfTasks, tasks } from '../../../src/tasks';
import type { Element } from './pageInMemory';

/** What went wrong, and on which page. */
export interface Wrong {
  readonly page: string;
  readonly what: string;
}

const thrown: unknown[] = [];
const turn = () => new Promise<void>((done) => setImmediate(done));
const QUICK_TURNS = 20;
const LONGEST = 30_000; // ms: what hangs, on a busy machine too

/** Waits until a page has all that it waits for; false when that never comes. */
async function settled(root: Element): Promise<boolean> {
  const until = performance.now() + LONGEST;
  for (let i = 0, calm = 0; performance.now() < until; i++) {
    await turn();
    calm = root.isBusy ? 0 : calm + 1;
    if (calm > 1) return true;
    if (i > QUICK_TURNS) await new Promise((done) => setTimeout(done, 1));
  }
  return false;
}

const note = (error: unknown) => void thrown.push(error);
const say = console.error;

/** Ends what {@link openApp} began. */
export async function closeApp(root: Element): Promise<void> {
  render(null, root as never);
  for (let i = 0; i < 5; i++) await turn(); // effects are taken back
  console.error = say;
  process.off('unhandledRejection', note);
}

/** Draws the app once; pages are gone to afterwards. What a boundary catches, and what no one does, is noted. */
export async function openApp(root: Element): Promise<void> {
  Object.assign(options, { requestAnimationFrame: (work: () => void) => void setImmediate(work) });
  console.error = note; // where a boundary says what it caught
  process.on('unhandledRejection', note);
  await load();
  render(h(App, null), root as never);
  await settled(root);
}

/** What can stand on no page. */
const NONSENSE = /\bNaN\b|\bundefined\b|Infinity|∞|\[object |Invalid Date/;
const BROKEN =
  /(?<!picture )cannot be shown|could not show|went wrong|could not work out|could not be worked out|could not be fetched/;
const SHORTEST = 5; // letters of a page that has more than its frame

/** Goes to a page and looks at it; hands back what is on it. */
export function draw(root: Element, parts: readonly string[], wrong: Wrong[]): Promise<string> {
  const page = parts.map((part) => part.slice(0, 60)).join('/');
  return look(root, { page, wrong, open: () => go(parts) });
}

interface Opening {
  readonly page: string;
  readonly wrong: Wrong[];
  readonly open: () => void;
}

/** Opens a page in some way and looks at it; hands back what is on it. */
export async function look(root: Element, { page, wrong, open }: Opening): Promise<string> {
  thrown.length = 0;
  tried(page, wrong, open);
  const isWhole = await settled(root);
  const found = thrown.splice(0);
  for (const error of found) wrong.push({ page, what: faultOf(error) });
  const text = root.textContent.replace(/\s+/g, ' ').trim();
  const where = route.value.join('/').slice(0, 60);
  if (!isWhole) wrong.push({ page, what: `never there (${where})` });
  else if (text.length < SHORTEST) wrong.push({ page, what: `blank (${where}): “${text}”` });
  const odd = BROKEN.exec(text) ?? (isAsStored(text) ? null : NONSENSE.exec(text));
  if (odd && found.length === 0)
    wrong.push({ page, what: `“${text.slice(Math.max(0, odd.index - 60), odd.index + 60)}”` });
  return text;
}

const isAsStored = (text: string) => text.includes('Minim cannot read this entry');

function faultOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const lines = (error.stack ?? '').split('\n').filter((line) => line.includes('/src/'));
  const places = lines.slice(0, 3).map((line) => line.replace(/.*\/src\/(.*?:\d+).*/, '$1'));
  return `${error.name}: ${error.message.slice(0, 120)} ${places.join(' < ')}`;
}

/** Every list, and what stands by itself. */
const LISTS: readonly (readonly string[])[] = [
  [],
  ['shelf'],
  ...kindNames.map((kind) => ['shelf', kind]),
  ...['due', 'shopping', 'archived'].map((list) => ['shelf', list]),
  ['shelf', 'find', 'a'],
  ['book'],
  ['labels'],
  ['settings'],
  ['keeping'],
];

/** Every page of a record. */
function pagesOf(record: AnyRecord): string[][] {
  const own = (...parts: string[]) => ['record', record.id, ...parts];
  const { results = [] } = wordsOf(record);
  return [
    ...[own(), own('paper'), own('trace'), own('again'), own('weigh'), own('photo', 'none')],
    ...results.map((_, i) => own('how', String(i))),
    ...(isStocked(record) ? [own('how', 'left'), own('mark')] : []),
    ...(isEditable(record) ? [own('edit')] : []),
    ...(isLabelled(record) ? [['labels', record.id]] : []),
    ...(isOf('layering', record) ? [['labels', record.strips.map(({ vial }) => vial).join(','), 'strips']] : []),
    ...(isOf('batch', record) ? [['sheet', record.id]] : []),
    ...(isOf('formula', record) ? [['formula', record.id]] : []),
    ...(isOf('run', record) && record.open === 1 ? [['run', record.id]] : []),
  ];
}

/**
 * What a phone can show of what it holds: each list, page, label, sheet, edit, table, what is kept as it is, and the first step of
 * each task. `of`: only the pages of these records, with the Shelf and the Book.
 */
export async function drawEverything(root: Element, of?: readonly string[]): Promise<Wrong[]> {
  const wrong: Wrong[] = [];
  for (const parts of of ? [[], ['shelf'], ['book']] : LISTS) await draw(root, parts, wrong);
  const runs = await endedRuns();
  const all = [...new Map([...shelf.records.value.values(), ...runs].map((one) => [one.id, one])).values()];
  const isDrawn = ({ id }: { id: string }) => !of || of.includes(id);
  for (const record of all.filter(isDrawn)) {
    const { fault } = wordsOf(record);
    if (fault) wrong.push({ page: `words of ${record.kind}`, what: faultOf(fault.error) });
    for (const parts of tried(`pages of ${record.kind}`, wrong, () => pagesOf(record)) ?? [])
      await draw(root, parts, wrong);
    tried(`table of ${record.kind}`, wrong, () => recordTable(record, []));
    if (isOf('batch', record)) tried('table of a batch', wrong, () => batchTable(record));
  }
  for (const { raw } of shelf.unreadable.value)
    if (isDrawn(raw) && !(await draw(root, ['record', raw.id], wrong)).includes('"kind": '))
      wrong.push({ page: `${raw.kind} as stored`, what: 'not shown' });
  for (const { id } of of ? [] : [...tasks, ...shelfTasks]) await draw(root, ['new', id], wrong);
  tried('table of the Book', wrong, () => bookTable(runs));
  tried('search', wrong, () => searchShelf('card', 200));
  return wrong;
}

function tried<T>(page: string, wrong: Wrong[], work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    wrong.push({ page, what: faultOf(error) });
    return undefined;
  }
}

/** Restores a file over everything, as a person does; one sentence where it is refused. */
export async function restored(text: string): Promise<string> {
  const opened = await openBackup(new Blob([text]));
  if (opened.state !== 'open') return opened.state === 'refused' ? opened.why : opened.state;
  const plan = await planRestore(opened.content, 'replace');
  await restore(plan, { progress: () => {}, signal: new AbortController().signal });
  return '';
}
