import { effect, signal } from '@preact/signals';
import { forgetFolder, lookIntoFolder } from '../../records/pairing/folder';
import { shelf } from '../../records/shelf';
import { remember, remembered } from '../../records/store/database';
import { nameThisDevice } from '../keeping/deviceSort';
import { FOLDER, folderAsks } from './folderAsks';
import { said } from './pairing';

/** The part of the File System Access interface (WICG) that is used; only some browsers have it. */
type Folder = FileSystemDirectoryHandle & {
  queryPermission(what: { mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission(what: { mode: 'readwrite' }): Promise<PermissionState>;
};
type Picking = { showDirectoryPicker?: (options: { id: string; mode: 'readwrite' }) => Promise<Folder> };

/** The folder that this device shares with others, and how that goes. */
export type Shared =
  | { state: 'none' }
  /** The browser wants to be asked again. */
  | { state: 'ask'; name: string }
  | { state: 'on'; name: string; others: number; at: Date }
  | { state: 'failed'; name: string; why: string };

/** What the screens show of it; null before it was looked for. */
export const shared = signal<Shared | null>(null);

const EVERY = 60_000; // ms between two looks while Minim is in front (our choice)
const SETTLES = 3000; // ms after something was stored: more may follow at once (our choice)

/** Whether this browser lets a folder be chosen. */
export function canShareFolder(): boolean {
  return 'showDirectoryPicker' in window;
}

/** Lets the person choose the folder, and looks into it. */
export async function shareFolder(): Promise<void> {
  try {
    const folder = await (window as Picking).showDirectoryPicker!({ id: 'minim-devices', mode: 'readwrite' });
    await remember(FOLDER, folder);
    await look();
    watchFolder();
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) throw error;
  }
}

/** Asks for the permission again, which only works after a tap, and looks into the folder. */
export async function allowFolder(): Promise<void> {
  const folder = (await remembered(FOLDER)) as Folder | undefined;
  await folder?.requestPermission({ mode: 'readwrite' });
  await look();
}

/** Shares no folder any more. What lies in it stays there. */
export async function leaveFolder(): Promise<void> {
  await remember(FOLDER, undefined);
  await forgetFolder();
  shared.value = { state: 'none' };
}

/** Looks into the folder now, if there is one and the browser lets. */
export async function look(): Promise<void> {
  const now = await lookNow();
  if (now) shared.value = now;
  folderAsks.value = shared.value?.state === 'ask' ? shared.value.name : '';
}

/** How it goes now; null while another window looks. */
async function lookNow(): Promise<Shared | null> {
  const folder = (await remembered(FOLDER)) as Folder | undefined;
  if (!folder) return { state: 'none' };
  const { name } = folder;
  try {
    if ((await folder.queryPermission({ mode: 'readwrite' })) !== 'granted') return { state: 'ask', name };
    await nameThisDevice();
    const found = await lookIntoFolder(folder);
    return found && { state: 'on', name, others: found.others, at: new Date() };
  } catch (error) {
    return { state: 'failed', name, why: said(error) };
  }
}

let watched = false;

/** Looks at the start, when Minim comes to the front or leaves it, after something was stored, and now and then. */
export function watchFolder(): void {
  if (watched) return;
  watched = true;
  let timer = 0;
  const soon = (ms: number) => {
    clearTimeout(timer);
    timer = window.setTimeout(() => void look().finally(() => soon(EVERY)), ms);
  };
  document.addEventListener('visibilitychange', () => soon(0));
  effect(() => {
    void shelf.records.value;
    soon(SETTLES);
  });
  soon(0);
}
