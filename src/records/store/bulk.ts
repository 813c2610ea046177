import { v7 } from 'uuid';
import type { Change } from './change';
import { allOrNothing, begin, put, withDatabase, type Writing } from './database';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { freshState, stateAfter, type State } from './state';

export interface Bulk {
  changes: readonly Change[];
  /** Empties the store first. */
  replace?: boolean;
  /** Called now and then with how many of the changes are in. */
  progress?: (done: number) => void;
  /** Breaks it off; then nothing has changed. */
  signal?: AbortSignal;
}

/** Many changes in one transaction that counts as one write, all or none; an event that is there already is written over. */
export function commitMany({ changes, replace, progress, signal }: Bulk): Promise<State> {
  return withDatabase((db) => {
    const transaction = begin(db);
    return allOrNothing(transaction, async () => {
      const meta = transaction.objectStore('meta');
      const before = ((await meta.get('state')) as State | undefined) ?? freshState(v7());
      if (replace) await empty(transaction);
      await putAll(transaction, { changes, ...(progress && { progress }), ...(signal && { signal }) });
      const after = stateAfter(before, changes);
      await meta.put(after, 'state');
      return after;
    });
  });
}

/** Puts back what was counted before: from the journal. */
export function putBack(changes: readonly Change[], replace = false): Promise<void> {
  return withDatabase((db) => {
    const transaction = begin(db);
    return allOrNothing(transaction, async () => {
      if (replace) await empty(transaction);
      await putAll(transaction, { changes });
    });
  });
}

async function putAll(transaction: Writing, { changes, progress, signal }: Bulk): Promise<void> {
  for (let from = 0; from < changes.length; from += 1000) {
    await Promise.all(changes.slice(from, from + 1000).map(async (change) => put(transaction, change, 'put')));
    signal?.throwIfAborted();
    progress?.(Math.min(changes.length, from + 1000));
  }
}

async function empty(transaction: Writing): Promise<void> {
  await Promise.all([transaction.objectStore('records').clear(), transaction.objectStore('events').clear()]);
}

/** All records in the order of their ids, a page at a time. */
export async function* storedRecords(page = 2000): AsyncGenerator<Stored[]> {
  for (let after = ''; ;) {
    const found = await withDatabase((db) => db.getAll('records', IDBKeyRange.lowerBound(after, true), page));
    if (found.length > 0) yield found;
    if (found.length < page) return;
    after = found.at(-1)!.id;
  }
}

/** All events by run and number, a page at a time. */
export async function* storedAllEvents(page = 5000): AsyncGenerator<RunEvent[]> {
  for (let after: [string, number] = ['', -1]; ;) {
    const found = await withDatabase((db) => db.getAll('events', IDBKeyRange.lowerBound(after, true), page));
    if (found.length > 0) yield found;
    if (found.length < page) return;
    after = [found.at(-1)!.run, found.at(-1)!.seq];
  }
}
