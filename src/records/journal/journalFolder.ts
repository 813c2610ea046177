import { v7 } from 'uuid';
import { beginFile, openFile, type Handle, type JournalFile } from './journalFile';
import type { Head } from './journalLines';

/** The methods of the origin private file system that the compiler's library lacks. */
type FileWithHandle = FileSystemFileHandle & { createSyncAccessHandle(): Promise<Handle> };
type Folder = FileSystemDirectoryHandle & { entries(): AsyncIterable<[string, FileSystemHandle]> };

/** The journal's own folder in the origin private file system. Rejects where the browser has none. */
export async function openFolder(): Promise<Folder> {
  const root = await navigator.storage.getDirectory();
  return (await root.getDirectoryHandle('journal', { create: true })) as Folder;
}

/** Opens every journal file that no other window holds, trying for that many ms; says how many are held. */
export async function openFiles(folder: Folder, patience: number): Promise<{ files: JournalFile[]; held: number }> {
  const files: JournalFile[] = [];
  let held = 0;
  for await (const [name, entry] of folder.entries()) {
    if (entry.kind !== 'file' || !name.endsWith('.jsonl')) continue;
    const handle = await openWhenFree(entry as FileWithHandle, patience);
    if (handle) files.push(openFile(name, handle));
    else held++;
  }
  return { files: files.sort((a, b) => (a.name < b.name ? -1 : 1)), held };
}

/** A page that is being reloaded lets go of its files a moment later than it should; a second window does not let go. */
async function openWhenFree(file: FileWithHandle, patience: number): Promise<Handle | null> {
  for (let waited = 0; ; waited += 50) {
    try {
      return await file.createSyncAccessHandle();
    } catch (error) {
      const busy =
        error instanceof DOMException && ['NoModificationAllowedError', 'InvalidStateError'].includes(error.name);
      if (!busy) throw error;
      if (waited >= patience) return null;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}

/** Makes a new journal file; names sort by time. */
export async function newFile(folder: Folder, head: Head | null): Promise<JournalFile> {
  const name = `${v7()}.jsonl`;
  const file = (await folder.getFileHandle(name, { create: true })) as FileWithHandle;
  return beginFile(name, await file.createSyncAccessHandle(), head);
}

/** Removes a file that no longer counts. */
export async function removeFile(folder: Folder, file: JournalFile): Promise<void> {
  file.handle.close();
  await folder.removeEntry(file.name);
}
