import { newId } from '../../records/shelf';
import type { Offer, Walk } from '../../tasks/engine/task';
import { engine, taskOrNotice } from './loaded';
import { go, leaveThingFor } from './route';

type Start = NonNullable<Offer['start']>;

/** Walks that were begun and have no event yet; nothing of them is on the disk. */
export const begun = new Map<string, Walk>();

/** Begins a task and shows its first step; `instead` of all pages of the run that is shown, which has ended. */
export async function startTask(
  { task: id, typed }: Start,
  how: 'push' | 'replace' | 'instead' = 'push',
): Promise<void> {
  const task = await taskOrNotice(id);
  if (!task) return go([], 'replace');
  const { beginWalk } = await engine();
  const walk = beginWalk(task, newId(), typed);
  begun.set(walk.id, walk);
  const parts = ['run', walk.id, walk.step.value.key];
  if (how === 'instead') leaveThingFor(parts);
  else go(parts, how);
}
