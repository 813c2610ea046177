import { headBytes, lineOf, readBatch, readHead, type Batch, type Head } from './journalLines';

/** The part of FileSystemSyncAccessHandle (WHATWG File System) that is used; the compiler's DOM library does not have it. */
export interface Handle {
  read(into: Uint8Array, options: { at: number }): number;
  write(from: Uint8Array, options: { at: number }): number;
  truncate(size: number): void;
  getSize(): number;
  flush(): void;
  close(): void;
}

/** A journal file that is open for appending. */
export interface JournalFile {
  readonly name: string;
  readonly handle: Handle;
  head: Head | null;
  /** Bytes of whole lines. */
  size: number;
  /** Number of the last write in it; `base` of the head when there is none, -1 without a head. */
  last: number;
  /** True when a line near its end, or its head, cannot be read. */
  damaged: boolean;
}

const newline = 10;
const chunk = 1 << 18;

/** Opens what a file holds. A torn last line, as a kill leaves it, is cut off. */
export function openFile(name: string, handle: Handle): JournalFile {
  const head = readHead(readBytes(handle, 0, headBytes).subarray(0, -1));
  const file = { name, handle, head, size: handle.getSize(), last: head?.base ?? -1, damaged: head === null };
  if (typeof file.size !== 'number') throw new Error('this browser opens files in an older way'); // Safari before 16.4
  if (file.size > headBytes) findEnd(file);
  return file;
}

/** Looks for the last readable line, from the end, further back each time. */
function findEnd(file: JournalFile): void {
  for (let look = 1 << 16; ; look *= 8) {
    const from = Math.max(headBytes, file.size - look);
    const bytes = readBytes(file.handle, from, file.size - from);
    const end = bytes.lastIndexOf(newline) + 1;
    if (end === 0 && from > headBytes) continue;
    if (end < bytes.length) cut(file, from + end);
    for (let stop = end; stop > 0;) {
      const start = stop < 2 ? 0 : bytes.lastIndexOf(newline, stop - 2) + 1;
      if (start === 0 && from > headBytes) break; // the line may begin before what was read
      const batch = readBatch(bytes.subarray(start, stop - 1));
      if (batch) return void (file.last = Math.max(file.last, batch.n));
      file.damaged = true;
      stop = start;
    }
    if (from === headBytes) return;
  }
}

/** Makes an empty file; its head, if it is known now, at once. */
export function beginFile(name: string, handle: Handle, head: Head | null): JournalFile {
  const file: JournalFile = { name, handle, head: null, size: 0, last: -1, damaged: false };
  handle.truncate(0);
  append(file, new Uint8Array(headBytes).fill(32).fill(newline, -1));
  if (head) writeHead(file, head);
  return file;
}

/** Writes the head: from now on the file counts. */
export function writeHead(file: JournalFile, head: Head): void {
  file.handle.write(lineOf(head, headBytes), { at: 0 });
  file.handle.flush();
  file.head = head;
  file.last = Math.max(file.last, head.base);
}

/** Appends a line and waits for the disk. When it does not fit, the file is as before and the error is the caller's. */
export function appendBatch(file: JournalFile, batch: Batch): void {
  appendLine(file, batch);
  file.handle.flush();
}

/** Appends a line without waiting for the disk. */
export function appendLine(file: JournalFile, batch: Batch): void {
  append(file, lineOf(batch));
  file.last = Math.max(file.last, batch.n);
}

function append(file: JournalFile, bytes: Uint8Array): void {
  try {
    const written = file.handle.write(bytes, { at: file.size });
    if (written !== bytes.length) throw new DOMException('the phone has no room left', 'QuotaExceededError');
  } catch (error) {
    cut(file, file.size);
    throw error;
  }
  file.size += bytes.length;
}

function cut(file: JournalFile, size: number): void {
  file.handle.truncate(size);
  file.handle.flush();
  file.size = size;
}

function readBytes(handle: Handle, at: number, length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  return bytes.subarray(0, handle.read(bytes, { at }));
}

/** All batches of a file in order; null for each line that is damaged. */
export function* batchesOf(file: JournalFile): Generator<Batch | null> {
  let rest = new Uint8Array(0);
  for (let at = headBytes; at < file.size; at += chunk) {
    const fresh = readBytes(file.handle, at, Math.min(chunk, file.size - at));
    const bytes = new Uint8Array(rest.length + fresh.length);
    bytes.set(rest);
    bytes.set(fresh, rest.length);
    let start = 0;
    for (let end = bytes.indexOf(newline, rest.length); end >= 0; end = bytes.indexOf(newline, start)) {
      yield readBatch(bytes.subarray(start, end));
      start = end + 1;
    }
    rest = bytes.slice(start);
  }
}
