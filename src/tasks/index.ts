import { benchCards, type BenchCard } from './benchCards';
import type { Task } from './engine/task';

/** A card with its task's code, which is loaded when it is first needed, and in the background after the start. */
export interface TaskCard extends BenchCard {
  readonly load: () => Promise<Task>;
}

const loads: Record<(typeof benchCards)[number]['id'], () => Promise<Task>> = {
  dilute: async () => (await import('./dilute/task')).dilute,
  calibrate: async () => (await import('./calibrate/task')).calibrate,
  layer: async () => (await import('./layer/task')).layer,
  count: async () => (await import('./count/task')).count,
  dose: async () => (await import('./dose/task')).dose,
  batch: async () => (await import('./batch/task')).batch,
  blind: async () => (await import('./blind/task')).blind,
  lookup: async () => (await import('./lookup/task')).lookup,
};

/** All tasks, in bench order. */
export const tasks: readonly TaskCard[] = benchCards.map((card) => ({ ...card, load: loads[card.id] }));

/** Tasks that begin on the Shelf, not on the Bench. */
export const shelfTasks: readonly TaskCard[] = [
  {
    id: 'bottle',
    name: 'Add a bottle',
    hint: 'What you bought',
    load: async () => (await import('./bottle/task')).bottle,
  },
  {
    id: 'supply',
    name: 'Add a supply',
    hint: 'Solvent, strips, vials',
    load: async () => (await import('./supply/task')).supply,
  },
  {
    id: 'certificate',
    name: 'Certificate of a bottle',
    hint: 'What its oil brings',
    load: async () => (await import('./certificate/task')).certificate,
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
