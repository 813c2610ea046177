import { ringsIn } from './ancestry';
import type { BackupContent } from './backupFile';
import { placeRuns, stepsOf, whyNoStep } from './forks';
import { copyOf, isSameButForStamps, isStricter, settle, strictest } from './join';
import type { Change } from '../store/change';
import { kindNamed } from '../kind/kinds';
import { readRecord, type Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { asEvent, whyNotStorable } from './storable';
import { sameJson } from '../union/json';

/** What a restore would do, counted in records but for the steps; a photo and its picture are one. */
export interface Plan {
  readonly fresh: number;
  /** Newer in the file: the file's is the record afterwards. */
  readonly changed: number;
  /** Newer here: what is here stays. */
  readonly older: number;
  readonly same: number;
  /** Changed on both sides: the later is the record, the other is kept beside it under an id of its own. */
  readonly both: number;
  /** Not readable by this version and kept untouched, as those of a newer Minim are. */
  readonly untouched: number;
  /** Steps of runs that are not here yet. */
  readonly steps: number;
  /** Names of those that were changed on both sides, the first hundred. */
  readonly conflicts: readonly string[];
  /** Names of those that are smell only on one side and are so on both afterwards, the first hundred. */
  readonly stricter: readonly string[];
  /** What stays out, and why, the first hundred. */
  readonly out: readonly { what: string; why: string }[];
  readonly outCount: number;
  readonly changes: readonly Change[];
}

/** What is stored here, as far as a merge needs it. */
export interface Here {
  readonly records: ReadonlyMap<string, Stored>;
  /** Steps of the runs that are in the file too, and of their other copies. */
  readonly events: readonly RunEvent[];
}

const LISTED = 100; // names on a screen

type Counts = {
  -readonly [K in 'fresh' | 'changed' | 'older' | 'same' | 'both' | 'untouched' | 'steps' | 'outCount']: number;
};

function noCounts(): Counts {
  return { fresh: 0, changed: 0, older: 0, same: 0, both: 0, untouched: 0, steps: 0, outCount: 0 };
}

type LeaveOut = (item: unknown, why: string) => void;

/** Looks at every item of a backup against what is here, without changing anything. Done again, or the other way round, it finds the same. */
export function planMerge(content: BackupContent, here: Here): Plan {
  const [counts, ofPictures] = [noCounts(), noCounts()];
  counts.outCount = content.missing;
  const out: { what: string; why: string }[] = [];
  const leaveOut: LeaveOut = (item, why) => {
    counts.outCount++;
    if (out.length < LISTED) out.push({ what: nameOf(item), why });
  };
  if (content.missing > 0) out.push({ what: `${content.missing} items`, why: 'the file is damaged where they were' });
  const records = admitted(content.records, here, leaveOut);
  const { runs, fresh } = runsIn(content.events, { records, here, leaveOut });
  const merging: Merging = { inFile: records, here: here.records, next: new Map(), conflicts: [], stricter: [] };
  for (const record of records.values())
    if (!runs.has(record.id)) mergeRecord(record, record.kind === 'picture' ? ofPictures : counts, merging);
  for (const [run, target] of runs) mergeRun(run, target, { counts, merging });
  const { next, conflicts, stricter } = merging;
  const changes = [...[...next.values()].map((record) => ({ record })), ...fresh.map((event) => ({ event }))];
  counts.steps = fresh.length;
  return { ...counts, out, conflicts, stricter, changes };
}

/** The records of a file that may be stored, one of each id. */
function admitted(items: readonly unknown[], here: Here, leaveOut: LeaveOut): Map<string, Stored> {
  const records = new Map<string, Stored>();
  for (const item of items) {
    const why = whyNotStorable(item);
    const record = item as Stored;
    const twin = why === '' ? records.get(record.id) : undefined;
    if (why !== '') leaveOut(item, why);
    else records.set(record.id, twin ? settle(record, twin).own : record);
    if (twin && !sameJson(twin, record)) leaveOut(item, 'its id is in the file twice; the newer one is used');
  }
  for (const id of ringsIn(new Map([...here.records, ...records]).values())) {
    if (records.has(id)) leaveOut(records.get(id), 'it says that it is made from itself');
    records.delete(id);
  }
  return records;
}

/** A merge under way. */
interface Merging {
  readonly inFile: ReadonlyMap<string, Stored>;
  readonly here: ReadonlyMap<string, Stored>;
  /** What is to be stored, by id. */
  readonly next: Map<string, Stored>;
  readonly conflicts: string[];
  readonly stricter: string[];
}

function mergeRecord(record: Stored, counts: Counts, merging: Merging): void {
  const kind = kindNamed(record.kind);
  if (!kind || !readRecord(kind, record).ok) counts.untouched++;
  const before = versionNow(record.id, merging);
  if (!before) counts.fresh++;
  const { relation, changed, copied } = put(record, merging);
  if (!before) return;
  if (copied) counts.both++;
  else if (relation === 'first is newer') counts.changed++;
  else if (relation === 'second is newer') counts.older++;
  else counts[changed ? 'changed' : 'same']++;
  if (copied) listName(merging.conflicts, record, merging);
  const now = versionNow(record.id, merging)!;
  if (isStricter(now, before) || isStricter(now, record)) listName(merging.stricter, record, merging);
}

/** Stores a version of a record beside or over what there is of it. */
function put(record: Stored, merging: Merging) {
  const before = versionNow(record.id, merging);
  const { relation, own, beside } = before ? settle(record, before) : { relation: null, own: record, beside: null };
  const isNothing = relation === 'second is newer' || relation === 'same';
  const changed = !before || (isNothing ? !isSameButForStamps(own, before) : !sameJson(own, before));
  if (changed) merging.next.set(record.id, own);
  const copied = beside !== null && !versionNow(beside.id, merging);
  if (beside) put(beside, merging);
  return { relation, changed, copied };
}

function versionNow(id: string, { next, here }: Merging): Stored | undefined {
  return next.get(id) ?? here.get(id);
}

/** The record of a run follows its steps: over what is here while they agree, beside it where they part. */
function mergeRun(run: string, target: string, { counts, merging }: { counts: Counts; merging: Merging }): void {
  const inFile = merging.inFile.get(run);
  const record = inFile ?? merging.here.get(run)!;
  if (run === target) return inFile && mergeRecord(inFile, counts, merging);
  if ((record as { from?: unknown[] }).from?.includes(target)) return void counts.same++; // the other copy of one that is here
  if (versionNow(target, merging)) counts.same++;
  else {
    counts.both++;
    listName(merging.conflicts, record, merging);
  }
  put(copyOf(record, target), merging);
}

/** The runs of a file and where each goes, and the steps that are to be stored. */
function runsIn(
  items: readonly unknown[],
  { records, here, leaveOut }: { records: ReadonlyMap<string, Stored>; here: Here; leaveOut: LeaveOut },
) {
  const isKnown = (run: string) => records.has(run) || here.records.has(run);
  const events: RunEvent[] = [];
  for (const item of items) {
    const why = whyNoStep(item, isKnown);
    if (why === '') events.push(asEvent(item)!);
    else leaveOut(item, why);
  }
  const inFile = stepsOf(events, (event) => leaveOut(event, 'the run has another step at its place'));
  return placeRuns(inFile, stepsOf(here.events), records);
}

/** Adds what a person calls a record to a list of names; a bottle is called by its material and lot. */
function listName(names: string[], record: Stored, merging: Pick<Merging, 'inFile' | 'here'>): void {
  const { material, lot } = record as { material?: unknown; lot?: unknown };
  const of = merging.inFile.get(material as string) ?? merging.here.get(material as string);
  const name = nameOf(of && record.kind === 'bottle' ? { ...of, kind: record.kind } : record);
  const words = typeof lot === 'string' && lot !== '' ? `${name}, lot ${lot.slice(0, 60)}` : name;
  if (names.length < LISTED && !names.includes(words)) names.push(words);
}

/** What is to be stored in place of what is here: as in the file, but what is smell only here stays so. */
export function planReplace(content: BackupContent, here: ReadonlyMap<string, Stored>): Plan {
  const plan = planMerge(content, { records: new Map(), events: [] });
  const stricter: string[] = [];
  const changes = plan.changes.map((change) => {
    const before = 'record' in change ? here.get(change.record.id) : undefined;
    if (!('record' in change) || !before || !isStricter(before, change.record)) return change;
    listName(stricter, change.record, { inFile: here, here });
    return { record: strictest(change.record, before) };
  });
  return { ...plan, stricter, changes };
}

function nameOf(item: unknown): string {
  if (typeof item !== 'object' || item === null) return String(item).slice(0, 60);
  const { kind, name, title, code, id, run, seq } = item as Record<string, unknown>;
  const texts = [kind, name ?? title ?? code ?? id ?? run, seq].filter((part) =>
    ['string', 'number'].includes(typeof part),
  );
  return texts.join(' ').slice(0, 60) || 'an item without a name';
}
