import { backupText, largestBackup, readBackup, textOf, type BackupContent } from './backupFile';
import { isLocked, unlockBackup } from './backupLock';
import { storedAllEvents, storedRecords } from '../store/bulk';
import { writeMany } from '../door';
import { noteRestored } from './lastBackup';
import { planMerge, type Plan } from './merge';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { newId, readAll } from '../shelf';

export interface Backup {
  readonly text: Blob;
  readonly records: number;
  readonly events: number;
}

/** Everything that is stored, as one file; what cannot be read goes along untouched. */
export async function makeBackup(): Promise<Backup> {
  const records: Stored[][] = [];
  const events: RunEvent[][] = [];
  for await (const page of storedRecords()) records.push(page);
  for await (const page of storedAllEvents()) events.push(page);
  const holds = { records: records.flat().length, events: events.flat().length };
  const parts: string[] = [];
  const content = { made: new Date().toISOString(), holds, records: pages(records), events: pages(events) };
  for await (const part of backupText(content)) parts.push(part);
  return { text: new Blob(parts, { type: 'application/json' }), ...holds };
}

async function* pages<T>(list: readonly T[]): AsyncGenerator<T> {
  yield* list;
}

export type Opened =
  { state: 'open'; content: BackupContent } | { state: 'locked' } | { state: 'refused'; why: string };

/** Looks into a file; changes nothing. A locked one wants its passphrase. */
export async function openBackup(file: Blob, passphrase?: string): Promise<Opened> {
  if (file.size > largestBackup)
    return {
      state: 'refused',
      why: `This file has ${Math.round(file.size / 1024 ** 2)} MB. A backup of Minim has at most 128 MB.`,
    };
  const text = textOf(new Uint8Array(await file.arrayBuffer()));
  if (text === null)
    return { state: 'refused', why: 'This file is no backup of Minim, or another program has changed its letters.' };
  if (isLocked(text) && passphrase === undefined) return { state: 'locked' };
  const plain = isLocked(text) ? await unlockBackup(text, passphrase!) : text;
  if (plain === null)
    return {
      state: 'refused',
      why: 'It does not open: the passphrase is another one, or the file was changed or cut off.',
    };
  const read = readBackup(plain);
  return read.ok ? { state: 'open', content: read.content } : { state: 'refused', why: read.why };
}

/** Merge: by id, the newer wins. Replace: what is here goes, all of it. */
export type Way = 'merge' | 'replace';

export interface Restoring extends Plan {
  readonly way: Way;
  /** When the backup was made, as its file says. */
  readonly made: string;
  /** Records that are here now and will not be afterwards. */
  readonly gone: number;
}

/** Says what a restore would do. */
export async function planRestore(content: BackupContent, way: Way): Promise<Restoring> {
  const records = new Map<string, Stored>();
  for await (const page of storedRecords()) for (const record of page) records.set(record.id, record);
  if (way === 'replace') {
    const plan = planMerge(content, { records: new Map(), events: [] }, newId);
    const kept = new Set(plan.changes.flatMap((change) => ('record' in change ? [change.record.id] : [])));
    return { ...plan, way, made: content.made, gone: [...records.keys()].filter((id) => !kept.has(id)).length };
  }
  const runs = new Set(content.events.map((event) => (event as Partial<RunEvent> | null)?.run));
  const events: RunEvent[] = [];
  for await (const page of storedAllEvents()) events.push(...page.filter(({ run }) => runs.has(run)));
  return { ...planMerge(content, { records, events }, newId), way, made: content.made, gone: 0 };
}

export interface Progress {
  /** 0 to 1. */
  progress: (share: number) => void;
  /** Breaks it off; then nothing has changed. */
  signal: AbortSignal;
}

/** Does what the plan says: all of it or nothing, in both copies. Rejects with an AbortError when it was broken off. */
export async function restore({ changes, way, made }: Restoring, { progress, signal }: Progress): Promise<void> {
  await writeMany({
    changes,
    replace: way === 'replace',
    progress: (done) => progress(changes.length === 0 ? 1 : done / changes.length),
    signal,
  });
  await noteRestored(changes.filter((change) => 'record' in change).length, Date.parse(made));
  await readAll();
}
