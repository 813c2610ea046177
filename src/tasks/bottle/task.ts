import { isOf } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { asked, remembers, solventsIn } from '../shared/newBottleAsked';
import { bottleFields } from '../shared/bottleFields';
import { newBottle, newBottleSteps, type NewBottleStep } from '../shared/newBottle';
import type { Offer, Step, Task } from '../engine/task';
import { Refusal } from '../../core/text/refusal';

/** What a repeat begins with. Its grade is what the label of this bottle says, whatever stood on the last. */
const repeats = [bottleFields.supplier, bottleFields.box, bottleFields.row].map(({ name }) => name);

/** The card ends the run; or the run, and the next bottle of the same delivery follows. */
function steps(run: RunState): Step<NewBottleStep>[] {
  return newBottleSteps(run).map((step) => (step.card ? { ...step, done: 'Save', offers: [otherWay(run)] } : step));
}

/** The next bottle; of what is a solvent, the list of supplies in place of this run, with it tapped where it can be only one. */
function otherWay(run: RunState): Offer {
  const [one, ...others] = solventsIn(run);
  if (!one) return { words: 'Save and next', leave: true, start: nextOf(run) };
  const typed: Readonly<Record<string, string>> = others.length === 0 ? { [`came.${one.id}`]: 'yes' } : {};
  return { words: 'Add it as a solvent', start: { task: 'supply', typed }, instead: true };
}

/** The next bottle, from the same supplier on the same day. */
function nextOf(run: RunState): NonNullable<Offer['start']> {
  const { supplier, received } = asked(run);
  const typed = {
    ...types(bottleFields.following, 'yes'),
    ...types(supplier, answer(run, supplier) ?? ''),
    ...types(received, answer(run, received) ?? ''),
  };
  return { task: 'bottle', typed };
}

/** A bottle as bought, onto the Shelf. */
export const bottle: Task<NewBottleStep> = {
  id: 'bottle',
  recorded: true,
  title: (run) => ['Add a bottle', answer(run, bottleFields.name)].filter(Boolean).join(' · '),
  steps,
  keep(run) {
    const made = newBottle(run);
    if (!made) throw new Refusal('Something is still missing: go back through the steps.');
    return made.fresh ? [made.bottle, made.material] : [made.bottle];
  },
  remembers,
  repeats,
  repeat({ kept }) {
    const bottle = kept.find((record) => isOf('bottle', record));
    const material = find('material', bottle && isOf('bottle', bottle) ? bottle.material : undefined);
    return material ? { ...types(bottleFields.name, material.name), ...types(bottleFields.material, material.id) } : {};
  },
};
