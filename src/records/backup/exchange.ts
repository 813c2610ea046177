import { storedAllEvents, storedRecords } from '../store/everything';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { hashOfRecord, lacking, summary, type Parcel, type Summary } from '../union/summary';
import { planRestore, restore, type Progress, type Restoring } from './backup';

/** What this device has, in short, for another device. */
export async function summaryHere(): Promise<Summary> {
  const has: string[] = [];
  for await (const page of storedRecords()) has.push(...page.map(hashOfRecord));
  return { version: 1, has: [...has, ...summary({ records: [], events: await allEvents() }).has].sort() };
}

/** What another device lacks of what is here, in parcels of some MB at most; each may be joined by itself, in any order. */
export async function* lackingHere(theirs: Summary): AsyncGenerator<Parcel> {
  const events = await allEvents();
  let runs: Stored[] = [];
  for await (const page of storedRecords()) {
    runs = runs.concat(page.filter(({ kind }) => kind === 'run'));
    const parcel = lacking({ records: page.filter(({ kind }) => kind !== 'run'), events: [] }, theirs);
    if (parcel.records.length > 0) yield parcel;
  }
  const parcel = lacking({ records: runs, events }, theirs);
  if (parcel.records.length + parcel.events.length > 0) yield parcel;
}

/** Says what joining a parcel would do here, as for a restore that is added. */
export function planJoin({ records, events }: Parcel): Promise<Restoring> {
  return planRestore({ made: '', records, events, missing: 0 }, 'merge');
}

/** Joins a parcel to what is here: all of it or nothing. Joined again, it changes nothing. */
export async function joinHere(parcel: Parcel, progress: Progress): Promise<Restoring> {
  const plan = await planJoin(parcel);
  if (plan.changes.length > 0) await restore(plan, progress);
  return plan;
}

async function allEvents(): Promise<RunEvent[]> {
  const events: RunEvent[] = [];
  for await (const page of storedAllEvents()) events.push(...page);
  return events;
}
