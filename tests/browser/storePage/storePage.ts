import { storedAllEvents, storedRecords } from '../../../src/records/store/everything';
import { write } from '../../../src/records/door';
import {
  copies,
  journalOpened,
  lookThroughCopies,
  type Copies,
  rewriteJournal,
} from '../../../src/records/journal/journal';
import journalScript from '../../../src/records/journal/journalWorker?worker&url';
import { load, newRecord, shelf } from '../../../src/records/shelf';

/** The storage of the app on a bare page, for tests that need to write faster than a finger. */
const store = {
  /** Resolves when both copies were compared, which `load` waits for only when it must. */
  opened: load(() => new Worker(journalScript, { type: 'module' })).then(journalOpened),
  copies: () => copies.value,
  lost: () => shelf.lost.value,
  write,
  newRecord,
  lookThroughCopies,
  rewriteJournal,
  /** Ids of all records, and `run/seq` of all events, in the store. */
  async keys(): Promise<string[]> {
    const keys: string[] = [];
    for await (const page of storedRecords()) keys.push(...page.map(({ id }) => id));
    for await (const page of storedAllEvents()) keys.push(...page.map(({ run, seq }) => `${run}/${seq}`));
    return keys;
  },
  /** Pictures in the page of records that has the most of them. */
  async mostPicturesAPage(): Promise<number> {
    let most = 0;
    for await (const page of storedRecords())
      most = Math.max(most, page.filter(({ kind }) => kind === 'picture').length);
    return most;
  },
  /** Writes without a pause, records and events of a run, and tells each write that was acknowledged. */
  async writeOn(run: string, acknowledge: (keys: string[]) => void): Promise<void> {
    const at = new Date().toISOString();
    for (let seq = 0; ; seq++) {
      const record = newRecord('dropper', { name: `Dropper ${seq}`, tip: 'x'.repeat(50 + (seq % 7) * 60) });
      const event = { run, seq, at, type: 'drop' as const, key: 'source' };
      await write(seq % 3 === 0 ? [{ record }, { event }] : [{ event }]);
      acknowledge(seq % 3 === 0 ? [record.id, `${run}/${seq}`] : [`${run}/${seq}`]);
    }
  },
};

/** What the page posts: at its start all keys and how the copies stand; then the keys of each write that was acknowledged. */
export interface Report {
  keys: string[];
  copies?: Copies;
}

/** With ?run=… in its address the page reports what it finds, and then writes until it is killed. */
async function report(run: string): Promise<void> {
  const post = (body: Report) => fetch('./', { method: 'POST', body: JSON.stringify(body) });
  await store.opened;
  await post({ keys: await store.keys(), copies: store.copies() });
  await store.writeOn(run, (keys) => void post({ keys }));
}

const run = new URLSearchParams(location.search).get('run');
if (run) void report(`run-${run}`);

export type StorePage = typeof store;
Object.assign(globalThis, { store });
