import { signal, type ReadonlySignal } from '@preact/signals';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Run, RunEvent } from '../../records/kind/run';
import { find, keep, runWithEvents } from '../../records/shelf';

export type Happening = Pick<RunEvent, 'type' | 'key'> & Partial<Pick<RunEvent, 'text' | 'by' | 'told'>>;

/** The events of one run: on the disk first, then in the signal. */
export interface EventLog {
  readonly events: ReadonlySignal<readonly RunEvent[]>;
  /** `events` with what is on its way to the disk: the same list that `events` becomes when it is there. */
  coming(): readonly RunEvent[];
  /** One sentence when something could not be stored. */
  readonly trouble: ReadonlySignal<string>;
  append(happenings: readonly Happening[]): Promise<boolean>;
  /** Resolves when all that has been handed in is stored, or refused. */
  settled(): Promise<unknown>;
  /** Stores the records and the end of the run together, or nothing. */
  seal(records: readonly AnyRecord[], ended: Run, last: readonly Happening[]): Promise<boolean>;
  complain(sentence: string): void;
}

interface Start {
  run: Run;
  events: readonly RunEvent[];
  /** How many of the events are on the disk already; with none, the run itself goes with the first. */
  stored: number;
  recorded: boolean;
}

/** Opens the log of a run. `recorded: false` keeps it in memory only. */
export function openLog(start: Start): EventLog {
  const { run, events: before } = start;
  const events = signal(before);
  const trouble = signal('');
  let [coming, next] = [before, numberAfter(before)];
  let onDisk = start.stored; // or on their way there
  let last = Promise.resolve(true); // the write that was handed in last

  async function store(happenings: readonly Happening[], records: readonly AnyRecord[]): Promise<boolean> {
    const at = new Date().toISOString();
    const base = coming;
    const fresh = happenings.map((happening) => ({ run: run.id, seq: next++, at, ...happening }));
    const then = (coming = [...base, ...fresh]);
    const first = onDisk === 0;
    const isOff = !first && records.length === 0 && find('run', run.id)?.open !== 1; // another device took it over meanwhile
    onDisk = next;
    const failed = start.recorded
      ? await put(first || isOff ? [run, ...records] : records, first ? then : fresh)
      : null;
    if (failed !== null) await reread();
    else if (events.value === base) events.value = then;
    else events.value = coming = [...events.value, ...fresh]; // one before it failed
    trouble.value = failed ?? '';
    return failed === null;
  }

  /** After a failed write the disk is right, and the screen follows it. */
  async function reread(): Promise<void> {
    const there = await runWithEvents(run.id).catch(() => null);
    events.value = coming = there?.events ?? before;
    onDisk = there?.events.length ?? 0;
    next = numberAfter(coming);
  }

  const append: EventLog['append'] = (happenings) => (last = store(happenings, []));
  const seal: EventLog['seal'] = (records, ended, last) => store(last, [...records, ended]);
  const complain = (words: string) => void (trouble.value = words);
  return { events, trouble, append, seal, complain, coming: () => coming, settled: () => last };
}

/** The number of the next event: one on from the last, also where a mended store lacks some in between. */
function numberAfter(events: readonly RunEvent[]): number {
  return (events.at(-1)?.seq ?? -1) + 1;
}

/** Stores and shows; null when it went well, else one sentence. */
async function put(records: readonly AnyRecord[], events: readonly RunEvent[]): Promise<string | null> {
  try {
    await keep(records, events);
    return null;
  } catch (error) {
    const other = error instanceof DOMException && error.name === 'ConstraintError';
    if (other) return 'This run was continued in another window; here is where it is now.';
    return `The phone could not store this, so it does not count: ${error instanceof Error ? error.message : String(error)}`;
  }
}
