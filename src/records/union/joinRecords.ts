import { kindNamed } from '../kind/kinds';
import { GONE, goneOf, versionOf, type Stored } from '../kind/record';
import { partsOf, type Dot } from './dots';
import { inOrder, sameJson } from './json';
import { closed, covers, type Alternatives, type State } from './state';
import { joinedOf, stateOf } from './strict';
import { asItStands } from './takeOver';

/**
 * Two versions of one record as one: every write that is in either, and of each field what no later write has replaced. Whichever
 * is here and whichever comes, in any order and however often, it comes to the same (it is a join: commutative, associative,
 * idempotent). Own design after the dotted version vectors of the literature on replicated data.
 */
export function joinRecords(a: Stored, b: Stored): Stored {
  if (sameJson(a, b)) return a;
  if (a.kind === GONE || b.kind === GONE) return goneOf(a.id);
  if (a.kind !== b.kind) return larger(a, b);
  const [one, other] = [upTo(a, b.v), upTo(b, a.v)];
  if (one.v !== other.v) return one.v > other.v ? a : b; // of a newer Minim: nothing is known of what it wrote
  const joined = closed(joinStates(stateOf(one), stateOf(other)), joinedOf(one, other));
  const next = joined.kind === 'run' ? asItStands(joined, 0) : joined;
  return sameJson(next, a) ? a : next;
}

const larger = (a: Stored, b: Stored): Stored => (inOrder(a) >= inOrder(b) ? a : b);

/** A record brought up to a version, where this Minim knows how. */
function upTo(record: Stored, v: number): Stored {
  const kind = kindNamed(record.kind);
  if (!kind || v <= record.v || v > versionOf(kind)) return record;
  try {
    const now = kind.upgrades.slice(record.v - 1, v - 1).reduce<object>((old, upgrade) => upgrade(old), record);
    return { ...now, v } as Stored;
  } catch {
    return record;
  }
}

function joinStates(a: State, b: State): State {
  const fields = new Map<string, Alternatives>();
  for (const key of new Set([...a.fields.keys(), ...b.fields.keys()])) {
    const alternatives = alive([a, a.fields.get(key) ?? NONE], [b, b.fields.get(key) ?? NONE]);
    if (alternatives.size > 0) fields.set(key, alternatives);
  }
  const seen = new Map(a.seen);
  for (const [device, n] of b.seen) seen.set(device, Math.max(n, seen.get(device) ?? 0));
  const made = [a, b].map(({ bases }) => new Map(bases.map((dot) => [dot, null])));
  const still = [...alive([a, made[0]!], [b, made[1]!]).keys()];
  const bases = still.length > 0 ? still : [...new Set([...a.bases, ...b.bases])]; // each made from the other: a damaged file
  const stamps = [...a.earlier, ...b.earlier, ...a.bases, ...b.bases];
  const earlier = new Set(stamps.filter((dot) => partsOf(dot) === null && !bases.includes(dot)));
  return { record: a.record, bases, fields, seen, earlier };
}

const NONE: Alternatives = new Map();
type Side = readonly [State, Alternatives];

/** Of what was written into a field on either side: what the other side has too, or knows nothing of. */
function alive(a: Side, b: Side): Alternatives {
  const kept = new Map<Dot, unknown>();
  for (const [[, ours], other] of [
    [a, b],
    [b, a],
  ] as const)
    for (const [dot, value] of ours)
      if (stays(dot, other)) kept.set(dot, kept.has(dot) ? greater(kept.get(dot), value) : value);
  return kept;
}

/** Whether a write stays when it meets the other side: it is there too, or it is new there, or nothing was ever written over it there. */
function stays(dot: Dot, [state, alternatives]: Side): boolean {
  if (alternatives.has(dot) || !covers(state, dot)) return true;
  return alternatives.size === 0 && state.bases.includes(dot);
}

/** Of two values that one write is said to have given, always the same one. */
function greater(a: unknown, b: unknown): unknown {
  const text = (value: unknown) => (value === undefined ? '' : inOrder(value));
  return text(a) >= text(b) ? a : b;
}
