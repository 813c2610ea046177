import { find } from '../../records/shelf';
import { freshRun, type RunState } from '../engine/fold';
import type { Task } from '../engine/task';
import { settled } from './asked';
import { cardStep } from './card';
import { countSteps } from './counting';
import { exactlyAs } from './exactly';
import { fields, remembers, repeats, type CountStep } from './fields';
import { answer } from '../engine/answers';
import { happenedIn } from './happened';
import { keepTrial } from './keep';
import { calledSo } from './names';
import { isExact, wanted } from './picked';
import { roundsOf } from './rounds';
import { stocksOnHand } from './stock';

function steps(run: RunState): CountStep[] {
  if (stocksOnHand().length === 0) return [nothingYet];
  const now = settled(run);
  const hands = countSteps(now, roundsOf(now, wanted(now)));
  return isExact(now) ? hands : [cardStep(run), ...hands];
}

const nothingYet: CountStep = {
  key: 'card',
  say: 'There is no vial on the Shelf yet.',
  more: ['Dilute a material first, then count drops of it here.'],
  problem: 'There is nothing to count drops of yet.',
  offers: [{ words: 'Dilute', start: { task: 'dilute', typed: {} } }],
};

/** Count whole drops of several vials into one trial, and know what is in it. */
export const count: Task<CountStep['key']> = {
  id: 'count',
  recorded: true,
  title: (run) => ['Count drops', answer(run, fields.name) ?? calledSo(run)].filter(Boolean).join(' · '),
  opening() {
    const formula = stocksOnHand().length > 0 ? find('formula', answer(settled(freshRun), fields.way)) : undefined;
    return formula && `${formula.name}, version ${formula.version}`;
  },
  steps,
  keep(run) {
    const now = settled(run);
    return keepTrial(now, roundsOf(now, wanted(now)), wanted(now));
  },
  done: (run, events) => happenedIn(settled(run), events),
  remembers,
  repeats,
  repeat: exactlyAs,
};
