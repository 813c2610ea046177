import { keep, runWithEvents } from '../../records/shelf';
import { deviceHere } from '../../records/store/device';
import { takenOver, type Walked } from '../../records/union/takeOver';

/** A paused run as this device goes on with it: its own as it is, another device's as a run of its own with the same steps. */
export async function goneOnWith(there: Walked): Promise<Walked> {
  const taken = takenOver(there, await deviceHere());
  if (!taken) return there;
  const known = await runWithEvents(taken.now.run.id); // taken over before, and stopped before it was shown
  if (known) return known;
  await keep([taken.now.run, taken.left], taken.now.events);
  return taken.now;
}
