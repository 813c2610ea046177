import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { RunEvent } from './run';
import type { Stored } from './record';

interface Schema extends DBSchema {
  records: { key: string; value: Stored & { open?: 1 }; indexes: { kind: string; open: number } };
  events: { key: [string, number]; value: RunEvent };
}

/** One thing to be stored: a record (new, or in place of the one with its id), or one more event of a run. */
export type Change = { record: Stored } | { event: RunEvent };

let connection: Promise<IDBPDatabase<Schema>> | null = null;

function connect(): Promise<IDBPDatabase<Schema>> {
  connection ??= openDB<Schema>('minim', 1, {
    upgrade(db) {
      const records = db.createObjectStore('records', { keyPath: 'id' });
      records.createIndex('kind', 'kind');
      records.createIndex('open', 'open'); // holds only runs that can be resumed
      db.createObjectStore('events', { keyPath: ['run', 'seq'] });
    },
    blocking: () => void drop(), // a newer version in another tab wants to open: let it
    terminated: () => void (connection = null),
  });
  return connection;
}

async function drop(): Promise<void> {
  const old = connection;
  connection = null;
  (await old)?.close();
}

/** The database process of a phone can die in the background; one fresh connection, then the error is the caller's. */
async function withDatabase<T>(work: (db: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
  try {
    return await work(await connect());
  } catch (error) {
    if (!(error instanceof DOMException) || !['InvalidStateError', 'UnknownError'].includes(error.name)) throw error;
    connection = null;
    return work(await connect());
  }
}

/**
 * Stores all changes in one transaction, flushed to the disk, or none of them.
 * An event is only ever added: a second one with its number is refused (ConstraintError), so two tabs cannot overwrite each other.
 */
export function commit(changes: readonly Change[]): Promise<void> {
  return withDatabase(async (db) => {
    const transaction = db.transaction(['records', 'events'], 'readwrite', { durability: 'strict' });
    const writes = changes.map((change) =>
      'record' in change
        ? transaction.objectStore('records').put(change.record)
        : transaction.objectStore('events').add(change.event),
    );
    await Promise.all([...writes, transaction.done]);
  });
}

/** All records of a kind, as stored. */
export function storedOfKind(kind: string): Promise<Stored[]> {
  return withDatabase((db) => db.getAllFromIndex('records', 'kind', kind));
}

/** The runs that can be resumed, as stored. */
export function storedOpenRuns(): Promise<Stored[]> {
  return withDatabase((db) => db.getAllFromIndex('records', 'open'));
}

/** One record, as stored, or undefined. */
export function storedRecord(id: string): Promise<Stored | undefined> {
  return withDatabase((db) => db.get('records', id));
}

/** All events of a run, in order. */
export function storedEvents(run: string): Promise<RunEvent[]> {
  return withDatabase((db) => db.getAll('events', IDBKeyRange.bound([run, 0], [run, Infinity])));
}
