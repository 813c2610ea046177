import { computed, type ReadonlySignal } from '@preact/signals';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Run, RunEvent } from '../../records/kind/run';
import { newRecord } from '../../records/shelf';
import { afterThis } from '../../ui/afterThis';
import { attempt } from '../../workshop/attempt';
import { textOf } from './fields';
import { fold, freshRun, type RunState } from './fold';
import { openLog, type EventLog } from './log';
import type { Step, Task, Walk } from './task';

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
  return walk(task, run, openLog({ run, events, stored: events.length, recorded: task.recorded }));
}

function walk(task: Task, run: Run, log: EventLog): Walk {
  const views = viewsOf(task);
  const view = computed(() => views(log.events.value));
  const state = computed(() => view.value.state.value);
  const steps = computed(() => view.value.steps.value);
  const index = computed(() => placeOf(steps.value, state.value));
  const step = computed(() => steps.value[index.value]!);
  const title = computed(() => task.title(state.value));

  async function finish(): Promise<readonly AnyRecord[] | null> {
    const kept = attempt(() => task.keep(state.value));
    if ('problem' in kept) log.complain(kept.problem);
    if ('problem' in kept) return null;
    const records = kept.map((record) => ({ ...record, from: [...record.from, run.id] }));
    const { open: _, ...rest } = run;
    const ended: Run = {
      ...rest,
      title: title.value,
      endedAt: new Date().toISOString(),
      kept: records.map(({ id }) => id),
    };
    return (await log.seal(records, ended, { type: 'go', key: '', text: step.value.key })) ? records : null;
  }

  return {
    ...{ task, id: run.id, state, steps, index, step, title, finish },
    trouble: log.trouble,
    happen: (...happenings) => {
      afterThis(() => views(log.coming()).steps.peek());
      return log.append(happenings);
    },
    settled: log.settled,
    goTo: (key, done = false) => log.append([{ type: 'go', key, ...(done ? { text: step.value.key } : {}) }]),
  };
}

/**
 * What a list of events adds up to, worked out once: while the disk is written to, the page has time to work out what it will show then.
 */
function viewsOf(task: Task) {
  let last: { events: readonly RunEvent[]; state: ReadonlySignal<RunState>; steps: ReadonlySignal<readonly Step[]> }[] =
    [];
  return (events: readonly RunEvent[]) => {
    const known = last.find((view) => view.events === events);
    if (known) return known;
    const state = computed(() => fold(events));
    const view = { events, state, steps: computed(() => task.steps(state.value)) };
    last = [view, ...last].slice(0, 2);
    return view;
  };
}

/** Where a run stands among its steps: at the step of its last move, or at the first one. */
export function placeOf(steps: readonly Step[], state: RunState): number {
  return Math.max(
    0,
    steps.findIndex((step) => step.key === state.at),
  );
}

/** The sentences that keep a step from being left: field name → sentence. */
export function problemsOf(step: Step, state: RunState): Record<string, string> {
  const answers = (step.ask ?? []).map((field) => [field.name, field.read(textOf(state, field))] as const);
  return Object.fromEntries(answers.flatMap(([name, answer]) => (answer.ok ? [] : [[name, answer.why]])));
}
