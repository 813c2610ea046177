import { attempt, Refused } from '../../workshop/attempt';
import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { drawSheet } from './Sheet';
import { sumOf } from './sum';

function steps(run: RunState): Step[] {
  const sum = attempt(() => sumOf(run));
  const worked = sum && !(sum instanceof Refused) ? sum : null;
  return [
    {
      key: 'sum',
      say: 'Type what you have: the sum follows.',
      results: worked?.results ?? [],
      draw: drawSheet,
      done: 'Close',
    },
  ];
}

/** Strength, drops and drink to mg/kg and back, on one screen; nothing of it is kept. */
export const lookup: Task = {
  id: 'lookup',
  recorded: false,
  title: () => 'Look up ppm',
  steps,
  keep: () => [],
};
