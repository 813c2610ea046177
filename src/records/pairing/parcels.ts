import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import type { Parcel } from '../union/summary';

const WEIGHT = 250_000; // characters, our choice: a second or two even over a slow network, and most pictures alone
const EVENT = 150; // characters of a step, about

/** Everything of a parcel in small ones that can be joined one by one: a run comes with all of its steps and with those parted from it. */
export function inParcels({ records, events }: Parcel): Parcel[] {
  const parcels: { records: Stored[]; events: RunEvent[] }[] = [];
  let weight = Infinity;
  for (const whole of together(records, events)) {
    const adds = JSON.stringify(whole.records).length + whole.events.length * EVENT;
    if (weight + adds > WEIGHT) {
      parcels.push({ records: [], events: [] });
      weight = 0;
    }
    weight += adds;
    parcels.at(-1)!.records.push(...whole.records);
    parcels.at(-1)!.events.push(...whole.events);
  }
  return parcels;
}

/** What must not be told apart: each record by itself, but runs that were parted, with their steps. */
function together(records: readonly Stored[], events: readonly RunEvent[]) {
  const roots = new Map(records.map((record) => [record.id, (record as { partOf?: string }).partOf ?? record.id]));
  const groups = new Map<string, { records: Stored[]; events: RunEvent[] }>();
  const groupOf = (id: string) => {
    const root = roots.get(id) ?? id;
    const group = groups.get(root) ?? { records: [], events: [] };
    groups.set(root, group);
    return group;
  };
  for (const record of records) groupOf(record.id).records.push(record);
  for (const event of events) groupOf(event.run).events.push(event);
  return groups.values();
}
