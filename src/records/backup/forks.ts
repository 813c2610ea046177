import { asEvent } from './storable';
import { sameJson } from '../union/json';
import { derivedId } from './join';
import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';

/** Steps of runs, by run and place. */
export type Steps = Map<string, Map<number, RunEvent>>;

/** Where the steps of the runs of a file go: a run of the file → the run that it is here, and the steps that are not here yet. */
export interface Placed {
  readonly runs: ReadonlyMap<string, string>;
  readonly fresh: readonly RunEvent[];
}

/** Steps by run and place; `onTwin` has each that meets another one at its place. */
export function stepsOf(events: readonly RunEvent[], onTwin: (event: RunEvent) => void = () => {}): Steps {
  const steps: Steps = new Map();
  for (const event of events) {
    const own = steps.get(event.run) ?? new Map<number, RunEvent>();
    steps.set(event.run, own);
    const twin = own.get(event.seq);
    if (twin && !sameJson(twin, event)) onTwin(event);
    else own.set(event.seq, event);
  }
  return steps;
}

/** Whether an item is a step of a run that is known; else why it stays out. */
export function whyNoStep(item: unknown, isKnown: (run: string) => boolean): string {
  const event = asEvent(item);
  if (!event) return 'it is no step of a run';
  return isKnown(event.run) ? '' : 'the run it belongs to is missing';
}

/**
 * Places the runs of a file beside those that are here. A run that goes on from where it is here is longer afterwards; one that went on
 * differently becomes a run of its own, under an id that follows from the step where it parts: brought again, it is found again.
 * The other copy of a run, come back to the device that it was made from, is that run.
 */
export function placeRuns(inFile: Steps, here: Steps, records: ReadonlyMap<string, Stored>): Placed {
  const all: Steps = new Map([...here].map(([run, steps]) => [run, new Map(steps)]));
  const runs = new Map<string, string>();
  const fresh: RunEvent[] = [];
  for (const [run, steps] of inFile) {
    const target = parted(ownBehind(run, { steps, all, record: records.get(run) }), steps, all);
    runs.set(run, target);
    const own = all.get(target) ?? new Map<number, RunEvent>();
    all.set(target, own);
    for (const [seq, event] of steps) {
      if (own.has(seq)) continue;
      const placed = { ...event, run: target };
      own.set(seq, placed);
      fresh.push(placed);
    }
  }
  return { runs, fresh };
}

/** The run itself while it agrees with what is here under its id, else the one that begins where it parts, and so on. */
function parted(run: string, steps: ReadonlyMap<number, RunEvent>, all: Steps): string {
  const here = all.get(run);
  const other = here && firstOther(steps, here);
  return other ? parted(derivedId(run, bare(other)), steps, all) : run;
}

function firstOther(steps: ReadonlyMap<number, RunEvent>, here: ReadonlyMap<number, RunEvent>): RunEvent | undefined {
  const others = [...steps.values()].filter((event) => {
    const twin = here.get(event.seq);
    return twin && !sameJson(bare(twin), bare(event));
  });
  return others.sort((a, b) => a.seq - b.seq)[0];
}

/** A step whichever run it belongs to. */
function bare(event: RunEvent): Omit<RunEvent, 'run'> {
  const { run, ...rest } = event;
  return rest;
}

/** Of a run that is not here and was copied from one that is, and agrees with it step by step: that one. */
function ownBehind(
  run: string,
  { steps, all, record }: { steps: ReadonlyMap<number, RunEvent>; all: Steps; record: Stored | undefined },
): string {
  const { from } = (record ?? {}) as { from?: unknown };
  if (all.has(run) || !Array.isArray(from)) return run;
  const isOwn = (id: unknown) => {
    const here = all.get(id as string);
    return here && [...steps.keys()].some((seq) => here.has(seq)) && !firstOther(steps, here);
  };
  return (from as string[]).find(isOwn) ?? run;
}
