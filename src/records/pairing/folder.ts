import { makeBackup } from '../backup/backup';
import { largestBackup, readBackup, textOf, type BackupContent } from '../backup/backupFile';
import { remember, remembered, storedState } from '../store/database';
import { newId } from '../shelf';
import { joinHere } from './here';
import type { Parcel } from '../union/summary';

/*
 * A folder that several devices reach, each by its own way: one file a device, which that device alone writes. What else lies
 * there, and what is only half there, is left alone.
 */

/** What is remembered of it on this device. */
interface Kept {
  /** The file of this device. */
  readonly file: string;
  /** `made` in it, as this device wrote it: another one in it was written by somebody else. */
  readonly made: string;
  /** How far the store was when it was written. */
  readonly n: number;
  /** The files of other devices as they were when they were read: time and size. */
  readonly read: Readonly<Record<string, string>>;
}

/** What a look into the folder did. */
export interface Looked {
  /** Files of other devices that had something new in them. */
  readonly joined: number;
  /** Whether the file of this device was written. */
  readonly wrote: boolean;
  /** Files of other devices that lie there. */
  readonly others: number;
}

const NAME = /^minim-[0-9a-f-]{36}\.minim$/;

/** Reads what other devices left in a folder, and leaves there what this one holds, if that is new. One window at a time. */
export async function lookIntoFolder(folder: FileSystemDirectoryHandle): Promise<Looked | null> {
  return navigator.locks.request('minim-folder', { ifAvailable: true }, (lock) => (lock ? look(folder) : null));
}

async function look(folder: FileSystemDirectoryHandle): Promise<Looked> {
  let kept = await keptOf(folder);
  const read: Record<string, string> = {};
  let joined = 0;
  for await (const [name, handle] of folder.entries()) {
    if (handle.kind !== 'file' || !NAME.test(name) || name === kept.file) continue;
    const file = await (handle as FileSystemFileHandle).getFile();
    const seen = `${file.lastModified} ${file.size}`;
    if (kept.read[name] !== seen) {
      const content = await wholeContent(file);
      if (!content) continue; // half written, or damaged: looked at again
      await joinHere(content);
      joined++;
    }
    read[name] = seen;
  }
  kept = { ...kept, read };
  const n = (await storedState())?.n ?? 0;
  const wrote = n !== kept.n;
  if (wrote) kept = { ...kept, n, made: await writeOwn(folder, kept.file) };
  await remember(KEPT, kept);
  return { joined, wrote, others: Object.keys(read).length };
}

const KEPT = 'sharedFolderState';

/** What is remembered; with another file name where somebody else wrote the one of this device, as a copied profile does. */
async function keptOf(folder: FileSystemDirectoryHandle): Promise<Kept> {
  const kept = (await remembered(KEPT)) as Kept | undefined;
  const fresh: Kept = { file: `minim-${newId()}.minim`, made: '', n: -1, read: {} };
  if (!kept) return fresh;
  const handle = await folder.getFileHandle(kept.file).catch(() => null);
  if (!handle) return { ...kept, n: -1 }; // gone, or another folder
  const head = await (await handle.getFile()).slice(0, 400).text();
  return madeIn(head) === kept.made ? kept : { ...fresh, read: kept.read };
}

function madeIn(head: string): string {
  return /"made":\s*"([^"]{1,40})"/.exec(head)?.[1] ?? '';
}

/** Writes all that is here; the old file stays whole until the new one is. Tells when it was made, as it says itself. */
async function writeOwn(folder: FileSystemDirectoryHandle, name: string): Promise<string> {
  const { text } = await makeBackup();
  const handle = await folder.getFileHandle(name, { create: true });
  const writable = await handle.createWritable();
  await writable.write(text);
  await writable.close();
  return madeIn(await text.slice(0, 400).text());
}

/** What is in a file of another device; null where it is not all there. */
async function wholeContent(file: File): Promise<(Parcel & BackupContent) | null> {
  if (file.size > largestBackup) return null;
  const text = textOf(new Uint8Array(await file.arrayBuffer()));
  const read = text?.trimEnd().endsWith(']\n}') ? readBackup(text) : null;
  return read?.ok && read.content.missing === 0 ? (read.content as Parcel & BackupContent) : null;
}

/** Forgets the folder. What lies in it stays there. */
export function forgetFolder(): Promise<unknown> {
  return remember(KEPT, undefined);
}
