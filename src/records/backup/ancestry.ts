import { stampsKept, type Stored } from '../kind/record';
import { inOrder, sameJson } from '../union/json';

/** What a record notes about when it was written, of whatever kind and version it is. */
interface Noted {
  written: string;
  earlier: readonly string[];
  from: readonly string[];
}

function noted(record: Stored): Noted {
  const { written, made, earlier, from } = record as unknown as Record<string, unknown>;
  const texts = (list: unknown) => (Array.isArray(list) ? list.filter((text) => typeof text === 'string') : []);
  return { written: String(written ?? made ?? ''), earlier: texts(earlier), from: texts(from) };
}

/** How two versions of one record are to each other; 'apart': both were changed since they were the same. */
export type Relation = 'same' | 'first is newer' | 'second is newer' | 'apart';

/**
 * Two versions with one id. The one whose `earlier` names the other came out of it. Where none names the other both were changed
 * apart: a time alone says nothing, since two devices write at the same time. Settings are the newer ones.
 */
export function relationOf(first: Stored, second: Stored): Relation {
  if (sameJson(first, second)) return 'same';
  const [a, b] = [noted(first), noted(second)];
  if (a.written === b.written) return 'apart';
  if (a.earlier.includes(b.written)) return 'first is newer';
  if (b.earlier.includes(a.written)) return 'second is newer';
  if (first.kind === 'settings') return a.written > b.written ? 'first is newer' : 'second is newer';
  return 'apart';
}

/** Whether the first of two versions is to be the record's own: the later, of a run the ended; of two written at the same moment always the same one. */
export function isLater(first: Stored, second: Stored): boolean {
  const [isEnded, isOtherEnded] = [first, second].map((record) => 'endedAt' in record);
  if (isEnded !== isOtherEnded) return isEnded!;
  const [a, b] = [noted(first).written, noted(second).written];
  return a === b ? inOrder(first) > inOrder(second) : a > b;
}

/** All stamps of two versions of a record but the newer one's own, in their order, as many as a record carries. */
export function stampsOf(newer: Stored, other: Stored): string[] {
  const [a, b] = [noted(newer), noted(other)];
  const all = new Set([...a.earlier, ...b.earlier, ...(b.written ? [b.written] : [])]);
  all.delete(a.written);
  return [...all].sort().slice(-stampsKept);
}

/** Ids of records that are, over whatever way, made from themselves: no trace could end. */
export function ringsIn(records: Iterable<Stored>): Set<string> {
  const list = [...records];
  const place = new Map(list.map(({ id }, i) => [id, i]));
  const sources = list.map((record) => noted(record).from.flatMap((id) => place.get(id) ?? []));
  const products = list.map((): number[] => []);
  sources.forEach((from, i) => from.forEach((source) => products[source]!.push(i)));
  const left = new Uint8Array(list.length).fill(1);
  peel(left, sources, products);
  peel(left, products, sources);
  return new Set(list.filter((_, i) => left[i]).map(({ id }) => id));
}

/** Takes away, again and again, what nothing left points at. */
function peel(left: Uint8Array, points: readonly number[][], pointedAtBy: readonly number[][]): void {
  const held = Int32Array.from(pointedAtBy, (others) => others.filter((other) => left[other]).length);
  const free = [...left.keys()].filter((i) => left[i] && held[i] === 0);
  for (let i = free.pop(); i !== undefined; i = free.pop()) {
    left[i] = 0;
    for (const next of points[i]!) if (--held[next]! === 0 && left[next]) free.push(next);
  }
}
