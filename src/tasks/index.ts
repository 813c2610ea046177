import { calibrate } from './calibrate/task';
import { count } from './count/task';
import { dilute } from './dilute/task';
import { layer } from './layer/task';
import type { Task } from './task';

/** All tasks, in bench order. */
export const tasks: readonly Task[] = [dilute, calibrate, layer, count];

/** The task of that id. */
export function taskOf(id: string | undefined): Task | undefined {
  return tasks.find((task) => task.id === id);
}
