import { crc32 } from '../../core/number/crc32';
import { putBack } from '../store/bulk';
import { erasedBy, weightOf, type Change } from '../store/change';
import { remember, storedEvents, storedRecord, storedState } from '../store/database';
import { storedAllEvents, storedRecords } from '../store/everything';
import type { JournalFile } from './journalFile';
import type { Batch } from './journalLines';
import { batchesThatCount, lastWriteWins, refill, wholeUpTo, type Refilled } from './journalRead';
import type { Touched } from '../store/state';

/** Fills the store from the journal, with what was written after number `after`; -1 for all. */
export async function fillStore(files: readonly JournalFile[], after: number): Promise<Refilled> {
  const now = await storedState();
  const store = files.find(({ head }) => head)?.head?.store ?? now?.store ?? crypto.randomUUID();
  const behind = after < wholeUpTo(files); // then the journal is the whole truth, and what it has not is gone
  if (behind) await putBack([], true);
  const filled = await refill(files, { store, after: behind ? -1 : after }, putBack);
  if (filled.state) await remember('state', { ...filled.state, records: filled.records + (now?.records ?? 0) });
  return filled;
}

/** What the journal of a lost store holds and the store of today has not. */
export async function whatStoreLacks(files: readonly JournalFile[]): Promise<Change[]> {
  const newest = new Map<string, Change>();
  const gone = new Set<string>();
  const wins = lastWriteWins();
  for (const batch of batchesThatCount(files)) {
    for (const change of batch ? wins(batch) : []) {
      if ('event' in change) newest.set(`event ${change.event.run} ${change.event.seq}`, change);
      else if ('gone' in change) gone.add(change.gone);
      else {
        newest.set(`record ${change.record.id}`, change);
        if (erasedBy(change) === null) gone.delete(change.record.id);
        else gone.add(change.record.id);
      }
    }
  }
  const lacking: Change[] = [];
  const there = new Map<string, Set<number>>();
  for (const change of newest.values()) {
    const isErased = 'record' in change && gone.has(change.record.id) && erasedBy(change) === null;
    if ('record' in change && !isErased && !(await storedRecord(change.record.id))) lacking.push(change);
    if (!('event' in change) || gone.has(change.event.run)) continue;
    const { run, seq } = change.event;
    if (!there.has(run)) there.set(run, new Set((await storedEvents(run)).map((event) => event.seq)));
    if (!there.get(run)!.has(seq)) lacking.push(change);
  }
  return lacking;
}

/** The last few writes again, from what they touched, as the store holds it now. */
export async function batchesFor(writes: readonly Touched[]): Promise<Batch[]> {
  const batches: Batch[] = [];
  for (const { n, keys } of writes) {
    const batch = { n, records: [] as object[], events: [] as object[], gone: [] as string[] };
    for (const [id, seq] of keys ?? []) {
      const event = seq === undefined ? undefined : (await storedEvents(id)).find((found) => found.seq === seq);
      const record = seq === undefined ? await storedRecord(id) : undefined;
      if (event) batch.events.push(event);
      else if (record) batch.records.push(record);
      else if (seq === undefined) batch.gone.push(id);
    }
    batches.push(batch as unknown as Batch);
  }
  return batches;
}

/** What a look into every line of both copies came to. */
export interface Looked {
  readonly records: number;
  readonly events: number;
  readonly damagedLines: number;
  /** Found in the journal alone, and put back. */
  readonly putBack: number;
  /** True when the journal lacks something, or most of it is out of date. */
  readonly journalStale: boolean;
}

/** Compares every record and the number of events of both copies; what the store lacks is put back into it. */
export async function lookThrough(files: readonly JournalFile[]): Promise<Looked> {
  const sums = new Map<string, number>();
  const counts = new Map<string, Set<number>>();
  const wins = lastWriteWins();
  let [damagedLines, heavy, pause] = [0, 0, 0];
  for (const batch of batchesThatCount(files)) {
    if (heavy > pause) await new Promise((resolve) => setTimeout(resolve)); // lets a tap be written in between
    if (heavy > pause) pause = heavy + 500;
    if (!batch) damagedLines++;
    for (const change of batch ? wins(batch) : []) {
      heavy += weightOf(change);
      if (erasedBy(change) !== null) counts.delete(erasedBy(change)!);
      if ('record' in change) sums.set(change.record.id, sumOf(change.record));
      else if ('event' in change) {
        const seen = counts.get(change.event.run) ?? new Set();
        counts.set(change.event.run, seen.add(change.event.seq));
      } else [sums, counts].forEach((map) => map.delete(change.gone));
    }
  }
  const differ = await differing(sums, counts);
  const back = differ.lost > 0 ? await whatStoreLacks(files) : [];
  if (back.length > 0) await putBack(back);
  const { records, events } = differ;
  const journalStale = differ.journalLacks || damagedLines > 0 || heavy > 2 * differ.heavy + 20_000;
  return { records, events, damagedLines, putBack: back.length, journalStale };
}

const encoder = new TextEncoder();

function sumOf(record: object): number {
  return crc32(encoder.encode(JSON.stringify(record)));
}

/** Walks through the store against what the journal holds. */
async function differing(sums: Map<string, number>, counts: Map<string, Set<number>>) {
  let [records, events, found, heavy, journalLacks] = [0, 0, 0, 0, false];
  for await (const page of storedRecords()) {
    for (const record of page) {
      records++;
      heavy += weightOf({ record });
      if (sums.has(record.id)) found++;
      if (sums.get(record.id) !== sumOf(record)) journalLacks = true;
    }
  }
  for await (const page of storedAllEvents()) {
    for (const { run, seq } of page) {
      events++;
      if (counts.get(run)?.has(seq)) found++;
      else journalLacks = true;
    }
  }
  const inJournal = sums.size + [...counts.values()].reduce((sum, seen) => sum + seen.size, 0);
  return { records, events, journalLacks, lost: inJournal - found, heavy: heavy + events };
}
