import type { Run } from '../../records/kind/run';
import { find, keep } from '../../records/shelf';
import { begun } from './startTask';

/** Takes a run off the Bench under the title that it has by now; nothing of it is lost. One in which nothing happened was never stored. */
export async function discardRun(id: string, title: string): Promise<void> {
  begun.delete(id);
  const run = find('run', id);
  if (!run) return;
  const { open: _, ...rest } = run;
  await keep([{ ...rest, title, discarded: new Date().toISOString() }]);
}

/** Puts a discarded run back on the Bench. */
export async function takeUpRun(run: Run): Promise<void> {
  const { discarded: _, ...rest } = run;
  await keep([{ ...rest, open: 1 }]);
}
