import { v7 } from 'uuid';
import { portions, type Change } from './change';
import { allOrNothing, begin, put, putUnheard, withDatabase, type Writing } from './database';
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
  let done = 0;
  let before: Promise<void> = Promise.resolve();
  for (const portion of portions(changes, 1000)) {
    const now = putPortion(transaction, portion); // asked for while the one before is written
    now.catch(() => {}); // told when it is waited for, or by the one before
    await before;
    signal?.throwIfAborted();
    progress?.((done += portion.length));
    before = now;
  }
  await before;
}

/** Asks for all of it and waits for the last answer alone: a promise for each would take as long as the writing. */
async function putPortion(transaction: Writing, portion: readonly Change[]): Promise<void> {
  const last = portion.at(-1);
  for (const change of portion) if (change !== last) putUnheard(transaction, change);
  if (last) await put(transaction, last, 'put');
}

async function empty(transaction: Writing): Promise<void> {
  await Promise.all([transaction.objectStore('records').clear(), transaction.objectStore('events').clear()]);
}
