import { relationOf, ringsIn } from './ancestry';
import type { BackupContent } from './backupFile';
import type { Change } from '../store/change';
import { kindNamed } from '../kind/kinds';
import { readRecord, type Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { asEvent, sameJson, whyNotStorable } from './storable';

/** What a restore would do, counted in records but for the steps; a photo and its picture are one. */
export interface Plan {
  readonly fresh: number;
  /** Newer in the file: the file's stands afterwards. */
  readonly changed: number;
  /** Newer here: what is here stays. */
  readonly older: number;
  readonly same: number;
  /** Changed on both sides: the newer stands, the other is kept beside it under a new id. */
  readonly both: number;
  /** Not readable by this version and kept untouched, as those of a newer Minim are. */
  readonly untouched: number;
  /** Steps of runs that are not here yet. */
  readonly steps: number;
  /** What stays out, and why, the first hundred. */
  readonly out: readonly { what: string; why: string }[];
  readonly outCount: number;
  readonly changes: readonly Change[];
}

/** What is stored here, as far as a merge needs it. */
export interface Here {
  readonly records: ReadonlyMap<string, Stored>;
  /** Steps of the runs that are in the file too. */
  readonly events: readonly RunEvent[];
}

type Counts = {
  -readonly [K in 'fresh' | 'changed' | 'older' | 'same' | 'both' | 'untouched' | 'steps' | 'outCount']: number;
};

function noCounts(): Counts {
  return { fresh: 0, changed: 0, older: 0, same: 0, both: 0, untouched: 0, steps: 0, outCount: 0 };
}

/** Looks at every item of a backup against what is here, without changing anything. `copyId` gives ids for copies that are kept beside. */
export function planMerge(content: BackupContent, here: Here, copyId: () => string): Plan {
  const [counts, ofPictures] = [noCounts(), noCounts()];
  counts.outCount = content.missing;
  const out: { what: string; why: string }[] = [];
  const leaveOut = (item: unknown, why: string) => {
    counts.outCount++;
    if (out.length < 100) out.push({ what: nameOf(item), why });
  };
  if (content.missing > 0) out.push({ what: `${content.missing} items`, why: 'the file is damaged where they stood' });
  const records = admitted(content.records, here, leaveOut);
  const changes: Change[] = [];
  for (const record of records.values())
    changes.push(
      ...mergeRecord(record, here.records.get(record.id), {
        counts: record.kind === 'picture' ? ofPictures : counts,
        copyId,
      }),
    );
  const renamed = forks(content.events, here, copyId);
  for (const [run, copy] of renamed) {
    const stored = records.get(run) ?? here.records.get(run);
    if (stored) changes.push({ record: copyOf(stored, copy) });
    counts.both++;
  }
  changes.push(...mergeEvents({ events: content.events, records, here, renamed, leaveOut }));
  counts.steps = changes.filter((change) => 'event' in change).length;
  return { ...counts, out, changes };
}

/** The records of a file that may be stored, one of each id. */
function admitted(
  items: readonly unknown[],
  here: Here,
  leaveOut: (item: unknown, why: string) => void,
): Map<string, Stored> {
  const records = new Map<string, Stored>();
  for (const item of items) {
    const why = whyNotStorable(item);
    const record = item as Stored;
    const twin = why === '' ? records.get(record.id) : undefined;
    const relation = twin && relationOf(record, twin);
    if (why !== '') leaveOut(item, why);
    else if (relation === undefined || relation.startsWith('first is newer')) records.set(record.id, record);
    if (relation && relation !== 'same') leaveOut(item, 'its id stands in the file twice; the newer one counts');
  }
  for (const id of ringsIn(new Map([...here.records, ...records]).values())) {
    if (records.has(id)) leaveOut(records.get(id), 'it says that it is made from itself');
    records.delete(id);
  }
  return records;
}

function mergeRecord(
  record: Stored,
  stored: Stored | undefined,
  { counts, copyId }: { counts: Counts; copyId: () => string },
): Change[] {
  const kind = kindNamed(record.kind);
  if (!kind || !readRecord(kind, record).ok) counts.untouched++;
  if (!stored) {
    counts.fresh++;
    return [{ record }];
  }
  const relation = relationOf(record, stored);
  switch (relation) {
    case 'same':
      counts.same++;
      return [];
    case 'second is newer':
      counts.older++;
      return [];
    case 'first is newer':
      counts.changed++;
      return [{ record }];
    case 'first is newer, both changed':
      counts.both++;
      return [{ record }, { record: copyOf(stored, copyId()) }];
    case 'second is newer, both changed':
      counts.both++;
      return [{ record: copyOf(record, copyId()) }];
  }
}

/** The same record under another id, marked as the other copy. */
function copyOf(record: Stored, id: string): Stored {
  const { name, title, from } = record as unknown as Record<string, unknown>;
  return {
    ...record,
    id,
    from: [...(Array.isArray(from) ? from : []), record.id],
    ...(typeof name === 'string' && { name: `${name} (other copy)` }),
    ...(typeof title === 'string' && { title: `${title} (other copy)` }),
  } as Stored;
}

/** Runs that went on differently here and in the file: the file's becomes a run of its own. Old id → new id. */
function forks(items: readonly unknown[], here: Here, copyId: () => string): Map<string, string> {
  const stored = new Map(here.events.map((event) => [`${event.seq} ${event.run}`, event]));
  const renamed = new Map<string, string>();
  for (const item of items) {
    const event = asEvent(item);
    const twin = event && stored.get(`${event.seq} ${event.run}`);
    if (twin && !sameJson(twin, event) && !renamed.has(event.run)) renamed.set(event.run, copyId());
  }
  return renamed;
}

interface Events {
  events: readonly unknown[];
  records: ReadonlyMap<string, Stored>;
  here: Here;
  renamed: ReadonlyMap<string, string>;
  leaveOut: (item: unknown, why: string) => void;
}

function mergeEvents({ events, records, here, renamed, leaveOut }: Events): Change[] {
  const stored = new Set(here.events.map((event) => `${event.seq} ${event.run}`));
  const seen = new Map<string, RunEvent>();
  return events.flatMap((item) => {
    const event = asEvent(item);
    if (!event) leaveOut(item, 'it is no step of a run');
    else if (!records.has(event.run) && !here.records.has(event.run))
      leaveOut(item, 'the run it belongs to is missing');
    else {
      const key = `${event.seq} ${event.run}`;
      const twin = seen.get(key);
      if (twin && !sameJson(twin, event)) leaveOut(item, 'the run has another step at its place');
      if (twin) return [];
      seen.set(key, event);
      const copy = renamed.get(event.run);
      if (copy !== undefined) return [{ event: { ...event, run: copy } }];
      if (!stored.has(key)) return [{ event }];
    }
    return [];
  });
}

function nameOf(item: unknown): string {
  if (typeof item !== 'object' || item === null) return String(item).slice(0, 60);
  const { kind, name, title, code, id, run, seq } = item as Record<string, unknown>;
  const texts = [kind, name ?? title ?? code ?? id ?? run, seq].filter((part) =>
    ['string', 'number'].includes(typeof part),
  );
  return texts.join(' ').slice(0, 60) || 'an item without a name';
}
