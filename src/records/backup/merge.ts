import { ringsIn } from './rings';
import type { BackupContent } from './backupFile';
import type { Change } from '../store/change';
import { kindNamed } from '../kind/kinds';
import { GONE, readRecord, type Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';
import { isApart } from '../union/apart';
import { joinRecords } from '../union/joinRecords';
import { joinRuns, stepsOf, type Runs } from '../union/joinRuns';
import { sameJson } from '../union/json';
import { bare, basesOf } from '../union/state';
import { isStricter, strictest } from '../union/strict';
import { asItStands } from '../union/takeOver';
import { asEvent, whyNotStorable } from './storable';

/** What a restore would do, counted in records but for the steps; a photo and its picture are one. */
export interface Plan {
  readonly fresh: number;
  /** Newer in the file: the file's is the record afterwards. */
  readonly changed: number;
  /** Newer here: what is here stays. */
  readonly older: number;
  readonly same: number;
  /** Changed on both sides: all that was changed on either is in the record afterwards. */
  readonly both: number;
  /** Erased on one side, and so on both. */
  readonly erased: number;
  /** Not readable by this version and kept untouched, as those of a newer Minim are. */
  readonly untouched: number;
  /** Steps of runs that are not here yet. */
  readonly steps: number;
  /** Names of those of which two values of something have to be chosen from, the first hundred. */
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
  /** Steps of the runs that are in the file too, and of those parted from them. */
  readonly events: readonly RunEvent[];
}

const LISTED = 100; // names on a screen

type Counts = {
  -readonly [
    K in 'fresh' | 'changed' | 'older' | 'same' | 'both' | 'erased' | 'untouched' | 'steps' | 'outCount'
  ]: number;
};

function noCounts(): Counts {
  return { fresh: 0, changed: 0, older: 0, same: 0, both: 0, erased: 0, untouched: 0, steps: 0, outCount: 0 };
}

type LeaveOut = (item: unknown, why: string) => void;

/** A merge under way. */
interface Merging {
  readonly inFile: ReadonlyMap<string, Stored>;
  readonly here: ReadonlyMap<string, Stored>;
  /** What is to be stored, by id. */
  readonly next: Map<string, Stored>;
  readonly conflicts: string[];
  readonly stricter: string[];
}

/** Looks at every item of a backup against what is here, without changing anything. Done again, or the other way round, it comes to the same. */
export function planMerge(content: BackupContent, here: Here): Plan {
  const [counts, ofPictures] = [noCounts(), noCounts()];
  counts.outCount = content.missing;
  const out: { what: string; why: string }[] = [];
  const leaveOut: LeaveOut = (item, why) => {
    counts.outCount++;
    if (out.length < LISTED) out.push({ what: nameOf(item), why });
  };
  if (content.missing > 0) out.push({ what: `${content.missing} items`, why: 'the file is damaged where they were' });
  const inFile = admitted(content.records, here, leaveOut);
  const merging: Merging = { inFile, here: here.records, next: new Map(), conflicts: [], stricter: [] };
  for (const record of inFile.values()) mergeRecord(record, record.kind === 'picture' ? ofPictures : counts, merging);
  const steps = mergeRuns(stepsIn(content.events, merging, leaveOut), stepsOf(here.events), { counts, merging });
  const { next, conflicts, stricter } = merging;
  const changes = [...steps.gone, ...[...next.values()].map((record) => ({ record })), ...steps.fresh];
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
    else records.set(record.id, twin ? joinRecords(twin, record) : record);
    if (twin && !sameJson(twin, record)) leaveOut(item, 'its id is in the file twice; both are joined');
  }
  for (const id of ringsIn(new Map([...here.records, ...records]).values())) {
    if (records.has(id)) leaveOut(records.get(id), 'it says that it is made from itself');
    records.delete(id);
  }
  return records;
}

function versionNow(id: string, { next, here }: Merging): Stored | undefined {
  return next.get(id) ?? here.get(id);
}

function mergeRecord(record: Stored, counts: Counts, merging: Merging): void {
  const before = versionNow(record.id, merging);
  const now = before ? joinRecords(before, record) : record;
  if (!before || !sameJson(now, before)) merging.next.set(record.id, now);
  count(record, { before, now, counts });
  if (!before || now.kind === GONE) return;
  if (isApart(now) && !sameJson(now, before)) listName(merging.conflicts, now, merging);
  if (isStricter(now, before) || isStricter(now, record)) listName(merging.stricter, record, merging);
}

interface Merged {
  before: Stored | undefined;
  now: Stored;
  counts: Counts;
}

function count(record: Stored, { before, now, counts }: Merged): void {
  const kind = kindNamed(record.kind);
  if (record.kind !== GONE && (!kind || !readRecord(kind, record).ok)) counts.untouched++;
  const isSame = (other: Stored) => sameJson(bare(now), bare(other));
  if (now.kind === GONE) counts[!before || before.kind === record.kind ? 'same' : 'erased']++;
  else if (!before) counts.fresh++;
  else if (isApart(now) && !sameJson(now, before)) counts.both++;
  else if (isSame(before)) counts[isSame(record) ? 'same' : 'older']++;
  else counts[isSame(record) ? 'changed' : 'both']++;
}

/** The steps of a file that belong to a run that is known and was not erased. */
function stepsIn(items: readonly unknown[], merging: Merging, leaveOut: LeaveOut): Runs {
  const events: RunEvent[] = [];
  for (const item of items) {
    const event = asEvent(item);
    const run = event && versionNow(event.run, merging);
    if (!event) leaveOut(item, 'it is no step of a run');
    else if (!run) leaveOut(item, 'the run it belongs to is missing');
    else if (run.kind !== GONE) events.push(event);
  }
  return stepsOf(events, (event) => leaveOut(event, 'the run has another step at its place'));
}

/** The steps to be stored; a run that has others in their place is erased first. */
function mergeRuns(inFile: Runs, here: Runs, { counts, merging }: { counts: Counts; merging: Merging }) {
  const { all, changed, parts } = joinRuns(here, inFile, (run) => partOf(versionNow(run, merging)) ?? run);
  for (const [part, root] of parts) mergePart(part, root, merging);
  for (const run of new Set([...changed, ...merging.next.keys()])) mergeGoneOn(run, all.get(run)?.size ?? 0, merging);
  const [gone, fresh]: [{ gone: string }[], { event: RunEvent }[]] = [[], []];
  for (const run of changed) {
    const [steps, own] = [all.get(run)!, here.get(run)];
    const isOther = [...(own ?? [])].some(([seq, step]) => !sameJson(steps.get(seq), step));
    if (isOther) gone.push({ gone: run });
    if (isOther && !merging.next.has(run)) merging.next.set(run, versionNow(run, merging)!);
    for (const [seq, event] of steps) if (isOther || !own?.has(seq)) fresh.push({ event });
  }
  counts.steps = fresh.length;
  return { gone, fresh };
}

/** Whether a run that goes on elsewhere is still paused: its steps tell. */
function mergeGoneOn(run: string, steps: number, merging: Merging): void {
  const record = versionNow(run, merging);
  if (record?.kind !== 'run' || !('goesOn' in record)) return;
  const now = asItStands(record, steps);
  if (sameJson(now, merging.here.get(run))) merging.next.delete(run);
  else merging.next.set(run, now);
}

const partOf = (record: Stored | undefined): string | undefined => (record as { partOf?: string } | undefined)?.partOf;

/** The record of a run that was parted from another: paused, where it is. */
function mergePart(part: string, root: string, merging: Merging): void {
  const { task, title, made, demo } = bare(versionNow(root, merging)!) as unknown as Record<string, unknown>;
  const by = basesOf(versionNow(root, merging)!);
  const record = {
    id: part,
    kind: 'run',
    v: 1,
    made,
    from: [],
    task,
    title,
    kept: [],
    open: 1,
    partOf: root,
    by,
    ...(demo ? { demo } : {}),
  };
  const before = versionNow(part, merging);
  const now = before ? joinRecords(before, record as Stored) : (record as Stored);
  if (!before || !sameJson(now, before)) merging.next.set(part, now);
  if (!before) listName(merging.conflicts, now, merging);
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
