import { valueOf, words } from '../engine/fields';
import { newBottle, newBottleSteps } from '../shared/newBottle';
import type { Task } from '../engine/task';

/** A bottle as bought, onto the Shelf. */
export const bottle: Task = {
  id: 'bottle',
  recorded: true,
  title: (run) => ['Add a bottle', valueOf(run, words({ name: 'new.name', title: '' }))].filter(Boolean).join(' · '),
  steps: newBottleSteps,
  keep(run) {
    const made = newBottle(run);
    if (!made) throw new RangeError('Something is still missing: go back through the steps.');
    return made.fresh ? [made.bottle, made.material] : [made.bottle];
  },
};
