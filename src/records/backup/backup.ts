import { backupHead, backupText, largestBackup, readBackup, textOf, type BackupContent } from './backupFile';
import { isLocked, unlockBackup } from './backupLock';
import { storedAllEvents, storedRecords } from '../store/everything';
import { writeMany } from '../door';
import type { Bulk } from '../store/bulk';
import { noteRestored } from './lastBackup';
import { planMerge, planReplace, type Plan } from './merge';
import { GONE, type Stored } from '../kind/record';
import { recordsIn } from '../store/state';
import type { RunEvent } from '../kind/run';
import { photosAmong, type PhotoAmount } from '../photos';
import { sameJson } from '../union/json';
import { takeChanges } from '../shelf';

export interface Backup {
  readonly text: Blob;
  /** Without photos. */
  readonly records: number;
  readonly photos: PhotoAmount;
}

/** Everything that is stored, as one file; what cannot be read goes along untouched. */
export async function makeBackup(): Promise<Backup> {
  const holds = { records: 0, events: 0 };
  const kept = { records: 0, photos: { count: 0, bytes: 0 } };
  const records = counted(storedRecords(), (page) => {
    const { count, bytes } = photosAmong(page);
    kept.photos = { count: kept.photos.count + count, bytes: kept.photos.bytes + bytes };
    kept.records += page.filter(({ kind }) => !['photo', 'picture', 'device', GONE].includes(kind)).length;
    holds.records += page.length;
  });
  const events = counted(storedAllEvents(), (page) => (holds.events += page.length));
  const parts: Blob[] = []; // of its own each, so that the browser need not hold the whole text
  for await (const part of backupText({ records, events })) parts.push(new Blob([part]));
  const head = backupHead({ made: new Date().toISOString(), holds });
  return { text: new Blob([head, ...parts], { type: 'application/json' }), ...kept };
}

async function* counted<T>(pages: AsyncIterable<T>, count: (page: T) => void): AsyncGenerator<T> {
  for await (const page of pages) {
    count(page);
    yield page;
  }
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

/** Merge: all that was written on either side, and what is smell only stays so. Replace: what is here goes, all of it. */
export type Way = 'merge' | 'replace';

export interface Restoring extends Plan {
  readonly way: Way;
  /** When the backup was made, as its file says. */
  readonly made: string;
  /** Records that are here now and will not be afterwards. */
  readonly gone: number;
  /** In the file. */
  readonly photos: PhotoAmount;
}

/** Says what a restore would do. */
export async function planRestore(content: BackupContent, way: Way): Promise<Restoring> {
  const photos = photosAmong(content.records);
  const records = await storedHere(content);
  if (way === 'replace') {
    const plan = planReplace(content, records);
    const kept = new Set(plan.changes.flatMap((change) => ('record' in change ? [change.record.id] : [])));
    const gone = [...records.values()].filter(
      ({ id, kind }) => !kept.has(id) && kind !== 'picture' && kind !== GONE,
    ).length;
    return { ...plan, way, made: content.made, gone, photos };
  }
  const runs = runsMet(content, records);
  const events: RunEvent[] = [];
  for await (const page of storedAllEvents()) events.push(...page.filter(({ run }) => runs.has(run)));
  return { ...planMerge(content, { records, events }), way, made: content.made, gone: 0, photos };
}

/** The runs of a file, those that they were parted from, and those here that were parted from them. */
function runsMet(content: BackupContent, here: ReadonlyMap<string, Stored>): ReadonlySet<string | undefined> {
  const runs = new Set(content.events.map((event) => (event as Partial<RunEvent> | null)?.run));
  const asRun = (record: unknown) => (record ?? {}) as { id?: string; kind?: unknown; partOf?: string };
  for (const record of content.records) {
    const { id, kind, partOf } = asRun(record);
    if (kind === 'run') runs.add(id).add(partOf);
  }
  for (const record of here.values()) if (runs.has(asRun(record).partOf)) runs.add(record.id);
  return runs;
}

/** The records that are here, by id, with as few pictures as can be. */
async function storedHere(content: BackupContent): Promise<Map<string, Stored>> {
  const inFile = new Map(content.records.map((item) => [(item as Partial<Stored> | null)?.id, item]));
  const here = new Map<string, Stored>();
  for await (const page of storedRecords()) {
    for (const record of page)
      here.set(record.id, record.kind === 'picture' ? pictureHere(record, inFile.get(record.id)) : record);
  }
  return here;
}

/** A picture as a merge needs it: the file's own where both are the same, no more than its id where the file has none. */
function pictureHere(picture: Stored, inFile: unknown): Stored {
  if (inFile === undefined) return { id: picture.id, kind: picture.kind, v: picture.v };
  return sameJson(inFile, picture) ? (inFile as Stored) : picture;
}

export interface Progress {
  /** 0 to 1. */
  progress: (share: number) => void;
  /** Breaks it off; then nothing has changed. */
  signal: AbortSignal;
}

/** Does what the plan says: all of it or nothing, in both copies. Rejects with an AbortError when it was broken off. */
export async function restore({ changes, way, made }: Restoring, { progress, signal }: Progress): Promise<void> {
  const bulk: Bulk = {
    changes,
    replace: way === 'replace',
    progress: (done) => progress(changes.length === 0 ? 1 : done / changes.length),
    signal,
  };
  await writeMany(bulk, async () => {
    await noteRestored(recordsIn(changes), Date.parse(made));
    takeChanges(changes, way === 'replace');
  });
}
