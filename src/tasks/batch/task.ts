import { isOf } from '../../records/kind/kinds';
import { outcome } from '../../workshop/attempt';
import type { RunState } from '../engine/fold';
import { askedIn } from '../engine/lastTime';
import type { Step, Task } from '../engine/task';
import { endSteps } from './ending';
import { happenedIn, keepBatch, repeats } from './keep';
import { spoiltBy } from './plan/drinkAsked';
import { recipeOrNull } from './plan/recipe';
import { makingOf } from './progress';
import { recipeStep, refusalOf } from './recipeStep';
import { firstMovement, weighSteps } from './weighSteps';

function steps(run: RunState): readonly Step[] {
  const spoilt = spoiltBy(run);
  if (spoilt) return [spoiltStep(run, spoilt)];
  const making = refusalOf(run) ? null : outcome(() => makingOf(run)).value;
  if (!making) return [recipeStep(run, null, true)];
  const walk = [...weighSteps(run, making), ...endSteps(run, making)];
  const isShown = walk.every(({ key }) => key !== run.at);
  return [recipeStep(run, firstMovement(run, making), isShown), ...walk];
}

/** A vessel with something in it that may not be drunk. A clean one begins a run of its own; this one stays as it is. */
function spoiltStep(run: RunState, why: string): Step {
  return {
    key: 'spoilt',
    say: '‹Do not use it›: put what is in the vessel away.',
    more: [why, 'It was fit for drinks when it was weighed, and is not now.'],
    problem: why,
    offers: [{ words: 'Begin again with other bottles', start: { task: 'batch', typed: askedIn(run, repeats) } }],
  };
}

/** From a formula or a liked dose to a batch of drink: syrup, concentrate, limits, and every gram weighed. */
export const batch: Task = {
  id: 'batch',
  recorded: true,
  title: (run) => ['Make a batch', recipeOrNull(run)?.name].filter(Boolean).join(' · '),
  steps,
  keep: keepBatch,
  done: happenedIn,
  repeats,
  /** The lots of today for what was weighed; the batch itself, so that its own steps say what differs. */
  repeat({ kept, todays, exactly }) {
    const made = kept.find((record) => isOf('batch', record));
    if (!made || !isOf('batch', made)) return {};
    const lots = made.weighed.flatMap(({ id, source }) => (source ? [[`lot.${id}`, todays(source)] as const] : []));
    return { ...Object.fromEntries(lots), again: made.id, ...(exactly ? { exactly: made.id } : {}) };
  },
};
