import { worstState } from '../../core/limits/finding';
import { isOf } from '../../records/kind/kinds';
import { outcome } from '../../workshop/attempt';
import { stateWords } from '../../workshop/drinkable/limitRules';
import { numberedBatchCode } from '../../workshop/thing/vialCode';
import type { RunState } from '../engine/fold';
import { askedIn } from '../engine/lastTime';
import type { Step, Task } from '../engine/task';
import { asksWhy } from '../shared/goingOn';
import { LimitsPanel } from '../shared/LimitsPanel';
import { spoiltBy } from './plan/drinkAsked';
import { fields } from './plan/fields';
import { happenedIn, keepBatch, PLANNED, usualName } from './keep';
import { leftFields, leftWords } from './leftOver';
import { judgeDrink, madeOf, makingOf, type Making } from './progress';
import { recipeOrNull } from './plan/recipe';
import { recipeStep, refusalOf } from './recipeStep';
import { abvWords, drinkResults } from './results';
import { firstMovement, weighSteps } from './weighSteps';

function endSteps(run: RunState, making: Making): Step[] {
  const [name, left] = [fields.name(usualName(run)), leftFields(run, making)];
  const { value: made } = outcome(() => madeOf(making));
  const isShown = run.at === 'checked';
  const { value: judgement } = outcome(() => (isShown && made ? judgeDrink(run, making.plan, made) : null));
  const worst = judgement && worstState(judgement.findings);
  return [
    {
      key: 'result',
      say: 'This is the drink.',
      more: made ? abvWords(making, made) : [],
      results: made ? drinkResults(making, made) : [],
      ...(made ? {} : { problem: 'Something is not weighed yet: go back and fill in what is missing.' }),
      done: 'To the limits',
    },
    {
      key: 'checked',
      say: worst ? `As weighed, the rules say: ‹${stateWords[worst].words}›.` : 'What the rules say.',
      ...asksWhy(run, judgement),
      draw: (walk) => <LimitsPanel walk={walk} judgement={judgement} />,
      done: 'Seen',
    },
    {
      key: 'name',
      say: 'What is it called?',
      more: [`Write ‹${numberedBatchCode()}›, the name and today’s date on every bottle of it.`, ...leftWords(making)],
      ask: [name, fields.notes, ...left],
      done: 'Keep',
    },
  ];
}

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
    say: '‹Do not go on with it›: put what is in the vessel away.',
    more: [why, 'It was fit for drinks when it was weighed, and is not now.'],
    problem: why,
    offers: [{ words: 'Begin again with other bottles', start: { task: 'batch', typed: askedIn(run, repeats) } }],
  };
}

/** What a repeat begins with. Whether spirit and carrier are fit for drinks is asked each time: it may be another bottle. */
const repeats = ['what', ...PLANNED];

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
