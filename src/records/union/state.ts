import type { Stored } from '../kind/record';
import { isCounter, lastFirst, partsOf, type Dot } from './dots';
import { inOrder, isObject, sameJson } from './json';

/** What was written into one field, by the writes that no later one has replaced: of two that knew nothing of each other, both. */
export type Alternatives = ReadonlyMap<Dot, unknown>;

/** A record as what its writes came to. */
export interface State {
  readonly record: Stored;
  /** The writes that made it; each field that was not written since is theirs. */
  readonly bases: readonly Dot[];
  readonly fields: ReadonlyMap<string, Alternatives>;
  /** The last counter of each device that is in it. */
  readonly seen: ReadonlyMap<string, number>;
  /** Stamps of the time before counters that are in it. */
  readonly earlier: ReadonlySet<string>;
}

/** The keys of a record that tell of its writes. */
const OF_WRITES = new Set(['by', 'written', 'earlier', 'seen', 'edits', 'apart']);
const FIXED = new Set(['id', 'kind', ...OF_WRITES]);

const texts = (value: unknown): string[] =>
  (Array.isArray(value) ? value : [value]).filter((text) => typeof text === 'string');
const entries = (value: unknown): [string, unknown][] => (isObject(value) ? Object.entries(value) : []);

/** What of a record is not about its writes. */
export function bare<R extends object>(record: R): R {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !OF_WRITES.has(key))) as R;
}

/** The writes that made a record: of one of the time before counters its stamp. */
export function basesOf(record: object): string[] {
  const { by, written, made } = record as Record<string, unknown>;
  const dots = texts(by);
  return dots.length > 0 ? dots : [String(written ?? made ?? '')];
}

/** Reads what a record tells of its writes; what a file has made unreadable in there counts as not written. `isOwn` leaves keys out that are joined in another way. */
export function opened(record: Stored, isOwn: (key: string) => boolean): State {
  const { edits, apart, seen, earlier } = record as unknown as Record<string, unknown>;
  const bases = basesOf(record);
  const fields = new Map<string, Alternatives>();
  for (const [key, value] of Object.entries(record))
    if (!FIXED.has(key) && !isOwn(key)) fields.set(key, new Map(bases.map((dot) => [dot, value])));
  for (const [key, dots] of entries(edits))
    if (texts(dots).length > 0 && !FIXED.has(key) && !isOwn(key))
      fields.set(key, new Map(texts(dots).map((dot) => [dot, record[key as never]])));
  for (const [key, list] of entries(apart)) {
    const found = alternativesIn(list);
    if (found.length > 0 && !FIXED.has(key) && !isOwn(key)) fields.set(key, new Map(found));
  }
  const counters = new Map(entries(seen).filter((entry): entry is [string, number] => isCounter(entry[1])));
  const dots = [...bases, ...[...fields.values()].flatMap((alternatives) => [...alternatives.keys()])];
  for (const dot of dots) {
    const parts = partsOf(dot);
    if (parts && parts.n > (counters.get(parts.device) ?? 0)) counters.set(parts.device, parts.n);
  }
  return { record, bases, fields, seen: counters, earlier: new Set(stampsBefore(bases, texts(earlier))) };
}

/** The stamps that a record can have come after: of two that each name the other, since a clock was set back, the larger came later. */
function stampsBefore(bases: readonly string[], stamps: readonly string[]): readonly string[] {
  const isOld = bases.every((base) => partsOf(base) === null);
  return isOld ? stamps.filter((stamp) => bases.some((base) => stamp < base)) : stamps;
}

function alternativesIn(list: unknown): [Dot, unknown][] {
  if (!Array.isArray(list)) return [];
  return list.flatMap((one: unknown) => {
    const [dots, value] = Array.isArray(one) ? (one as unknown[]) : [];
    return texts(dots).map((dot): [Dot, unknown] => [dot, value]);
  });
}

/** Whether a write is in a state. */
export function covers(state: State, dot: Dot): boolean {
  const parts = partsOf(dot);
  if (parts) return (state.seen.get(parts.device) ?? 0) >= parts.n;
  return state.earlier.has(dot) || state.bases.includes(dot);
}

/** One of the values that a field has, with the writes that gave it; the last one first. */
export interface Value {
  readonly dots: readonly Dot[];
  readonly value: unknown;
}

/** The different values of a field, the one that is shown first. */
export function valuesOf(alternatives: Alternatives): Value[] {
  const groups = new Map<string, { dots: Dot[]; value: unknown }>();
  for (const dot of [...alternatives.keys()].sort(lastFirst)) {
    const value = alternatives.get(dot);
    const text = value === undefined ? '' : inOrder(value);
    const group = groups.get(text) ?? { dots: [], value };
    groups.set(text, group);
    group.dots.push(dot);
  }
  return [...groups.values()];
}

const one = (dots: readonly Dot[]) => (dots.length === 1 ? dots[0]! : dots);

/** A state as a record, the same for the same writes. `joined` are its keys that are joined in another way. */
export function closed({ record: { id, kind }, bases, fields, seen, earlier }: State, joined: object): Stored {
  const shown: Record<string, unknown> = {};
  const edits: Record<string, unknown> = {};
  const apart: Record<string, unknown> = {};
  for (const [key, alternatives] of fields) {
    const values = valuesOf(alternatives);
    const [{ dots, value }] = values as [Value];
    if (value !== undefined) shown[key] = value;
    if (values.length > 1) apart[key] = values.map(({ dots, value }) => (value === undefined ? [dots] : [dots, value]));
    else if (!sameJson(dots, [...bases].sort(lastFirst))) edits[key] = one(dots);
  }
  const ofBases = new Map(bases.map((dot) => [partsOf(dot)?.device, partsOf(dot)?.n]));
  const isMore = [...seen].some(([device, n]) => ofBases.get(device) !== n);
  return {
    id,
    kind,
    ...shown,
    ...joined,
    by: one([...bases].sort(lastFirst)),
    ...(earlier.size > 0 && { earlier: [...earlier].sort() }),
    ...(isMore && { seen: Object.fromEntries(seen) }),
    ...(Object.keys(edits).length > 0 && { edits }),
    ...(Object.keys(apart).length > 0 && { apart }),
  } as unknown as Stored;
}
