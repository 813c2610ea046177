import { commit, type Change } from './database';

interface Batch {
  changes: readonly Change[];
  resolve: () => void;
  reject: (error: unknown) => void;
}

const waiting: Batch[] = [];
let busy = false;

/**
 * The one door for all writing. Resolves when the changes are on the disk, in the order in which they were handed in;
 * rejects when they are not, and then none of them is. What comes in while a write is under way goes together in the next.
 */
export function write(changes: readonly Change[]): Promise<void> {
  return new Promise((resolve, reject) => {
    waiting.push({ changes, resolve, reject });
    if (!busy) void flush();
  });
}

async function flush(): Promise<void> {
  busy = true;
  while (waiting.length > 0) {
    const batches = waiting.splice(0);
    try {
      await commit(batches.flatMap((batch) => batch.changes));
      batches.forEach((batch) => batch.resolve());
    } catch {
      for (const batch of batches) await commit(batch.changes).then(batch.resolve, batch.reject); // one bad batch must not take the others down
    }
  }
  busy = false;
}
