import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { inOrder } from './json';
import { hash64 } from './hash';

/** What is stored on a device, as far as an exchange needs it; pages of it may be handed in one after the other. */
export interface Holding {
  readonly records: Iterable<Stored>;
  readonly events: Iterable<RunEvent>;
}

/** What a device has: a hash of each record as it is there, and of the steps of each run. 14 characters each, in order. */
export interface Summary {
  readonly version: 1;
  readonly has: readonly string[];
}

/** What the other device lacks, in the shape of what is in a backup. */
export interface Parcel {
  readonly records: readonly Stored[];
  readonly events: readonly RunEvent[];
}

/** The hash of a record as it is stored. */
export function hashOfRecord(record: Stored): string {
  return hash64(inOrder(record));
}

/** The hashes of the steps of runs, by run. */
export function hashesOfRuns(events: Iterable<RunEvent>): Map<string, string> {
  const texts = new Map<string, string[]>();
  for (const event of events) {
    const steps = texts.get(event.run) ?? [];
    texts.set(event.run, steps);
    steps.push(inOrder(event));
  }
  return new Map([...texts].map(([run, steps]) => [run, hash64(`${run} ${steps.sort().join()}`)]));
}

/** What a device has, in short: for 1,000 records about 17 kB as JSON. Nothing is taken on trust from counters: it is read off what is stored. */
export function summary({ records, events }: Holding): Summary {
  const has = [...records].map(hashOfRecord);
  return { version: 1, has: [...has, ...hashesOfRuns(events).values()].sort() };
}

/** The records that another device does not have as they are here, and the steps of the runs that are otherwise there. Nothing where both have the same. */
export function lacking({ records, events }: Holding, theirs: Summary): Parcel {
  const has = new Set(theirs.has);
  const steps = [...events];
  const runs = new Set([...hashesOfRuns(steps)].flatMap(([run, hash]) => (has.has(hash) ? [] : [run])));
  const lacks = [...records].filter((record) => runs.has(record.id) || !has.has(hashOfRecord(record)));
  return { records: lacks, events: steps.filter(({ run }) => runs.has(run)) };
}
