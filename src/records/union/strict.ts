import type { Stored } from '../kind/record';
import { orderedAt } from './dots';
import { inOrder, isObject, sameJson } from './json';
import { opened, type State } from './state';

/** What of a record is joined whenever two versions of it meet, whatever else was written: what makes it stricter, its weighings, and what happened to it since it was made. */
interface Joined {
  grade?: unknown;
  food?: unknown;
  smellOnly?: unknown;
  solvent?: unknown;
  weighed?: unknown;
  since?: unknown;
  goesOn?: unknown;
}
type Version = Stored & Joined;

/** Kinds that may be smell only. */
const GRADED = new Set(['bottle', 'supply', 'vial', 'solvent', 'batch']);
const MARKS = new Set(['grade', 'food', 'smellOnly', 'solvent']);

/** A record as what its writes came to, but for the keys that are joined here. */
export function stateOf(record: Stored): State {
  return opened(record, (key) => isJoined(record.kind, key));
}

/** Whether a key of a record of that kind is joined here. A batch calls so what went in; whether a run is paused follows from the rest of it. */
function isJoined(kind: string, key: string): boolean {
  if (kind === 'run') return key === 'open' || key === 'goesOn';
  if (key === 'since') return kind === 'batch';
  return key === 'weighed' ? kind !== 'batch' : GRADED.has(kind) && MARKS.has(key);
}

/** The keys of two versions that are joined here: each mark of either that makes it stricter, and all weighings. No mark is ever taken away, and no weighing. */
export function joinedOf(a: Version, b: Version): Joined {
  if (a.kind === 'run') return further(a.goesOn, b.goesOn);
  const weighed = a.kind === 'batch' ? undefined : allOf(a.weighed, b.weighed);
  const since = a.kind === 'batch' ? allOf(a.since, b.since) : undefined;
  if (!GRADED.has(a.kind)) return weighed === undefined ? {} : { weighed };
  const all = {
    grade: either(a.grade, b.grade, 'smell only'),
    food: either(a.food, b.food, false),
    smellOnly: earliest(a.smellOnly, b.smellOnly),
    solvent: solventOf(a.solvent, b.solvent),
    weighed,
    since,
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}

/** Of two devices that went on with a run the one that did so after more steps. */
function further(a: unknown, b: unknown): Joined {
  if (a === undefined && b === undefined) return {};
  const stepsOf = (one: unknown) => (isObject(one) ? Number(one['steps']) || 0 : -1);
  const goesOn = stepsOf(a) === stepsOf(b) ? known(a, b) : stepsOf(a) > stepsOf(b) ? a : b;
  return { goesOn };
}

/** Of two answers the strict one; else what was answered at all, and of two others always the same. */
function either(a: unknown, b: unknown, strict: unknown): unknown {
  return a === strict || b === strict ? strict : known(a, b);
}

/** What is there at all; of two values always the same one. */
function known(a: unknown, b: unknown): unknown {
  if (a === undefined || b === undefined) return a ?? b;
  return inOrder(a) >= inOrder(b) ? a : b;
}

/** The earlier of two marks. */
function earliest(a: unknown, b: unknown): unknown {
  if (a === undefined || b === undefined) return a ?? b;
  const orderOf = (mark: unknown) => `${isObject(mark) ? String(mark['at']) : ''} ${inOrder(mark)}`;
  return orderOf(a) <= orderOf(b) ? a : b;
}

/** What a vial keeps of its solvent; not food grade on one side is so on both. */
function solventOf(a: unknown, b: unknown): unknown {
  if (!isObject(a) || !isObject(b) || a['id'] !== b['id']) return known(a, b);
  const food = either(a['food'], b['food'], false);
  const copy = inOrder({ ...a, food: null }) >= inOrder({ ...b, food: null }) ? a : b;
  return food === undefined ? copy : { ...copy, food };
}

/** What was found or done on either side, in the order of time; the same is there once. */
function allOf(a: unknown, b: unknown): unknown {
  if (!Array.isArray(a) || !Array.isArray(b)) return known(a, b);
  const all = new Map([...(a as unknown[]), ...(b as unknown[])].map((one) => [inOrder(one), one]));
  const timeOf = (one: unknown) => (isObject(one) ? orderedAt(one, String(one['at'])) : '');
  const sorted = [...all].sort(([x, p], [y, q]) => (`${timeOf(p)} ${x}` < `${timeOf(q)} ${y}` ? -1 : 1));
  return sorted.map(([, one]) => one);
}

/** A record with each mark of another version that makes it stricter. */
export function strictest(record: Stored, other: Stored): Stored {
  if (record.kind !== other.kind || !GRADED.has(record.kind)) return record;
  const { weighed: _, since: __, ...marks } = joinedOf(record, other);
  return { ...record, ...marks };
}

/** Whether one version is stricter than another, in one mark at least. */
export function isStricter(one: Stored, other: Stored): boolean {
  return !sameJson(strictest(other, one), other);
}
