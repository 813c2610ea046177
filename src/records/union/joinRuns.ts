import type { RunEvent } from '../kind/run';
import { derivedId } from './derivedId';
import { inOrder, sameJson } from './json';

/** The steps of a run, by their place. */
export type Steps = ReadonlyMap<number, RunEvent>;

/** The steps of runs, by run. */
export type Runs = Map<string, Steps>;

/** What two stores of steps come to. */
export interface JoinedRuns {
  readonly all: ReadonlyMap<string, Steps>;
  /** Runs that have other steps than here. */
  readonly changed: ReadonlySet<string>;
  /** Runs that were parted from another one: of which. */
  readonly parts: ReadonlyMap<string, string>;
}

/** Steps by run and place; `onTwin` has each that meets another one at its place. */
export function stepsOf(events: Iterable<RunEvent>, onTwin: (event: RunEvent) => void = () => {}): Runs {
  const runs = new Map<string, Map<number, RunEvent>>();
  for (const event of events) {
    const own = runs.get(event.run) ?? new Map<number, RunEvent>();
    runs.set(event.run, own);
    const twin = own.get(event.seq);
    if (twin && !sameJson(twin, event)) onTwin(event);
    else own.set(event.seq, event);
  }
  return runs;
}

/**
 * The steps of both sides. A device goes on with another's run under an id of its own (`takeOver`), so that steps are only added. Where
 * two went on under one id all the same (a device that was set back, or a run from before that), the run is parted: whose step is the
 * greater as text keeps the id, the other goes to one that follows from its own step, whichever of them is here.
 */
export function joinRuns(here: Runs, theirs: Runs, rootOf: (run: string) => string): JoinedRuns {
  const all = new Map(here);
  const [changed, parts] = [new Set<string>(), new Map<string, string>()];
  const put = (run: string, steps: Steps): void => {
    const renamed = new Map([...steps].map(([seq, step]) => [seq, step.run === run ? step : { ...step, run }]));
    all.set(run, renamed);
    changed.add(run);
  };
  const place = (run: string, steps: Steps): void => {
    const own = all.get(run);
    if (!own) return put(run, steps);
    const at = partingOf(own, steps);
    if (at === null)
      return [...steps.keys()].every((seq) => own.has(seq)) ? undefined : put(run, new Map([...steps, ...own]));
    const isOwn = textOf(own.get(at)!) > textOf(steps.get(at)!);
    const [stays, goes] = isOwn ? [own, steps] : [steps, own];
    if (!isOwn) put(run, stays);
    const root = parts.get(run) ?? rootOf(run);
    const part = derivedId(root, bare(goes.get(at)!));
    parts.set(part, root);
    place(part, goes);
  };
  for (const [run, steps] of theirs) place(run, steps);
  return { all, changed, parts };
}

/** The place from which on two runs differ; null where they do not. */
function partingOf(a: Steps, b: Steps): number | null {
  const others = [...b].filter(([seq, step]) => a.has(seq) && !sameJson(bare(a.get(seq)!), bare(step)));
  return others.length === 0 ? null : Math.min(...others.map(([seq]) => seq));
}

/** A step whichever run it belongs to. */
function bare({ run: _, ...rest }: RunEvent): Omit<RunEvent, 'run'> {
  return rest;
}

const textOf = (step: RunEvent) => inOrder(bare(step));
