import { calibrate } from './calibrate/task';
import type { Task } from './task';

/** All tasks, in bench order. */
export const tasks: readonly Task[] = [calibrate];

/** The task of that id. */
export function taskOf(id: string | undefined): Task | undefined {
  return tasks.find((task) => task.id === id);
}
