import type { Change } from './change';

/** How far a store has come. Every write counts one on, in the same transaction; the journal carries the same number. */
export interface State {
  /** Id of this store: a journal that carries another one belongs to a store that is lost. */
  readonly store: string;
  readonly n: number;
  /** Records written since the beginning, the same one counted each time. */
  readonly records: number;
  /** What the last writes touched, so that a journal that is a few writes behind can be topped up. */
  readonly recent: readonly Touched[];
}

/** Keys that write number `n` touched: [id of a record] or [run, seq of an event]; null where they were too many to note. */
export interface Touched {
  readonly n: number;
  readonly keys: readonly (readonly [string] | readonly [string, number])[] | null;
}

const kept = 16; // writes noted: a kill can cost the journal one, a full disk a few more; beyond them it is written again
const most = 100; // keys noted of one write

/** A store in which nothing was written yet. */
export function freshState(store: string): State {
  return { store, n: 0, records: 0, recent: [] };
}

const UNCOUNTED = ['picture', 'device'];

/** How many records are written; a photo and its picture are one, and the name of a device is none. */
export function recordsIn(changes: readonly Change[]): number {
  return changes.filter((change) => 'record' in change && !UNCOUNTED.includes(change.record.kind)).length;
}

/** The state after one more write. */
export function stateAfter(before: State, changes: readonly Change[]): State {
  const n = before.n + 1;
  const keys =
    changes.length > most
      ? null
      : changes.map((change) => {
          if ('event' in change) return [change.event.run, change.event.seq] as const;
          return ['record' in change ? change.record.id : change.gone] as const;
        });
  const records = before.records + recordsIn(changes);
  return { store: before.store, n, records, recent: [...before.recent.slice(1 - kept), { n, keys }] };
}
