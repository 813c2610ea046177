import type { Stored } from '../kind/record';
import { runEvent, type RunEvent } from '../kind/run';

const deepest = 32; // our own records nest 5 deep
const longestId = 128; // characters; ours have 36
const forbidden = new Set(['__proto__', 'constructor', 'prototype']); // keys that mean something to JavaScript itself

/** Why an item of a file cannot be stored, in a few words; '' when it can. It need not be readable by this version. */
export function whyNotStorable(item: unknown): string {
  if (typeof item !== 'object' || item === null || Array.isArray(item)) return 'it is no record';
  const { id, kind, v } = item as Partial<Stored>;
  if (typeof id !== 'string' || id === '' || id.length > longestId) return 'it carries no id';
  if (typeof kind !== 'string' || kind === '' || kind.length > longestId) return 'it does not say what kind it is';
  if (!Number.isSafeInteger(v) || v! < 1) return 'it carries no version';
  if (forbidden.has(id) || forbidden.has(kind)) return 'its id is not allowed';
  return whyNotPlain(item);
}

/** Looks through everything inside, without recursion, so that no depth can hurt. */
function whyNotPlain(item: object): string {
  const open: [unknown, number][] = [[item, 0]];
  for (let next = open.pop(); next; next = open.pop()) {
    const [value, depth] = next;
    if (typeof value === 'number' && !Number.isFinite(value)) return 'a number in it is too large';
    if (typeof value !== 'object' || value === null) continue;
    if (depth === deepest) return 'it is nested too deep';
    for (const [key, inner] of Object.entries(value)) {
      if (forbidden.has(key)) return `it holds a key that is not allowed (${key})`;
      open.push([inner, depth + 1]);
    }
  }
  return '';
}

/** An item as an event of a run; null when it is none. */
export function asEvent(item: unknown): RunEvent | null {
  const read = runEvent.safeParse(item);
  if (!read.success) return null;
  const { run, seq, key } = read.data;
  const fine =
    run !== '' &&
    run.length <= longestId &&
    Number.isSafeInteger(seq) &&
    seq >= 0 &&
    !forbidden.has(key) &&
    !forbidden.has(run);
  return fine ? read.data : null;
}
