import { makeBackup } from '../../records/backup/backup';
import { remember, remembered } from '../../records/store/database';
import { nameThisDevice } from '../keeping/deviceSort';
import { noteBackup, sinceBackup } from '../../records/backup/lastBackup';

/** The part of the File System Access interface (WICG) that is used; only some browsers have it. */
type Folder = FileSystemDirectoryHandle & {
  queryPermission(what: { mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission(what: { mode: 'readwrite' }): Promise<PermissionState>;
};
type Picking = { showDirectoryPicker?: (options: { id: string; mode: 'readwrite' }) => Promise<Folder> };

const fileName = 'minim-backup.json';

/** Whether this browser lets a folder be chosen for copies. */
export function canChooseFolder(): boolean {
  return 'showDirectoryPicker' in window;
}

/** Lets the person choose the folder; null when they did not. */
export async function chooseFolder(): Promise<string | null> {
  try {
    const folder = await (window as Picking).showDirectoryPicker!({ id: 'minim', mode: 'readwrite' });
    await remember('folder', folder);
    return folder.name;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}

/** The chosen folder, and whether it may be written to without asking again. */
export async function chosenFolder(): Promise<{ name: string; allowed: boolean } | null> {
  const folder = (await remembered('folder')) as Folder | undefined;
  return folder
    ? { name: folder.name, allowed: (await folder.queryPermission({ mode: 'readwrite' })) === 'granted' }
    : null;
}

/** Chooses no folder any more. What lies in it stays there. */
export function leaveFolder(): Promise<unknown> {
  return remember('folder', undefined);
}

/** Writes the copy now; asks for permission when it must, which only works after a tap. The old copy stays whole until the new one is. */
export async function copyToFolder(): Promise<boolean> {
  const folder = (await remembered('folder')) as Folder | undefined;
  if (!folder || (await folder.requestPermission({ mode: 'readwrite' })) !== 'granted') return false;
  await writeCopy(folder);
  return true;
}

/** At the start: a new copy when there is anything new, and the folder may be written to. */
export async function copyWhenNew(): Promise<void> {
  const folder = canChooseFolder() ? await chosenFolder() : null;
  if (folder?.allowed && (await sinceBackup()).records > 0) await writeCopy((await remembered('folder')) as Folder);
}

async function writeCopy(folder: Folder): Promise<void> {
  await nameThisDevice();
  const { text } = await makeBackup();
  const file = await folder.getFileHandle(fileName, { create: true });
  const writable = await file.createWritable();
  await writable.write(text);
  await writable.close();
  await noteBackup();
}
