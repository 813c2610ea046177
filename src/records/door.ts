import { commitMany, type Bulk } from './store/bulk';
import type { Change } from './store/change';
import { commitToBoth, journalOpened, rewriteJournal } from './journal/journal';
import { noteKept } from './store/marker';
import { tellOthers } from './store/otherWindows';

interface Batch {
  changes: readonly Change[];
  resolve: () => void;
  reject: (error: unknown) => void;
}

const waiting: Batch[] = [];
let busy: Promise<void> = Promise.resolve();
let flushing = false;

/**
 * The one door for all writing. Resolves when the changes are on the disk in both copies (or `copies` of journal.ts says that the second
 * lacks them), in the order in which they were handed in; rejects when they are not stored, and then none of them is.
 * What comes in while a write is under way goes together in the next.
 */
export function write(changes: readonly Change[]): Promise<void> {
  return new Promise((resolve, reject) => {
    waiting.push({ changes, resolve, reject });
    if (!flushing) busy = busy.then(flush);
    flushing = true;
  });
}

/**
 * A restore through the same door: all of it or nothing, with no other write in between. Both copies hold it when this resolves.
 * `stored` is done while the second copy is written.
 */
export function writeMany(bulk: Bulk, stored: () => Promise<void>): Promise<void> {
  const work = busy.then(async () => {
    await journalOpened();
    await commitMany(bulk);
    await Promise.all([rewriteJournal(), stored()]);
    tellOthers({ kept: null });
  });
  busy = work.catch(() => {}); // told to the caller
  return work;
}

async function flush(): Promise<void> {
  await journalOpened();
  while (waiting.length > 0) {
    const batches = waiting.splice(0);
    try {
      await store(batches.flatMap((batch) => batch.changes));
      batches.forEach((batch) => batch.resolve());
    } catch {
      for (const batch of batches) await store(batch.changes).then(batch.resolve, batch.reject); // one bad batch must not take the others down
    }
  }
  flushing = false;
}

async function store(changes: readonly Change[]): Promise<void> {
  const state = await commitToBoth(changes);
  noteKept(state.store);
  const touched = changes.flatMap((change) =>
    'event' in change ? [] : 'gone' in change ? change.gone : change.record.id,
  );
  tellOthers({ kept: touched });
}
