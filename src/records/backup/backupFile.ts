import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { inOrder } from '../union/json';

/** Marks a file as a backup of Minim. The shape is published as backup.schema.json. */
export const backupFormat = 'minim-backup';
export const backupVersion = 1;

/** Bytes of the largest file that is looked into; 50,000 records with their runs are about a third of it. */
export const largestBackup = 128 * 1024 * 1024;

/** What is in a backup before anybody has looked at its items. */
export interface BackupContent {
  readonly made: string;
  readonly records: readonly unknown[];
  readonly events: readonly unknown[];
  /** Items that the file says it holds and that could not be read; 0 in a whole file. */
  readonly missing: number;
}

export type BackupRead =
  | { ok: true; content: BackupContent }
  /** One sentence in the user's words. */
  | { ok: false; why: string };

interface Head {
  made: string;
  holds: { records: number; events: number };
}
interface Parts {
  records: AsyncIterable<readonly Stored[]>;
  events: AsyncIterable<readonly RunEvent[]>;
}

/** The beginning of a backup's text; what follows is {@link backupText}. */
export function backupHead({ made, holds }: Head): string {
  const head = { format: backupFormat, version: backupVersion, made, holds };
  return `${JSON.stringify(head, null, 1).slice(0, -2)},\n "records": [`;
}

/** The text of a backup after its head, in pieces: one item a line, so that a torn file still gives the lines before the tear; the same text for the same items. */
export async function* backupText({ records, events }: Parts): AsyncGenerator<string> {
  yield* lines(records);
  yield '],\n "events": [';
  yield* lines(events);
  yield ']\n}\n';
}

async function* lines(pages: AsyncIterable<readonly object[]>): AsyncGenerator<string> {
  let before = '\n';
  for await (const page of pages) {
    yield page.map((item, i) => `${i === 0 ? before : ',\n'}${inOrder(item)}`).join('');
    before = ',\n';
  }
  yield '\n';
}

/** Reads a file's bytes as text; null when they are no UTF-8, as every backup is. */
export function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Reads a backup's text. Of a torn one it gives what can be read; anything else is refused with one sentence. */
export function readBackup(text: string): BackupRead {
  let whole: unknown;
  try {
    whole = JSON.parse(text);
  } catch {
    return salvage(text);
  }
  if (!isObject(whole) || whole['format'] !== backupFormat)
    return { ok: false, why: 'This file is no backup of Minim.' };
  const why = whyNotOpened(whole['version']);
  if (why !== '') return { ok: false, why };
  const { made, records, events } = whole;
  if (!Array.isArray(records) || !Array.isArray(events))
    return { ok: false, why: 'This file says that it is a backup of Minim, but holds no records.' };
  const missing = Math.max(0, promised(whole['holds']) - records.length - events.length);
  return { ok: true, content: { made: typeof made === 'string' ? made : '', records, events, missing } };
}

/** Why a file with this number of its form is not opened; '' for one that was released. */
function whyNotOpened(version: unknown): string {
  if (!Number.isInteger(version) || (version as number) < 1)
    return 'This backup does not say which form it has: another program has changed it, or it is damaged.';
  return (version as number) > backupVersion
    ? 'This backup was made by a newer Minim. Update Minim, then restore it.'
    : '';
}

function promised(holds: unknown): number {
  if (!isObject(holds)) return 0;
  const [records, events] = [Number(holds['records']), Number(holds['events'])];
  return Number.isSafeInteger(records + events) ? records + events : 0;
}

/** Line by line: every line that is a whole item counts. */
function salvage(text: string): BackupRead {
  const head = text.slice(0, 400);
  if (!/"format":\s*"minim-backup"/.test(head)) return { ok: false, why: 'This file is no backup of Minim.' };
  const version = /"version":\s*([^,\s}]*)/.exec(head)?.[1]; // torn before it: what can be read counts
  const why = version === undefined || version === '' ? '' : whyNotOpened(parsed(version));
  if (why !== '') return { ok: false, why };
  const records: unknown[] = [];
  const events: unknown[] = [];
  for (const line of text.split('\n')) {
    if (!line.startsWith('{"')) continue;
    const item = parsed(line.replace(/,\s*$/, ''));
    if (!isObject(item)) continue;
    (typeof item['run'] === 'string' && 'seq' in item ? events : records).push(item);
  }
  if (records.length + events.length === 0)
    return { ok: false, why: 'This backup is damaged: nothing in it can be read.' };
  const counts = [...head.matchAll(/"(?:records|events)":\s*(\d+)/g)].map((match) => Number(match[1]));
  const missing = Math.max(1, counts.reduce((sum, n) => sum + n, 0) - records.length - events.length);
  return { ok: true, content: { made: /"made":\s*"([^"]{1,40})"/.exec(head)?.[1] ?? '', records, events, missing } };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
