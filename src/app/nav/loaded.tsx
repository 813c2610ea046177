import { signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { idle } from '../../records/store/idle';
import { loadTask, shelfTasks, tasks } from '../../tasks';
import type { Task } from '../../tasks/engine/task';
import { whyGone } from '../../ui/codeGone';
import { isUpdating } from './update';

/** Why code could not be fetched, in one sentence; '' when it could. */
const stale = signal('');

/** What a run needs beside its task: apart, since the Bench shows itself without it. */
export const engine = () => import('../../tasks/engine/run');

/** A task with its code; null when there is no such task, or when its code is gone and `StaleNotice` says so. */
export async function taskOrNotice(id: string | undefined): Promise<Task | null> {
  try {
    const [task] = await Promise.all([loadTask(id), engine()]);
    return task;
  } catch {
    stale.value = whyGone();
    return null;
  }
}

const SETTLED = 6000; // ms; our choice: by then what was begun at the start is done

/** Fetches the code of all tasks while nothing else is to be done, so that none is missing later. */
export async function loadAllTasks(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, SETTLED));
  await import('../../tasks/screen/TaskScreen').catch(() => {});
  for (const { id } of [...tasks, ...shelfTasks]) {
    await idle(5000);
    if (isUpdating()) return;
    await loadTask(id).catch(() => {}); // said when it is wanted
  }
}

/** A task when its code is here: undefined until then, null when there is no such task. */
export function useTask(id: string | undefined): Task | null | undefined {
  const task = useSignal<Task | null | undefined>(undefined);
  useEffect(() => void taskOrNotice(id).then((found) => (task.value = found)), [id]);
  return task.value;
}

/** Asks to load the page again; what was done is on the disk. */
export function StaleNotice() {
  if (!stale.value) return null;
  return (
    <div class="update stale" role="alert">
      <span>{stale.value} Nothing is lost: open it again.</span>
      <button class="second" onClick={() => location.reload()}>
        Open again
      </button>
    </div>
  );
}
