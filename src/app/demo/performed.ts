import type { AnyRecord } from '../../records/kind/kinds';
import type { Run, RunEvent } from '../../records/kind/run';
import { newRecord } from '../../records/shelf';
import { fold } from '../../tasks/engine/fold';
import type { Happening } from '../../tasks/engine/log';
import { leaving, nextKey, problemsOf } from '../../tasks/engine/leaving';
import { placeOf } from '../../tasks/engine/place';
import { recordsOf } from '../../tasks/engine/recordsOf';
import type { Step, Task } from '../../tasks/engine/task';

/** A run of the demo: what is answered, counted and marked, and when it began (ISO 8601, UTC). */
export interface Act {
  readonly task: Task;
  readonly at: string;
  readonly typed?: Readonly<Record<string, string>>;
  /** Counter of a tap pad → drops. */
  readonly drops?: Readonly<Record<string, number>>;
  /** Key of a step → what happens there beside its questions. */
  readonly there?: Readonly<Record<string, readonly Happening[]>>;
}

const PACE = 9_000; // ms between two things that happen
const MOST = 400; // steps; a run of the demo that is longer goes in a circle

/**
 * Walks a task as a person would, step by step, and hands back the run with its events and the records it ended in, all
 * marked as demo. @throws Error with the step and the sentence where a step cannot be left so
 */
export function performed(act: Act): { run: Run; events: RunEvent[]; records: AnyRecord[] } {
  const { task, typed = {}, drops = {}, there = {} } = act;
  const run = newRecord('run', { task: task.id, kept: [], title: '' });
  const events: RunEvent[] = [];
  const start = Date.parse(act.at);
  const now = () => new Date(start + events.length * PACE).toISOString();
  const happen = (...all: readonly Happening[]) =>
    all.forEach((one) => events.push({ run: run.id, seq: events.length, at: now(), ...one }));
  for (let n = 0; ; n++) {
    const step = stepOf(task, events);
    const answerAll = () => {
      for (let name = nextTyped(task, events, typed); name; name = nextTyped(task, events, typed))
        happen({ type: 'typed', key: name, text: typed[name]! });
    };
    answerAll();
    if (step.pad) happen({ type: 'count', key: step.pad.counter, by: drops[step.pad.counter] ?? step.pad.target ?? 0 });
    happen(...(there[step.key] ?? []));
    answerAll(); // what happened may bring more questions
    happen(...filledIn(stepOf(task, events), events));
    const left = stepOf(task, events);
    const why = Object.values(problemsOf(left, fold(events)))[0] ?? left.problem;
    if (why || n > MOST)
      throw new Error(`the demo stops at “${left.key}” of ${task.id}: ${why ?? 'it goes in a circle'}`);
    const state = fold(events);
    const next = nextKey(task, left, state);
    happen(...leaving(left, state, next ?? ''));
    if (next === undefined) break;
  }
  return ended(task, run, events, now());
}

/** A question of the step on the screen that has a scripted answer and none yet: what is typed may bring more questions. */
function nextTyped(
  task: Task,
  events: readonly RunEvent[],
  typed: Readonly<Record<string, string>>,
): string | undefined {
  const { ask = [], rows = [] } = stepOf(task, events);
  const given = fold(events).typed;
  return [...ask, ...rows].find(({ name }) => typed[name] !== undefined && given[name] !== typed[name])?.name;
}

/** An amount no one scripted is weighed exactly as planned: the step offers to fill that in. */
function filledIn(step: Step, events: readonly RunEvent[]): Happening[] {
  if (Object.keys(problemsOf(step, fold(events))).length === 0) return [];
  const offer = step.offers?.find(({ type, start }) => type && !start);
  return Object.entries(offer?.type ?? {}).map(([key, text]) => ({ type: 'typed', key, text }));
}

function stepOf(task: Task, events: readonly RunEvent[]): Step {
  const state = fold(events);
  const steps = task.steps(state);
  return steps[placeOf(steps, state)]!;
}

function ended(task: Task, run: Run, events: RunEvent[], at: string) {
  const state = fold(events);
  const marked = { demo: true as const };
  const kept = recordsOf(task, run.id, { state, events, endedAt: at });
  const records = kept.map((record) => ({ ...record, made: at, ...marked }));
  const end = { made: events[0]!.at, title: task.title(state), endedAt: at, kept: records.map(({ id }) => id) };
  return { run: { ...run, ...end, ...marked }, events, records };
}
