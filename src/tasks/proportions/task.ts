import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { answer } from '../engine/answers';
import { remembers, vialsOf } from './asked';
import { cardStep } from './card';
import { fields } from './fields';
import { blendSteps } from './judging';
import { keep } from './keep';
import { lookStep } from './look';
import { askedDrops, judgedCount, laidIn } from './search';
import { tagOf } from '../../workshop/thing/labelled';

function steps(run: RunState): Step[] {
  const laid = laidIn(run);
  if (!laid) return [cardStep(run)];
  const judged = judgedCount(run);
  const stopped = answer(run, fields.stop) === 'yes';
  const blends = Array.from({ length: judged + 1 }, (_, n) => [
    ...(n >= laid.blends.length || run.at === `look.${n}` ? [lookStep(run, n)] : []),
    ...(askedDrops(run, n) && !(stopped && n === judged) ? blendSteps(run, n) : []),
  ]);
  return [...(judged === 0 ? [cardStep(run)] : []), ...blends.flat()];
}

/** What it is about: its vials. */
function title(run: RunState): string {
  const tags = laidIn(run)?.vials.map(({ tag }) => tag) ?? vialsOf(run).map(tagOf);
  return tags.length === 0 ? 'Find the proportions' : `Proportions · ${tags.join(' + ')}`;
}

/** How much of each: a few vials blended by design, one liking a blend, and the surface that says which to smell next. */
export const proportions: Task = {
  id: 'proportions',
  recorded: true,
  title,
  steps,
  keep,
  remembers,
  repeats: ['vial.', 'most.', 'least.', ...remembers],
};
