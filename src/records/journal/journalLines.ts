import { crc32 } from '../../core/number/crc32';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';

/** One write as a line of the journal. `n` is the number that the store counted with it. */
export interface Batch {
  readonly n: number;
  readonly records?: readonly Stored[];
  readonly events?: readonly RunEvent[];
  readonly gone?: readonly string[];
}

/**
 * First line of a journal file. Everything up to write `base` is in this file whole, so lines up to it in other files count no more;
 * -1 in a file that was begun beside others, or in place of lost ones: it holds only what it was given.
 * It is written last: a file without it was not finished.
 */
export interface Head {
  readonly journal: 1;
  readonly store: string;
  readonly base: number;
}

/** The head has this many bytes, the line end among them, so that it can be written when all else is on the disk. */
export const headBytes = 160;

const encoder = new TextEncoder();
const decoder = new TextDecoder();
const newline = 10;
const sumBytes = 9; // eight hexadecimal digits and a space

/** A value as a line: checksum, space, JSON, line end. */
export function lineOf(value: object, padTo = 0): Uint8Array {
  const json = encoder.encode(JSON.stringify(value));
  const line = new Uint8Array(Math.max(sumBytes + json.length + 1, padTo)).fill(32);
  line.set(json, sumBytes);
  line[line.length - 1] = newline;
  const sum = crc32(line.subarray(sumBytes, -1)).toString(16).padStart(8, '0');
  line.set(encoder.encode(sum));
  return line;
}

/** What a line holds, given without its line end; undefined when it is damaged. */
export function readLine(line: Uint8Array): unknown {
  if (line.length < sumBytes + 2) return undefined;
  const sum = decoder.decode(line.subarray(0, sumBytes - 1));
  if (crc32(line.subarray(sumBytes)) !== Number.parseInt(sum, 16)) return undefined;
  try {
    return JSON.parse(decoder.decode(line.subarray(sumBytes)));
  } catch {
    return undefined;
  }
}

/** The batch in a line; null when the line is damaged. */
export function readBatch(line: Uint8Array): Batch | null {
  const value = readLine(line) as Batch | undefined;
  return value && typeof value === 'object' && Number.isInteger(value.n) ? value : null;
}

/** The head in a line; null when it is damaged, or not there yet. */
export function readHead(line: Uint8Array): Head | null {
  const value = readLine(line) as Head | undefined;
  return value?.journal === 1 && typeof value.store === 'string' && Number.isInteger(value.base) ? value : null;
}
