import type { Stored } from '../kind/record';
import type { Parcel } from './messages';

type Event = Parcel['events'][number];

const WEIGHT = 250_000; // characters, our choice: a second or two even over a slow network, and most pictures alone
const EVENT = 150; // characters of a step, about

/** Everything of a parcel in small ones that can be joined one by one: a run comes with all of its steps. */
export function inParcels({ records, events }: Parcel): Parcel[] {
  const steps = new Map<string, Event[]>();
  for (const event of events) steps.set(event.run, [...(steps.get(event.run) ?? []), event]);
  const parcels: { records: Stored[]; events: Event[] }[] = [];
  let weight = Infinity;
  for (const record of records) {
    const own = steps.get(record.id) ?? [];
    const adds = JSON.stringify(record).length + own.length * EVENT;
    if (weight + adds > WEIGHT) {
      parcels.push({ records: [], events: [] });
      weight = 0;
    }
    weight += adds;
    parcels.at(-1)!.records.push(record);
    parcels.at(-1)!.events.push(...own);
  }
  return parcels;
}
