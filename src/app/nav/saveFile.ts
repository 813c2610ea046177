import { forFile } from '../../ui/format';

/** Hands a text over as a file: name with its ending, and kind (MIME type). */
export function saveFile(name: string, text: string, type: string): void {
  saveBlob(name, new Blob([text], { type: `${type};charset=utf-8` }));
}

/** Hands a file over under a name with its ending. */
export function saveBlob(name: string, file: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name.replace(/[^\p{L}\p{N} ._-]/gu, '');
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000); // ms, when the download has long begun
}

/** Shares files where the phone can, else saves them. Closing the share sheet is no fault. */
export async function shareOrSave(files: File[]): Promise<void> {
  if (!navigator.canShare?.({ files })) return files.forEach((file) => saveBlob(file.name, file));
  try {
    await navigator.share({ files });
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) throw error;
  }
}

/** Hands over the table (CSV) that the work makes; the mark at its beginning tells spreadsheets that it is UTF-8. */
export function saveTable(name: string, work: () => string): void {
  saveFile(`${name}.csv`, `\uFEFF${forFile(work)}`, 'text/csv');
}
