import { go } from '../nav/route';

/** The part of the Launch Handler interface (WICG) that is used: how the installed app was begun, over what was open. */
interface Launch {
  files?: readonly FileSystemFileHandle[];
  targetURL?: string | null;
}
interface Launched {
  launchQueue?: { setConsumer(take: (launch: Launch) => void): void };
}

/**
 * Takes a file that was opened with Minim from the phone's list of files: it is looked into, and what it would change is shown. A
 * shortcut leads to its task; the icon alone leaves a run where it is.
 */
export function takeOpenedFiles(): void {
  (window as Launched).launchQueue?.setConsumer(({ files, targetURL }) => {
    const [first] = files ?? [];
    const hash = targetURL ? new URL(targetURL).hash : '';
    if (first) void open(first);
    else if (hash !== '') location.hash = hash;
  });
}

async function open(handle: FileSystemFileHandle): Promise<void> {
  go(['devices']);
  const [{ look }, file] = await Promise.all([import('./RestorePart'), handle.getFile()]);
  await look(file);
}
