import { newId } from '../../records/shelf';
import type { Start, Walk } from '../../tasks/engine/task';
import { engine, taskOrNotice } from './loaded';
import { go } from './route';

/** Walks that were begun and have no event yet; nothing of them is on the disk. */
export const begun = new Map<string, Walk>();

/** Begins a task and shows its first step. */
export async function startTask(start: Start, how: 'push' | 'replace' = 'push'): Promise<void> {
  const task = await taskOrNotice(start.task);
  if (!task) return go([], 'replace');
  const { beginWalk } = await engine();
  const walk = beginWalk(task, newId(), start);
  begun.set(walk.id, walk);
  go(['run', walk.id, walk.step.value.key], how);
}
