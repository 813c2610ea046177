import type { Run } from '../../records/kind/run';
import { deviceName } from '../../records/devices';
import { runWithEvents, whenLoaded } from '../../records/shelf';
import { deviceHere } from '../../records/store/device';
import { fold } from '../../tasks/engine/fold';
import { placeOf } from '../../tasks/engine/place';
import { taskOrNotice } from '../nav/loaded';

/** Where a paused run is: its title, the place in words, and when something last happened in it. */
export interface Place {
  readonly title: string;
  readonly words: string;
  /** UTC, ISO 8601. */
  readonly at: string;
}

/** The name of the device that a step was made on; null where it was this one. */
async function otherDevice(who: string | undefined): Promise<string | null> {
  return who === undefined || who === (await deviceHere()) ? null : deviceName(who);
}

/** Where a paused run is, from its events. */
export async function placeOfRun(run: Run): Promise<Place> {
  await whenLoaded; // steps read the shelf
  const events = (await runWithEvents(run.id))?.events ?? [];
  const at = events.at(-1)?.at ?? run.made;
  const task = await taskOrNotice(run.task);
  if (!task) return { title: run.title, words: 'This version of Minim does not know its task.', at };
  const state = fold(events);
  const steps = task.steps(state);
  const index = placeOf(steps, state);
  const pad = steps[index]!.pad;
  const count = pad && (state.drops[pad.counter] ?? 0);
  const over = pad && pad.target !== null && count! > pad.target ? count! - pad.target : 0;
  const words = pad
    ? `drop ${count}${over > 0 ? `, ${over} too many` : pad.target === null ? '' : ` of ${pad.target}`}`
    : `step ${index + 1} of ${steps.length}`;
  const device = await otherDevice(events.at(-1)?.who);
  const place = device === null ? `Paused at ${words}` : `Paused on ${device} at ${words}`;
  return { title: task.title(state), words: place, at };
}
