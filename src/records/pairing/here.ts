import { checksum } from '../../core/pairing/checksum';
import { inOrder } from '../backup/ancestry';
import { planRestore } from '../backup/backup';
import { write } from '../door';
import { kinds } from '../kind/kinds';
import { versionOf, type Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { remember, remembered, storedState } from '../store/database';
import { storedAllEvents, storedRecords } from '../store/everything';
import { newId, takeIn } from '../shelf';
import type { Side } from './exchange';
import { PROTOCOL, type Parcel } from './messages';
import { inParcels } from './parcels';

/** What this device brings to an exchange with another one. */
export async function thisSide(): Promise<Side> {
  return {
    introduction: {
      protocol: PROTOCOL,
      device: (await storedState())?.store ?? newId(), // an empty device has none yet
      name: await deviceName(),
      kinds: Object.fromEntries(Object.values(kinds).map((kind) => [kind.kind, versionOf(kind)])),
    },
    summary: async () => summaryOf(await everything()),
    lacking: async (theirs) => inParcels(lackingIn(await everything(), new Set(theirs as string[]))),
    join: joinHere,
  };
}

/** Stores what another device sent beside what is here, in both copies; nothing is written where nothing is new. */
export async function joinHere(parcel: Parcel): Promise<void> {
  const { changes } = await planRestore({ made: '', ...parcel, missing: 0 }, 'merge');
  if (changes.length === 0) return;
  await write(changes);
  takeIn(changes.flatMap((change) => ('record' in change ? change.record : [])));
}

/** What its owner calls this device. */
export async function deviceName(): Promise<string> {
  return ((await remembered('deviceName')) as string | undefined) ?? '';
}

/** Calls this device by a name; it stays here, and other devices are told it. */
export function nameDevice(name: string): Promise<unknown> {
  return remember('deviceName', name.trim().slice(0, 40));
}

async function everything(): Promise<{ records: Stored[]; events: RunEvent[] }> {
  const [records, events]: [Stored[], RunEvent[]] = [[], []];
  for await (const page of storedRecords()) records.push(...page);
  for await (const page of storedAllEvents()) events.push(...page);
  return { records, events };
}

function hashOf(value: unknown): string {
  return checksum(new TextEncoder().encode(inOrder(value))).toString(36);
}

function summaryOf({ records, events }: { records: Stored[]; events: RunEvent[] }): string[] {
  return [...records.map(hashOf), ...events.map(hashOf)];
}

function lackingIn({ records, events }: { records: Stored[]; events: RunEvent[] }, theirs: Set<string>): Parcel {
  const steps = new Set(events.filter((event) => !theirs.has(hashOf(event))).map(({ run }) => run));
  return {
    records: records.filter((record) => !theirs.has(hashOf(record)) || steps.has(record.id)),
    events: events.filter(({ run }) => steps.has(run)),
  };
}
