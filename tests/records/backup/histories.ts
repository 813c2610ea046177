import { planMerge } from '../../../src/records/backup/merge';
import { backupHead, backupText, type BackupContent } from '../../../src/records/backup/backupFile';
import { goneOf, type Stored } from '../../../src/records/kind/record';
import type { Run, RunEvent } from '../../../src/records/kind/run';
import { stamped } from '../../../src/records/union/stamp';
import { lacking, summary } from '../../../src/records/union/summary';
import { takenOver } from '../../../src/records/union/takeOver';

export type Any = Stored & Record<string, any>;

/** A device as far as a merge knows it: what is stored on it, its id and counter, and a clock that may be wrong. */
export interface Device {
  records: Map<string, Any>;
  events: RunEvent[];
  id: string;
  /** The last counter that it has given or heard of. */
  counter: number;
  /** ms that its clock is off. */
  off: number;
}

/** What time it really is, a minute later each time it is asked. */
export const clock = {
  minute: 0,
  next: () => Date.UTC(2026, 0, 1, 0, clock.minute++),
  now: () => new Date(clock.next()).toISOString(),
};

let devices = 0;

export function device(records: readonly Any[] = [], off = 0): Device {
  const id = `dev${devices++}`;
  return { records: new Map(records.map((one) => [one.id, one])), events: [], id, counter: 0, off };
}

/** The time of day by a device's clock, ISO 8601. */
export function told(on: Device): string {
  return new Date(clock.next() + on.off).toISOString();
}

/** The next write of a device, as `nextDot` gives it. */
function dotOf(on: Device): string {
  for (const { by, seen } of on.records.values())
    for (const n of [...Object.values(seen ?? {}), Number(String(by).split(':')[1])])
      if (typeof n === 'number' && n > on.counter) on.counter = n;
  on.counter = Math.max(clock.next() + on.off, on.counter + 1);
  return `${on.id}:${on.counter}`;
}

/** Stores a record as the shelf does: signed, with what it was before in it. */
export function put(on: Device, record: Any): void {
  on.records.set(record.id, stamped<Any>(record, on.records.get(record.id), dotOf(on)));
}

/** Stores a record with something changed. */
export function write(on: Device, id: string, change: object): void {
  put(on, { ...on.records.get(id), ...change } as Any);
}

/** Stores a change as before there were counters: with when it was written, and when before. */
export function writeOld(on: Device, id: string, change: object, written = clock.now()): void {
  const before = on.records.get(id) as Any;
  const earlier = [...(before?.['earlier'] ?? []), ...(before?.['written'] ? [before['written']] : [])];
  on.records.set(id, { ...before, ...change, written, ...(earlier.length > 0 && { earlier: earlier.slice(-64) }) });
}

/** Erases a record, as the shelf does. */
export function erase(on: Device, id: string): void {
  on.records.set(id, goneOf(id) as Any);
  on.events = on.events.filter(({ run }) => run !== id);
}

/** One more step of a run on a device, which goes on with another's run as its own. Gives the run it belongs to. */
export function step(on: Device, id: string, key: string): string {
  const events = on.events.filter(({ run }) => run === id).sort((a, b) => a.seq - b.seq);
  const taken = takenOver({ run: on.records.get(id) as never as Run, events }, on.id);
  const run = taken?.now.run.id ?? id;
  if (taken && !on.records.has(run)) {
    put(on, taken.now.run as never as Any);
    put(on, taken.left as never as Any);
    on.events.push(...taken.now.events);
  }
  const seq = on.events.filter((event) => event.run === run).reduce((last, event) => Math.max(last, event.seq), -1) + 1;
  on.events.push({ run, seq, at: told(on), type: 'drop', key, who: on.id });
  return run;
}

export function backupOf({ records, events }: Device): BackupContent {
  return structuredClone({ made: '', records: [...records.values()], events, missing: 0 });
}

/** The text of a backup, byte for byte as Minim writes it. */
export async function exported({ records, events }: Device): Promise<string> {
  const all = [...records.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const steps = [...events].sort((a, b) => (a.run < b.run ? -1 : a.run > b.run ? 1 : a.seq - b.seq));
  async function* page<T>(items: T[]) {
    yield items;
  }
  let text = backupHead({ made: '', holds: { records: all.length, events: steps.length } });
  for await (const part of backupText({ records: page(all), events: page(steps) })) text += part;
  return text;
}

/** What one device lacks of another, as it is sent. */
export function parcelFor(to: Device, from: Device): BackupContent {
  const [theirs, ours] = [to, from].map(({ records, events }) => ({ records: [...records.values()], events }));
  return structuredClone({ made: '', missing: 0, ...lacking(ours!, summary(theirs!)) });
}

/** Restores a file; gives the plan. */
export function bring(file: BackupContent, to: Device) {
  const plan = planMerge(file, to);
  for (const change of plan.changes) {
    if ('record' in change) {
      to.records.set(change.record.id, change.record as Any);
      if (change.record.kind === 'gone') to.events = to.events.filter(({ run }) => run !== change.record.id);
    } else if ('gone' in change) to.events = to.events.filter(({ run }) => run !== change.gone);
    else {
      if (to.events.some(({ run, seq }) => run === change.event.run && seq === change.event.seq))
        throw new Error('a step was stored over another one');
      to.events.push(change.event);
    }
  }
  return plan;
}

export const bottle = (id: string, more: object = {}): Any => ({
  id,
  kind: 'bottle',
  v: 1,
  made: '2026-01-01T00:00:00.000Z',
  from: [],
  material: 'm',
  supplier: '',
  lot: `L-${id}`,
  grade: 'fit for drinks',
  amountG: 20,
  written: '2025-01-01T00:00:00.000Z',
  ...more,
});
