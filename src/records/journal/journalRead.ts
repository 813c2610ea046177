import { erasedBy, weightOf, type Change } from '../store/change';
import { batchesOf, type JournalFile } from './journalFile';
import type { Batch } from './journalLines';
import type { State } from '../store/state';

/** The batches of all files that count; null for each damaged line. A file that holds everything up to a write voids older lines elsewhere. */
export function* batchesThatCount(files: readonly JournalFile[]): Generator<Batch | null> {
  const base = wholeUpTo(files);
  for (const file of files) {
    for (const batch of batchesOf(file)) {
      if (!batch || batch.n > base || (batch.n === base && file.head?.base === base)) yield batch;
    }
  }
}

/** The write up to which one file holds everything; -1 when none says so. */
export function wholeUpTo(files: readonly JournalFile[]): number {
  return Math.max(-1, ...files.map((file) => file.head?.base ?? -1));
}

/** What a batch changes. */
export function changesOf(batch: Batch): Change[] {
  return [
    ...(batch.records ?? []).map((record) => ({ record })),
    ...(batch.events ?? []).map((event) => ({ event })),
    ...(batch.gone ?? []).map((gone) => ({ gone })),
  ];
}

/** Changes as a batch. */
export function batchOf(n: number, changes: readonly Change[]): Batch {
  const records = changes.flatMap((change) => ('record' in change ? [change.record] : []));
  const events = changes.flatMap((change) => ('event' in change ? [change.event] : []));
  const gone = changes.flatMap((change) => ('gone' in change ? [change.gone] : []));
  return {
    n,
    ...(records.length > 0 && { records }),
    ...(events.length > 0 && { events }),
    ...(gone.length > 0 && { gone }),
  };
}

/** Lets only changes through that nothing later stands against, whatever the order and however often a line comes. */
export function lastWriteWins(): (batch: Batch) => Change[] {
  const written = new Map<string, number>();
  const gone = new Map<string, number>();
  return (batch) =>
    changesOf(batch).filter((change) => {
      if ('event' in change) return batch.n >= (gone.get(change.event.run) ?? -1);
      const id = 'record' in change ? change.record.id : change.gone;
      if (batch.n < (written.get(id) ?? -1)) return false;
      written.set(id, batch.n);
      if (erasedBy(change) !== null) gone.set(id, batch.n);
      return true;
    });
}

/** What reading the journal from write `after` on came to. */
export interface Refilled {
  /** Where a store stands that holds all of it; null when nothing readable was there. */
  readonly state: State | null;
  readonly records: number;
  readonly events: number;
  /** Writes of which no readable line was found. */
  readonly missing: number;
  readonly damagedLines: number;
}

/**
 * Hands the changes after write `after` to `put`, some MB at a time, in an order that ends in the newest of everything.
 * `put` may have them more than once.
 */
export async function refill(
  files: readonly JournalFile[],
  { store, after }: { store: string; after: number },
  put: (changes: readonly Change[]) => Promise<void>,
): Promise<Refilled> {
  const wins = lastWriteWins();
  const numbers = new Set<number>();
  const records = new Set<string>();
  let [events, damagedLines, last] = [0, 0, -1];
  let waiting: Change[] = [];
  let heavy = 0;
  for (const batch of batchesThatCount(files)) {
    if (!batch) damagedLines++;
    if (!batch || (after >= 0 && batch.n <= after)) continue;
    numbers.add(batch.n);
    last = Math.max(last, batch.n);
    for (const change of wins(batch)) {
      if ('record' in change) records.add(change.record.id);
      if ('event' in change) events++;
      waiting.push(change);
      heavy += weightOf(change);
    }
    if (heavy < 5000) continue;
    await put(waiting.splice(0));
    heavy = 0;
  }
  await put(waiting);
  const from = Math.max(after, wholeUpTo(files), 0);
  const missing = Math.max(0, last - from - [...numbers].filter((n) => n > from).length);
  const state = last < 0 ? null : { store, n: last, records: records.size, recent: [] };
  return { state, records: records.size, events, missing, damagedLines };
}
