import { portions } from '../store/change';
import { storedState } from '../store/database';
import { storedAllEvents, storedRecords } from '../store/everything';
import { appendBatch, appendLine, writeHead, type JournalFile } from './journalFile';
import { newFile, openFiles, openFolder, removeFile } from './journalFolder';
import type { Batch } from './journalLines';
import { batchOf } from './journalRead';

/** The journal files that this window has open, and what is not in them yet. */
export interface Holdings {
  readonly folder: Awaited<ReturnType<typeof openFolder>>;
  files: JournalFile[];
  /** Files that another window has open. */
  readonly held: number;
  /** The file that is written to; none before the first write. */
  main: JournalFile | null;
  /** Writes since the journal began to be written again; null when it is not. */
  since: Batch[] | null;
  /** Writes that did not fit; they go in before the next one. */
  lacking: Batch[];
}

const mostLacking = 200; // writes kept in memory while the phone is full; beyond them the next start writes the journal again

/** Opens what there is; waits that many ms for files that another window holds. Rejects where the browser has no such file system. */
export async function openHoldings(patience: number): Promise<Holdings> {
  const folder = await openFolder();
  const { files, held } = await openFiles(folder, patience);
  const main = files.filter(({ head }) => head).sort((a, b) => b.last - a.last)[0] ?? null;
  return { folder, files, held, main, since: null, lacking: [] };
}

/** Writes one batch to the disk, after those that did not fit before. Throws when it does not fit; then it waits with them. */
export async function writeLine(own: Holdings, store: string, batch: Batch): Promise<void> {
  own.since?.push(batch);
  if (own.lacking.length <= mostLacking) own.lacking.push(batch);
  if (!own.main) {
    own.main = await newFile(own.folder, { journal: 1, store, base: batch.n === 1 ? 0 : -1 });
    own.files.push(own.main);
  }
  if (own.lacking.length > mostLacking) throw new Error('too much is lacking already');
  while (own.lacking.length > 0) {
    appendBatch(own.main, own.lacking[0]!);
    own.lacking.shift();
  }
}

let underWay: Promise<void> | null = null;

/** Writes the whole journal again from the store, into one file. Killed at any moment, the old files or the new one hold everything. */
export function rewrite(own: Holdings): Promise<void> {
  underWay ??= replaceWhole(own).finally(() => (underWay = null));
  return underWay;
}

async function replaceWhole(own: Holdings): Promise<void> {
  own.since = [];
  const state = await storedState();
  if (!state) return void (own.since = null);
  const fresh = await newFile(own.folder, null);
  try {
    for await (const page of storedRecords(1000))
      for (const line of portions(
        page.map((record) => ({ record })),
        25,
      ))
        appendLine(fresh, batchOf(state.n, line));
    for await (const page of storedAllEvents(4000))
      for (let i = 0; i < page.length; i += 100) appendLine(fresh, { n: state.n, events: page.slice(i, i + 100) });
    if ((await storedState())?.store !== state.store) throw new Error('the database was lost meanwhile');
    // Nothing is awaited from here to the take-over, so no write falls between the two files.
    for (const batch of own.since) appendLine(fresh, batch);
    fresh.handle.flush();
    writeHead(fresh, { journal: 1, store: state.store, base: state.n });
  } catch (error) {
    own.since = null;
    await removeFile(own.folder, fresh);
    throw error;
  }
  const old = own.files;
  Object.assign(own, { files: [fresh], main: fresh, since: null, lacking: [] });
  for (const file of old) await removeFile(own.folder, file);
}

/** Removes every journal file, also those that a closing window still holds for a moment. */
export async function erase(own: Holdings): Promise<void> {
  for (const file of own.files) file.handle.close();
  Object.assign(own, { files: [], main: null, since: null, lacking: [] });
  const root = await navigator.storage.getDirectory();
  for (let tries = 1; ; tries++) {
    try {
      return await root.removeEntry('journal', { recursive: true });
    } catch (error) {
      if (error instanceof DOMException && error.name === 'NotFoundError') return;
      if (tries === 40) throw error;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}
