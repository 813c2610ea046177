import { deleteDB, openDB, unwrap, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb';
import { v7 } from 'uuid';
import { erasedBy, type Change } from './change';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { freshState, stateAfter, type State } from './state';

type Indexes = {
  kind: string;
  /** Holds only runs that can be resumed. */
  open: number;
  /** When a run ended or was discarded, with its id: the Book reads the last ones. */
  ended: [string, string];
  discarded: [string, string];
};
interface Schema extends DBSchema {
  records: { key: string; value: Stored & { open?: 1 }; indexes: Indexes };
  events: { key: [string, number]; value: RunEvent };
  /** How far the store has come, and what this phone remembers about its copies. */
  meta: { key: string; value: unknown };
}
export type Writing = IDBPTransaction<Schema, ('records' | 'events' | 'meta')[], 'readwrite'>;

let connection: Promise<IDBPDatabase<Schema>> | null = null;

function connect(): Promise<IDBPDatabase<Schema>> {
  connection ??= openDB<Schema>('minim', 2, {
    upgrade(db, from, _, transaction) {
      if (from < 1) begun(db);
      const records = transaction.objectStore('records');
      records.createIndex('ended', ['endedAt', 'id']);
      records.createIndex('discarded', ['discarded', 'id']);
    },
    blocking: () => void disconnect(), // a newer version in another tab wants to open, or the store is erased: let it
    terminated: () => void (connection = null),
  });
  connection.catch(() => (connection = null)); // could not be opened: the next use tries again
  return connection;
}

/** The store of the first version. */
function begun(db: IDBPDatabase<Schema>): void {
  const records = db.createObjectStore('records', { keyPath: 'id' });
  records.createIndex('kind', 'kind');
  records.createIndex('open', 'open');
  db.createObjectStore('events', { keyPath: ['run', 'seq'] });
  db.createObjectStore('meta');
}

/** Lets go of the database; the next use opens it again. */
export async function disconnect(): Promise<void> {
  const old = connection;
  connection = null;
  (await old?.catch(() => null))?.close();
}

/** The database process of a phone can die in the background; one fresh connection, then the error is the caller's. */
export async function withDatabase<T>(work: (db: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
  try {
    return await work(await connect());
  } catch (error) {
    if (error instanceof DOMException && error.name === 'VersionError')
      throw new Error('a newer Minim is open in another window. Load this page again.');
    if (!(error instanceof DOMException) || !['InvalidStateError', 'UnknownError'].includes(error.name)) throw error;
    connection = null;
    return work(await connect());
  }
}

/**
 * Stores all changes in one transaction, flushed to the disk, or none of them; tells how far the store has come with it.
 * An event is only ever added: a second one with its number is refused (ConstraintError), so two tabs cannot overwrite each other.
 */
export function commit(changes: readonly Change[]): Promise<State> {
  return withDatabase(async (db) => {
    const transaction = begin(db);
    return allOrNothing(transaction, async () => {
      const meta = transaction.objectStore('meta');
      const before = meta.get('state') as Promise<State | undefined>;
      const counted = before.then((state) => stateAfter(state ?? freshState(v7()), changes));
      const writes = changes.map(async (change) => put(transaction, change, 'add'));
      await Promise.all([counted.then((state) => meta.put(state, 'state')), ...writes]);
      return counted;
    });
  });
}

/** A transaction that may write everything, flushed to the disk before it counts as done. */
export function begin(db: IDBPDatabase<Schema>): Writing {
  return db.transaction(['records', 'events', 'meta'], 'readwrite', { durability: 'strict' });
}

/** Asks for the work in a transaction and waits for its end; what fails, even a value that cannot be stored, undoes the rest. */
export async function allOrNothing<T>(transaction: Writing, work: () => Promise<T>): Promise<T> {
  const done = transaction.done;
  done.catch(() => {}); // told below
  try {
    const result = await work();
    await done;
    return result;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // it has ended already
    }
    throw error;
  }
}

/** Asks for one change. `add` refuses an event that is there already, `put` writes it over. */
export function put(transaction: Writing, change: Change, event: 'add' | 'put'): Promise<unknown> {
  const records = transaction.objectStore('records');
  const events = transaction.objectStore('events');
  const erased = erasedBy(change);
  if ('record' in change)
    return Promise.all([records.put(change.record), erased !== null && events.delete(eventsOf(erased))]);
  if ('event' in change) return events[event](change.event);
  return Promise.all([records.delete(change.gone), events.delete(eventsOf(change.gone))]);
}

/** Asks for one change, written over, and hears of no answer: what fails ends the transaction by itself. */
export function putUnheard(transaction: Writing, change: Change): void {
  if (erasedBy(change) !== null)
    void put(transaction, change, 'put').catch(() => {}); // told by the transaction
  else if ('record' in change) unwrap(transaction.objectStore('records')).put(change.record);
  else if ('event' in change) unwrap(transaction.objectStore('events')).put(change.event);
}

function eventsOf(run: string): IDBKeyRange {
  return IDBKeyRange.bound([run, 0], [run, Infinity]);
}

/** How far the store has come; undefined when nothing was ever stored, or all of it is lost. */
export function storedState(): Promise<State | undefined> {
  return withDatabase((db) => db.get('meta', 'state') as Promise<State | undefined>);
}

/** Something that this phone alone remembers, by its name. */
export function remembered(name: string): Promise<unknown> {
  return withDatabase((db) => db.get('meta', name));
}

/** Remembers something for this phone alone; it goes into no copy and no backup. */
export function remember(name: string, value: unknown): Promise<unknown> {
  return withDatabase((db) => db.put('meta', value, name));
}

/** All records of a kind, as stored. */
export function storedOfKind(kind: string): Promise<Stored[]> {
  return withDatabase((db) => db.getAllFromIndex('records', 'kind', kind));
}

/** The kinds of which something is stored, also those that this version does not know. */
export function storedKinds(): Promise<string[]> {
  return withDatabase(async (db) => {
    const kinds: string[] = [];
    const index = db.transaction('records').store.index('kind');
    for (let at = await index.openKeyCursor(null, 'nextunique'); at; at = await at.continue()) kinds.push(at.key);
    return kinds;
  });
}

/** What the Bench shows first, read together: how far the store has come, the runs that can be resumed and the settings, as stored. */
export function storedForBench(): Promise<[State | undefined, Stored[], Stored[]]> {
  return withDatabase((db) => {
    const reading = db.transaction(['records', 'meta']);
    const records = reading.objectStore('records');
    return Promise.all([
      reading.objectStore('meta').get('state') as Promise<State | undefined>,
      records.index('open').getAll(),
      records.index('kind').getAll('settings'),
    ]);
  });
}

/** One record, as stored, or undefined. */
export function storedRecord(id: string): Promise<Stored | undefined> {
  return withDatabase((db) => db.get('records', id));
}

/** All events of a run, in order. */
export function storedEvents(run: string): Promise<RunEvent[]> {
  return withDatabase((db) => db.getAll('events', eventsOf(run)));
}

/** Deletes the whole store. */
export async function eraseDatabase(): Promise<void> {
  await disconnect();
  await deleteDB('minim');
}
