import { computed, signal } from '@preact/signals';
import { v7 } from 'uuid';
import { disconnect, storedEvents, storedForBench, storedKinds, storedOfKind, storedRecord } from './store/database';
import { erasedBy, type Change } from './store/change';
import { write } from './door';
import { closeJournal, journalOpened, openJournal } from './journal/journal';
import { isOf, kindNamed, kinds, type AnyRecord, type KindName, type RecordOf } from './kind/kinds';
import { deviceHere, heard } from './store/device';
import { keptBefore, noteKept, type Marker } from './store/marker';
import { listenToOthers, type News } from './store/otherWindows';
import { GONE, goneOf, readRecord, versionOf, type Stored } from './kind/record';
import { withTimes, type RunEvent } from './kind/run';
import { usualSettings, type Settings } from './kind/settings';
import { signer } from './signing';

/** A stored thing that could not be read: kept, shown and exported as it is. */
export interface Unreadable {
  raw: Stored;
  why: string;
}

const onHand = signal<ReadonlyMap<string, AnyRecord>>(new Map());
const unread = signal<readonly Unreadable[]>([]);
const loaded = signal(false);
const lost = signal<Marker | null>(null);

/** What is kept now, for the screens. Written only through `keep`. Ended runs and pictures are not held here; `endedRuns.ts` and `pictureOf` read them. */
export const shelf = {
  loaded,
  /** Something was kept on this phone and is in neither copy any more. */
  lost,
  unreadable: unread,
  records: onHand,
  openRuns: computed(() => list('run').filter((run) => run.open === 1)),
  settings: computed((): Settings => find('settings', 'settings') ?? usualSettings),
};

/** Records of a kind, newest first, without the archived ones. */
export function list<K extends KindName>(kind: K): RecordOf<K>[] {
  const held = onHand.value;
  if (sorted.held !== held) sorted = { held, lists: new Map() };
  if (!sorted.lists.has(kind)) {
    const found = [...held.values()].filter((record) => isOf(kind, record) && !record.archived);
    sorted.lists.set(
      kind,
      found.sort((a, b) => (a.id < b.id ? 1 : -1)),
    );
  }
  return sorted.lists.get(kind)!.slice() as RecordOf<K>[];
}

/** Tasks ask for the same lists with every tap. */
let sorted = { held: onHand.value, lists: new Map<KindName, AnyRecord[]>() };

/** The record of that id, if it is of that kind. */
export function find<K extends KindName>(kind: K, id: string | null | undefined): RecordOf<K> | undefined {
  const record = id == null ? undefined : onHand.value.get(id);
  return record && isOf(kind, record) ? record : undefined;
}

let tellFirstRead: () => void;
/** Resolves when the store was first looked at, whatever was found; open runs and settings are taken in by then. */
export const whenFirstRead = new Promise<void>((resolve) => (tellFirstRead = resolve));
let tellLoaded: () => void;
/** Resolves when everything but ended runs and pictures has been read. */
export const whenLoaded = new Promise<void>((resolve) => (tellLoaded = resolve));

/**
 * Reads open runs first (the Bench waits for them), then everything else but ended runs and pictures. `spawn` starts the worker of the second copy.
 * An empty store is believed only when the second copy is empty too.
 */
export async function load(spawn?: () => Worker): Promise<void> {
  listenToOthers((news) => void follow(news));
  const first = storedForBench();
  first.then(tellFirstRead, tellFirstRead); // told after what follows here has taken it in
  if (spawn) openJournal({ spawn, after: first.catch(() => {}), onRefilled: () => void readAll() });
  let [state, openRuns, settings] = await first;
  if (!state) {
    await journalOpened();
    [state, openRuns, settings] = await storedForBench();
  }
  if (state) noteKept(state.store);
  else lost.value = keptBefore();
  takeIn([...openRuns, ...settings]);
  loaded.value = true;
  void deviceHere().catch(() => {}); // wanted by the first write, which asks again
  takeIn(await storedOnHand());
  tellLoaded();
}

async function storedOnHand(): Promise<Stored[]> {
  const others = (await storedKinds()).filter((kind) => !['run', 'settings', 'picture', GONE].includes(kind));
  return (await Promise.all(others.map(storedOfKind))).flat();
}

/** Reads everything again: after a mending, a restore, or both in another window. */
export async function readAll(): Promise<void> {
  const [, openRuns, settings] = await storedForBench();
  const raws = [...openRuns, ...settings, ...(await storedOnHand())];
  onHand.value = new Map();
  unread.value = [];
  takeIn(raws);
}

/** What another window of Minim stored is shown here too. */
async function follow(news: News): Promise<void> {
  if ('erased' in news) {
    closeJournal();
    await disconnect();
    return location.reload();
  }
  return news.kept === null ? readAll() : readAgain(news.kept);
}

/** Reads records again that were stored in another way than by `keep`. */
export async function readAgain(ids: readonly string[]): Promise<void> {
  const found = (await Promise.all(ids.map(storedRecord))).filter((record) => record !== undefined);
  takeOut(ids);
  takeIn(found);
}

/** The runs among stored things that can be read; the others go to `unreadable`. */
export function readRuns(raws: readonly Stored[]): RecordOf<'run'>[] {
  const { read, failed } = sortOut(raws);
  noteUnread(failed);
  return read.filter((record) => isOf('run', record));
}

/** One run with its events, open or ended; null when there is none. */
export async function runWithEvents(id: string) {
  const raw = await storedRecord(id);
  const read = raw && raw.kind === 'run' ? readRecord(kinds.run, raw) : null;
  return read?.ok ? { run: read.value, events: withTimes(await storedEvents(id), read.value.made) } : null;
}

function sortOut(raws: readonly Stored[]): { read: AnyRecord[]; failed: Unreadable[] } {
  const read: AnyRecord[] = [];
  const failed: Unreadable[] = [];
  for (const raw of raws) {
    if (raw.kind === GONE) continue;
    const kind = kindNamed(raw.kind);
    const result = kind ? readRecord(kind, raw) : ({ ok: false, why: 'its kind is not known' } as const);
    if (result.ok) read.push(result.value);
    else failed.push({ raw, why: result.why });
  }
  return { read, failed };
}

/** Puts stored things into the signals, pictures left out; those that cannot be read go to `unreadable`. */
export function takeIn(raws: readonly Stored[]): void {
  if (raws.length === 0) return; // a tap brings no record, and nothing is drawn again for it
  const { read, failed } = sortOut(raws);
  heard(read);
  const next = new Map(onHand.value);
  for (const record of read) if (record.kind !== 'picture') next.set(record.id, record);
  onHand.value = next;
  noteUnread(failed, read);
}

/** Notes what could not be read; what could be is no longer among it. */
function noteUnread(failed: readonly Unreadable[], read: readonly Stored[] = []): void {
  const told = new Set([...failed.map(({ raw }) => raw.id), ...read.map(({ id }) => id)]);
  const left = unread.peek().filter(({ raw }) => !told.has(raw.id));
  if (failed.length === 0 && left.length === unread.peek().length) return;
  unread.value = [...left, ...failed];
}

/** Takes in what a restore stored, without reading it again; `instead`: in place of all that was here. */
export function takeChanges(changes: readonly Change[], instead: boolean): void {
  if (instead) [onHand.value, unread.value] = [new Map(), []];
  const before = onHand.peek();
  const isHeld = ({ kind, id, open }: Stored & { open?: unknown }) =>
    kind === 'run' ? open === 1 || before.has(id) : kind !== 'picture';
  const records = changes.flatMap((change) => ('record' in change ? [change.record] : []));
  takeOut(changes.map(erasedBy).filter((id) => id !== null));
  takeIn(records.filter(isHeld));
}

function takeOut(ids: readonly string[]): void {
  const next = new Map(onHand.value);
  for (const id of ids) next.delete(id);
  onHand.value = next;
}

/** The time-ordered id of a new record (UUID version 7, RFC 9562). */
export function newId(): string {
  return v7();
}

/** A new record of a kind: id, version and time are given, the rest is the caller's. Not stored yet. */
export function newRecord<K extends KindName>(
  kind: K,
  facts: Omit<RecordOf<K>, 'id' | 'kind' | 'v' | 'made' | 'from'> & { from?: string[]; id?: string },
): RecordOf<K> {
  const made = new Date().toISOString();
  return { from: [], id: newId(), ...facts, kind, v: versionOf(kinds[kind]), made } as unknown as RecordOf<K>;
}

/** Versions that are signed and on their way to the disk. */
const underWay = new Map<string, AnyRecord>();
const held = ({ id }: AnyRecord) => underWay.get(id) ?? onHand.value.get(id);

const sign = signer({
  held,
  // ended runs and pictures are not held here; a record that was never stored has no writer
  isElsewhere: (record) => !held(record) && (record.kind === 'run' || 'by' in record || 'written' in record),
  read: async ({ id }) => {
    const raw = await storedRecord(id);
    return raw && sortOut([raw]).read[0];
  },
});

/** Stores records, all or none, with events if there are any; the screens see them when they are stored. */
export async function keep(records: readonly AnyRecord[], events: readonly RunEvent[] = []): Promise<void> {
  const signed = sign.atOnce(records, events) ?? (await sign.inTurn(records, events));
  for (const record of signed.records) underWay.set(record.id, record);
  try {
    await write([...signed.records.map((record) => ({ record })), ...signed.events.map((event) => ({ event }))]);
    takeIn(signed.records);
  } finally {
    for (const record of signed.records) if (underWay.get(record.id) === record) underWay.delete(record.id);
  }
}

/** Erases records with their photos and, of runs, their events; in both copies, and on every other device when it hears of it. */
export async function forget(ids: readonly string[]): Promise<void> {
  const photos = list('photo').filter(({ id, of }) => ids.includes(id) || ids.includes(of));
  const all = [...ids, ...photos.flatMap(({ id, picture }) => [id, picture])];
  await write(all.map((id) => ({ record: goneOf(id) })));
  takeOut(all);
}

/** Changes the settings. */
export function changeSettings(change: Partial<Settings>): Promise<void> {
  const { id } = usualSettings;
  const now = (underWay.get(id) as Settings | undefined) ?? shelf.settings.value;
  return keep([{ ...now, made: new Date().toISOString(), ...change }]);
}
