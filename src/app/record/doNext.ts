import { go } from '../nav/route';
import { startTask } from '../nav/startTask';
import type { Next } from './nexts';

/** Begins the task of a next step, or opens its page. */
export function doNext({ start, to = [] }: Next): void {
  if (start) void startTask(start);
  else go(to);
}
