import { go } from '../nav/route';

/** The part of the Launch Handler interface (WICG) that is used: files that were opened with the installed app. */
interface Launched {
  launchQueue?: { setConsumer(take: (launch: { files?: readonly FileSystemFileHandle[] }) => void): void };
}

/** Takes a file that was opened with Minim from the phone's list of files: it is looked into, and what it would change is shown. */
export function takeOpenedFiles(): void {
  (window as Launched).launchQueue?.setConsumer(({ files }) => {
    const [first] = files ?? [];
    if (first) void open(first);
  });
}

async function open(handle: FileSystemFileHandle): Promise<void> {
  go(['devices']);
  const [{ look }, file] = await Promise.all([import('./RestorePart'), handle.getFile()]);
  await look(file);
}
