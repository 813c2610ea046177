import type { AnyRecord } from './kind/kinds';
import type { RunEvent } from './kind/run';
import { dotAtOnce, nextDot } from './store/device';
import { stamped } from './union/stamp';

interface Signed {
  records: AnyRecord[];
  events: RunEvent[];
}

/** Where the version of a record is found that a write replaces. */
interface Before {
  /** The version on hand, or on its way to the disk. */
  held: (record: AnyRecord) => AnyRecord | undefined;
  /** Whether the store may have a version that is not on hand. */
  isElsewhere: (record: AnyRecord) => boolean;
  read: (record: AnyRecord) => Promise<AnyRecord | undefined>;
}

/** Signs what is written: each record and step says by which device and which write of it. */
export function signer({ held, isElsewhere, read }: Before) {
  let last: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  return {
    /** Without a pause, so that a tap is on its way to the disk before anything else runs; null where something must be read first. */
    atOnce: (records: readonly AnyRecord[], events: readonly RunEvent[]): Signed | null => {
      const dot = waiting > 0 || records.some(isElsewhere) ? null : dotAtOnce();
      return dot === null ? null : signed(records, events, records.map(held), dot);
    },
    /** In the order in which writes were handed in. */
    inTurn: (records: readonly AnyRecord[], events: readonly RunEvent[]): Promise<Signed> => {
      waiting++;
      const ready = last.then(async () => {
        const before = records.map((record) => (isElsewhere(record) ? read(record) : held(record)));
        return signed(records, events, await Promise.all(before), await nextDot());
      });
      last = ready.catch(() => {}).finally(() => waiting--);
      return ready;
    },
  };
}

function signed(
  records: readonly AnyRecord[],
  events: readonly RunEvent[],
  before: readonly (AnyRecord | undefined)[],
  dot: string,
): Signed {
  const [who] = dot.split(':') as [string];
  return {
    records: records.map((record, i) => stamped(record, before[i], dot)),
    events: events.map((event) => ({ who, ...event })),
  };
}
