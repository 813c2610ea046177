import { storedAllEvents, storedRecords } from '../../../src/records/bulk';
import { write } from '../../../src/records/door';
import { copies, lookThroughCopies, rewriteJournal } from '../../../src/records/journal';
import journalScript from '../../../src/records/journalWorker?worker&url';
import { load, newRecord, shelf } from '../../../src/records/shelf';

/** The storage of the app on a bare page, for tests that need to write faster than a finger. */
const store = {
  opened: load(() => new Worker(journalScript, { type: 'module' })),
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

export type StorePage = typeof store;
Object.assign(globalThis, { store });
