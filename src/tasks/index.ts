import { batch, blind, calibrate, count, dilute, dose, layer, lookup } from '../ui/drawn/firstIcons';
import type { Task } from './engine/task';

/** What the Bench says of a task, with its code, which is loaded when it is first needed, and in the background after the start. */
export interface TaskCard {
  readonly id: string;
  readonly name: string;
  /** A few words under the name. */
  readonly hint: string;
  readonly load: () => Promise<Task>;
}

/** A task of the Bench has an icon too: a path of ui/drawn. */
interface BenchCard extends TaskCard {
  readonly icon: string;
}

/**
 * The tasks of the Bench, in order. A new task is an entry here. Cards stand in the page itself too, so that it is there before any
 * script runs: the build runs this file, so it imports nothing but types, icons and code to be loaded later.
 */
export const tasks: readonly BenchCard[] = [
  {
    id: 'dilute',
    icon: dilute,
    name: 'Dilute',
    hint: 'Neat material into a vial',
    load: async () => (await import('./dilute/task')).dilute,
  },
  {
    id: 'calibrate',
    icon: calibrate,
    name: 'Calibrate drops',
    hint: 'Once for each dropper',
    load: async () => (await import('./calibrate/task')).calibrate,
  },
  {
    id: 'layer',
    icon: layer,
    name: 'Layer strips',
    hint: 'Smell them together',
    load: async () => (await import('./layer/task')).layer,
  },
  {
    id: 'count',
    icon: count,
    name: 'Count drops',
    hint: 'A formula, drop by drop',
    load: async () => (await import('./count/task')).count,
  },
  {
    id: 'dose',
    icon: dose,
    name: 'Dose a drink',
    hint: 'ppm in the glass, drop by drop',
    load: async () => (await import('./dose/task')).dose,
  },
  {
    id: 'batch',
    icon: batch,
    name: 'Make a batch',
    hint: 'Concentrate to drink',
    load: async () => (await import('./batch/task')).batch,
  },
  {
    id: 'blind',
    icon: blind,
    name: 'Blind test',
    hint: 'Is there a difference?',
    load: async () => (await import('./blind/task')).blind,
  },
  {
    id: 'lookup',
    icon: lookup,
    name: 'Look up ppm',
    hint: 'Quick calculation',
    load: async () => (await import('./lookup/task')).lookup,
  },
];

/** Tasks that begin on the Shelf or on the page of a thing, not on the Bench. */
export const shelfTasks: readonly TaskCard[] = [
  {
    id: 'bottle',
    name: 'Add a bottle',
    hint: 'What you bought',
    load: async () => (await import('./bottle/task')).bottle,
  },
  {
    id: 'supply',
    name: 'Add supplies',
    hint: 'Solvents, vials, strips',
    load: async () => (await import('./supply/task')).supply,
  },
  {
    id: 'scale',
    name: 'Add a scale',
    hint: 'Its step, and whether it repeats',
    load: async () => (await import('./scale/task')).scale,
  },
  {
    id: 'vessel',
    name: 'Add a vessel',
    hint: 'Its class, and what it may be off',
    load: async () => (await import('./vessel/task')).vessel,
  },
  {
    id: 'certificate',
    name: 'Certificate of a bottle',
    hint: 'What its oil brings',
    load: async () => (await import('./certificate/task')).certificate,
  },
  {
    id: 'proportions',
    name: 'Find the proportions',
    hint: 'How much of each, by nose',
    load: async () => (await import('./proportions/task')).proportions,
  },
  {
    id: 'formula',
    name: 'Write a formula',
    hint: 'Parts by mass, a new version each time',
    load: async () => (await import('./formula/task')).formula,
  },
];

/** The task of that id, loaded; null when there is none. Rejects when its code cannot be fetched. */
export async function loadTask(id: string | undefined): Promise<Task | null> {
  return (await [...tasks, ...shelfTasks].find((task) => task.id === id)?.load()) ?? null;
}
