import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { withDatabase } from './database';

const mostPictures = 20; // read at a time: some 5 MB

/** All records in the order of their ids, a page at a time. */
export async function* storedRecords(page = 2000): AsyncGenerator<Stored[]> {
  const pictures = await withDatabase((db) => db.getAllKeysFromIndex('records', 'kind', 'picture')); // in order of ids
  for (let after = '', passed = 0; ;) {
    while (passed < pictures.length && pictures[passed]! <= after) passed++;
    const until = pictures[passed + mostPictures - 1];
    const range = until === undefined ? IDBKeyRange.lowerBound(after, true) : IDBKeyRange.bound(after, until, true);
    const found = await withDatabase((db) => db.getAll('records', range, page));
    if (found.length > 0) yield found;
    if (found.length < page && until === undefined) return;
    after = found.length < page ? until! : found.at(-1)!.id;
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
