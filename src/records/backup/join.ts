import { v5 } from 'uuid';
import type { Stored } from '../kind/record';
import { isLater, relationOf, stampsOf, type Relation } from './ancestry';
import { inOrder, sameJson } from '../union/json';

/** What of a record is joined whenever two versions of it meet: what makes it stricter, its weighings, what happened to it since it was made, and its stamps. */
interface Joined {
  grade?: unknown;
  food?: unknown;
  smellOnly?: unknown;
  solvent?: unknown;
  weighed?: unknown;
  emptyG?: unknown;
  since?: unknown;
  earlier?: unknown;
}
type Version = Stored & Joined;

/** What becomes of two versions of one record, the same whichever of them is here and which in the file. */
export interface Settled {
  readonly relation: Relation;
  /** The record as it is from now on. */
  readonly own: Stored;
  /** The version that was changed apart from it, kept under an id of its own; null where nothing of it would be lost. */
  readonly beside: Stored | null;
}

/**
 * The newer version of a record, with every mark that makes it stricter on either side, all weighings, and all stamps. Of two
 * that were changed apart the later is the record's own and the other is kept beside it, unless they differ in nothing else.
 */
export function settle(first: Stored, second: Stored): Settled {
  const relation = relationOf(first, second);
  if (relation === 'same') return { relation, own: first, beside: null };
  const isFirst = relation === 'first is newer' || (relation === 'apart' && isLater(first, second));
  const [newer, other] = isFirst ? [first, second] : [second, first];
  const own = joined(newer, other);
  const isKept = relation === 'apart' && !NEVER_TWICE.has(other.kind) && contentOf(newer) !== contentOf(other);
  return { relation, own, beside: isKept ? copyOf(strictest(other, newer), copyIdOf(other)) : null };
}

/** Kinds of which no version is kept beside: the steps of a run tell whether it went on differently. */
const NEVER_TWICE = new Set(['settings', 'run']);

/** The same record under another id, marked as the other copy. */
export function copyOf(record: Stored, id: string): Stored {
  const { name, title, lot, from } = record as unknown as Record<string, unknown>;
  const origins = new Set([...(Array.isArray(from) ? (from as unknown[]) : []), record.id]);
  return {
    ...record,
    id,
    from: [...origins],
    ...(typeof name === 'string' && { name: marked(name) }),
    ...(typeof title === 'string' && { title: marked(title) }),
    ...(record.kind === 'bottle' && typeof lot === 'string' && { lot: marked(lot) }), // a bottle has no name of its own
  } as Stored;
}

const OTHER = '(other copy)';

function marked(text: string): string {
  return text.endsWith(OTHER) ? text : `${text} ${OTHER}`.trim();
}

/** An id that follows from another one and from what sets it apart: everyone who derives it gets the same. It begins as the other, so that its place in time stays. */
export function derivedId(id: string, from: unknown): string {
  return id.slice(0, TIME) + v5(`${id} ${inOrder(from)}`, MINIM).slice(TIME);
}

const TIME = 13; // signs of an id that tell the time (UUID version 7, RFC 9562)
const MINIM = '7b1b0a3e-5f0e-4c57-9d0b-2f8f6a1c3d11'; // our name space for UUID version 5 (RFC 9562)

function copyIdOf(record: Stored): string {
  return derivedId(record.id, contentOf(record));
}

/** All of a record but what is joined, as text. */
function contentOf(record: Stored): string {
  const { grade, food, smellOnly, weighed, emptyG, since, earlier, written, ...rest } = record as Version & {
    written?: unknown;
  };
  const { solvent } = rest;
  return inOrder(isObject(solvent) ? { ...rest, solvent: { ...solvent, food: null } } : rest);
}

function joined(newer: Stored, other: Stored): Stored {
  const stamps = stampsOf(newer, other);
  const next = {
    ...strictest(newer, other),
    ...weighings(newer, other),
    ...happened(newer, other),
    ...(stamps.length > 0 && { earlier: stamps }),
  };
  return sameJson(next, newer) ? newer : next;
}

/** Kinds that may be smell only. */
const GRADED = new Set(['bottle', 'supply', 'vial', 'solvent', 'batch']);

/** A record with each mark of the other that makes it stricter. No mark is ever taken away. */
export function strictest(record: Version, other: Version): Stored {
  if (record.kind !== other.kind || !GRADED.has(record.kind)) return record;
  const [own, others] = [record.solvent, other.solvent];
  const isDenied = isObject(own) && isObject(others) && own['id'] === others['id'] && others['food'] === false;
  const smellOnly = earliest(record.smellOnly, other.smellOnly);
  return {
    ...record,
    ...(other.grade === 'smell only' && { grade: other.grade }),
    ...(other.food === false && { food: false }),
    ...(isDenied && { solvent: { ...own, food: false } }),
    ...(smellOnly !== undefined && { smellOnly }),
  } as Stored;
}

/** The earlier of two marks. */
function earliest(a: unknown, b: unknown): unknown {
  if (a === undefined || b === undefined) return a ?? b;
  const orderOf = (mark: unknown) => `${isObject(mark) ? String(mark['at']) : ''} ${inOrder(mark)}`;
  return orderOf(a) <= orderOf(b) ? a : b;
}

/** What was found to be left on either side, by time; of two weighings at the same moment one. */
function weighings(newer: Version, other: Version): Joined {
  const [ours, others] = [newer.weighed ?? [], other.weighed ?? []];
  if (newer.kind === 'batch' || !Array.isArray(ours) || !Array.isArray(others)) return {}; // a batch calls so what went in
  const byTime = new Map<string, unknown>();
  for (const one of [...others, ...ours] as unknown[])
    byTime.set(isObject(one) ? String(one['at']) : inOrder(one), one);
  const times = [...byTime.keys()].sort();
  const emptyG = newer.emptyG ?? other.emptyG; // typed with a weighing
  const known = emptyG === undefined ? {} : { emptyG };
  return times.length === 0 ? known : { ...known, weighed: times.map((time) => byTime.get(time)) };
}

/** What happened to a batch since it was made, on either side, by time; each once. */
function happened(newer: Version, other: Version): Joined {
  const [ours, others] = [newer.since ?? [], other.since ?? []];
  if (!Array.isArray(ours) || !Array.isArray(others) || ours.length + others.length === 0) return {};
  const byId = new Map<string, unknown>();
  for (const one of [...others, ...ours] as unknown[])
    byId.set(isObject(one) ? `${String(one['at'])} ${String(one['id'])}` : inOrder(one), one);
  return { since: [...byId.keys()].sort().map((key) => byId.get(key)) };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether two versions differ in nothing but their stamps. */
export function isSameButForStamps(a: Stored, b: Stored): boolean {
  const without = ({ earlier, written, ...rest }: Version & { written?: unknown }) => rest;
  return sameJson(without(a as Version), without(b as Version));
}

/** Whether one version is stricter than another, in one mark at least. */
export function isStricter(one: Stored, other: Stored): boolean {
  return !sameJson(strictest(other, one), other);
}
