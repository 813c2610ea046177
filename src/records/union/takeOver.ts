import type { Run, RunEvent } from '../kind/run';
import { derivedId } from './derivedId';
import type { Stored } from '../kind/record';
import { partsOf } from './dots';
import { bare, basesOf } from './state';

/** A run with its steps. */
export interface Walked {
  readonly run: Run;
  readonly events: readonly RunEvent[];
}

/**
 * A paused run that another device began, as this one goes on with it: a run of its own with the same steps, and the other's run with
 * the word that it goes on here. Each run has one device that writes it, so that nothing of either is ever written over. Null where
 * the run is this device's own, or does not say whose it is.
 */
export function takenOver(
  { run, events }: Walked,
  device: string,
): { readonly left: Run; readonly now: Walked } | null {
  const last = events.at(-1);
  const owner = partsOf(basesOf(run)[0]!)?.device ?? last?.who;
  if (!owner || owner === device) return null;
  const id = derivedId(run.id, [device, last ?? null]);
  const { goesOn: _, partOf: __, ...rest } = bare(run);
  const { open: ___, ...left } = run;
  return {
    left: { ...left, goesOn: { run: id, steps: events.length } },
    now: {
      run: { ...rest, id, from: [...run.from, run.id], open: 1 },
      events: events.map((event) => ({ ...event, run: id })),
    },
  };
}

/** A run with the word whether it is paused: not ended, not discarded, and not gone on with elsewhere unless it has more steps than that knew of. */
export function asItStands<R extends Stored>(run: R, steps: number): R {
  const { endedAt, discarded, goesOn } = run as Partial<Run>;
  const isOpen = !endedAt && !discarded && (!goesOn || steps > goesOn.steps);
  const { open: _, ...rest } = run as R & { open?: 1 };
  return (isOpen ? { ...rest, open: 1 } : rest) as R;
}
