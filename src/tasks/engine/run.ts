import { computed, type ReadonlySignal } from '@preact/signals';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Run, RunEvent } from '../../records/kind/run';
import { newRecord } from '../../records/shelf';
import { afterThis } from '../../ui/afterThis';
import { attempt, Refused } from '../../workshop/attempt';
import { fold, freshRun, type RunState } from './fold';
import { lastSound, layOut, titleOf, type LaidOut } from './layOut';
import { leaving, nextKey, withHappenings, withPresets } from './leaving';
import { placeOf } from './place';
import { recordsOf } from './recordsOf';
import { openLog, type EventLog, type Happening } from './log';
import type { Task, Walk } from './task';

/** A walk from its beginning, with some fields filled in already. It is stored with the first thing that happens. */
export function beginWalk(task: Task, id: string, typed: Readonly<Record<string, string>> = {}): Walk {
  const run = newRecord('run', { id, task: task.id, open: 1, kept: [], title: task.title(freshRun) });
  const filled = Object.entries(typed).map(([key, text], seq) => ({
    type: 'typed' as const,
    key,
    text,
    run: id,
    seq,
    at: run.made,
  }));
  return walk(task, run, openLog({ run, events: filled, stored: 0, recorded: task.recorded }));
}

/** A walk as it was left. */
export function resumeWalk(task: Task, run: Run, events: readonly RunEvent[]): Walk {
  const log = openLog({ run, events, stored: events.length, recorded: task.recorded });
  const { made } = lastSound((state) => withPresets(task, state).presets, events, fold(events));
  return walk(task, run, log, { ...freshRun, presets: made });
}

function walk(task: Task, run: Run, log: EventLog, from: RunState = freshRun): Walk {
  const views = viewsOf(task, from);
  const view = computed(() => views(log.events.value));
  const state = computed(() => view.value.state.value);
  const steps = computed(() => view.value.laidOut.value.steps);
  const fault = computed(() => view.value.laidOut.value.fault);
  const index = computed(() => placeOf(steps.value, state.value));
  const step = computed(() => steps.value[index.value]!);

  async function leave(): Promise<readonly AnyRecord[] | null> {
    const next = nextKey(task, step.value, state.value);
    const last = leaving(step.value, state.value, next ?? '');
    if (next === undefined) return ended(task, run, log, { last, from });
    await log.append(last);
    return null;
  }

  return {
    task,
    id: run.id,
    state,
    steps,
    fault,
    index,
    step,
    title: computed(() => titleOf(task, state.value, run.title)),
    leave,
    trouble: log.trouble,
    happen: (...happenings) => {
      afterThis(() => views(log.coming()).laidOut.peek());
      return log.append(happenings);
    },
    settled: log.settled,
    goTo: (key, done = false) => log.append(done ? leaving(step.value, state.value, key) : [{ type: 'go', key }]),
  };
}

/** Stores the records that a run ends in, together with its end and what happened last; null when it could not. */
async function ended(
  task: Task,
  run: Run,
  log: EventLog,
  { last, from }: { last: readonly Happening[]; from: RunState },
): Promise<readonly AnyRecord[] | null> {
  const before = log.events.value;
  const state = withHappenings(fold(before, from), last.slice(0, -1)); // all but the leaving itself
  const endedAt = new Date().toISOString();
  const records = attempt(() => recordsOf(task, run.id, { state, events: before, endedAt }).map(withoutLabel));
  if (records instanceof Refused) {
    log.complain(records.problem);
    return null;
  }
  const { open: _, ...rest } = run;
  const end = { title: task.title(state), endedAt, kept: records.map(({ id }) => id) };
  return (await log.seal(records, { ...rest, ...end }, last)) ? records : null;
}

/** A vial has no label yet when it was just made; the Bench tells that until one is printed or written. */
function withoutLabel(record: AnyRecord): AnyRecord {
  return isOf('vial', record) ? { ...record, unlabelled: true } : record;
}

/**
 * What a list of events adds up to, worked out once: while the disk is written to, the page has time to work out what it will show then.
 */
function viewsOf(task: Task, from: RunState) {
  let last: View[] = [];
  return (events: readonly RunEvent[]): View => {
    const known = last.find((view) => view.events === events);
    if (known) return known;
    const state = computed(() => fold(events, from));
    const view = { events, state, laidOut: computed(() => layOut(task, events, state.value, from)) };
    last = [view, ...last].slice(0, 2);
    return view;
  };
}

interface View {
  readonly events: readonly RunEvent[];
  readonly state: ReadonlySignal<RunState>;
  readonly laidOut: ReadonlySignal<LaidOut>;
}
