import { planRestore } from '../backup/backup';
import { deviceName } from '../devices';
import { write } from '../door';
import { kinds } from '../kind/kinds';
import { versionOf } from '../kind/record';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { readAgain } from '../shelf';
import { remember } from '../store/database';
import { deviceHere, forgetDevice, freshDevice } from '../store/device';
import { storedAllEvents, storedRecords } from '../store/everything';
import { lacking, summary, type Holding, type Parcel, type Summary } from '../union/summary';
import type { Side } from './exchange';
import { PROTOCOL } from './messages';
import { inParcels } from './parcels';

/** What this device brings to an exchange with another one. */
export async function thisSide(): Promise<Side> {
  const device = await deviceHere();
  return {
    introduction: {
      protocol: PROTOCOL,
      device,
      name: deviceName(device) ?? '',
      kinds: Object.fromEntries(Object.values(kinds).map((kind) => [kind.kind, versionOf(kind)])),
    },
    summary: async () => summary(await everything()),
    lacking: async (theirs: Summary) => inParcels(lacking(await everything(), theirs)),
    join: joinHere,
    async beAnother() {
      await remember('device', freshDevice());
      forgetDevice();
    },
  };
}

/** Joins what another device sent with what is here, in both copies; nothing is written where nothing is new. */
export async function joinHere(parcel: Parcel): Promise<void> {
  const { changes } = await planRestore({ made: '', ...parcel, missing: 0 }, 'merge');
  if (changes.length === 0) return;
  await write(changes);
  await readAgain(changes.flatMap((change) => ('record' in change ? change.record.id : [])));
}

async function everything(): Promise<Holding> {
  const [records, events]: [Stored[], RunEvent[]] = [[], []];
  for await (const page of storedRecords()) records.push(...page);
  for await (const page of storedAllEvents()) events.push(...page);
  return { records, events };
}
