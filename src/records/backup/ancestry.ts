import { stampsKept, type Stored } from '../kind/record';
import { sameJson } from './storable';

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

/** How two copies of one record stand to each other. */
export type Relation =
  'same' | 'first is newer' | 'second is newer' | 'first is newer, both changed' | 'second is newer, both changed';

/**
 * Two copies with one id. The one whose `earlier` names the other came out of it; where that cannot be known because
 * the note does not reach back so far, time decides. Otherwise both were changed apart from each other.
 */
export function relationOf(first: Stored, second: Stored): Relation {
  if (sameJson(first, second)) return 'same';
  const [a, b] = [noted(first), noted(second)];
  if (cameFrom(a, b)) return 'first is newer';
  if (cameFrom(b, a)) return 'second is newer';
  if (first.kind === 'settings') return a.written >= b.written ? 'first is newer' : 'second is newer';
  return a.written > b.written ? 'first is newer, both changed' : 'second is newer, both changed';
}

function cameFrom(later: Noted, old: Noted): boolean {
  const [earliest] = later.earlier;
  return (
    later.earlier.includes(old.written) ||
    (later.earlier.length >= stampsKept && earliest !== undefined && old.written < earliest)
  );
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
