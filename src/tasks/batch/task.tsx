import { isOver, worstState } from '../../core/limits/finding';
import type { Ceiling } from '../../core/limits/highestDose';
import { isOf } from '../../records/kind/kinds';
import { formatPlain, formatTyped, withLocalSign } from '../../ui/format';
import type { RunState } from '../engine/fold';
import { stateWords } from '../../workshop/drinkable/limitRules';
import { asksWhy } from '../shared/goingOn';
import { LimitsPanel } from '../shared/LimitsPanel';
import type { Offer, Step, Task } from '../engine/task';
import { carrierRefusal } from './carrierBottle';
import { fields } from './fields';
import { planOf } from './plan';
import { happenedIn, keepBatch, usualName } from './keep';
import { leftFields, leftWords } from './leftOver';
import { judgeDrink, madeOf, makingOf, plannedDrink, type Making } from './progress';
import { outcome } from '../../workshop/attempt';
import { concentrateSteps } from './concentrateSteps';
import { drinkSteps, gasStep, lotsStep, syrupSteps, whatStep, spoiltStep, upTo } from './plainSteps';
import { leastOf } from './pour';
import { abvWords, drinkResults } from './results';
import { scaleStep, weighSteps } from './weighSteps';
import { materialsOf, recipeOrNull, spoiltBy } from './drinkAsked';
import { numberedBatchCode } from '../../workshop/thing/vialCode';

/** What the rules say of the drink as planned, and the highest dose that passes. Who goes on over a limit says why: Minim warns. */
function limitsStep(run: RunState): Step {
  const { value: plan, problem } = outcome(() => planOf(run));
  const isShown = run.at === 'limits'; // judging takes a while: not for a step that no one sees
  const { value: judgement } = outcome(() => (isShown && plan ? judgeDrink(run, plan, plannedDrink(plan)) : null));
  const worst = judgement && worstState(judgement.findings);
  return {
    key: 'limits',
    say: worst ? `The rules say: ‹${stateWords[worst].words}›.` : 'What the rules say.',
    more: plan ? [`At ‹${formatPlain(plan.drink.mgPerKg, 3)} mg/kg› of the whole formula.`] : [],
    ...asksWhy(run, judgement),
    draw: (walk) => <LimitsPanel walk={walk} judgement={judgement} />,
    offers: plan && judgement?.ceilings[0] ? lowerOffer(judgement.ceilings[0], plan.drink.mgPerKg) : [],
    done: 'Seen',
    ...(problem ? { problem } : {}),
  };
}

/** Our choice: twice what a weighing may be off by, so that the drink as weighed still passes. */
const IN_HAND = 0.02;

/** The reverse answer as an offer, where the dose is over: a little under it, and rounded down. */
function lowerOffer({ times, binding, finding }: Ceiling, mgPerKg: number): Offer[] {
  if (!isOver(finding)) return [];
  const most = times * mgPerKg * (1 - IN_HAND);
  const digits = 10 ** (Math.floor(Math.log10(most)) - 2); // three digits
  const dose = formatTyped(Math.floor(most / digits) * digits, 3);
  return most > 0 ? [{ words: `Take ${withLocalSign(dose)} mg/kg: ${binding} then passes`, type: { dose } }] : [];
}

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

/** What is shown before a batch that is made exactly as one before: what may have changed since. */
const ASKED_AGAIN = ['lots', 'spirit', 'carrier-food', 'limits'];

function steps(run: RunState): readonly Step[] {
  const spoilt = spoiltBy(run);
  if (spoilt) return [spoiltStep(run, spoilt)];
  const what = whatStep(run);
  const recipe = recipeOrNull(run);
  if (!recipe) return [what];
  const lots = lotsStep(run);
  if (!materialsOf(run, recipe)) return upTo(run, [what, lots], lots);
  const concentrate = concentrateSteps(run);
  const planning = [what, lots, ...drinkSteps(run), ...concentrate, ...syrupSteps(run), gasStep(run)];
  if (carrierRefusal(run)) return upTo(run, planning, concentrate.at(-1)!);
  const { value: making, problem } = outcome(() => makingOf(run));
  const scale = scaleStep(run, making, leastOf(run));
  const all = [...planning, limitsStep(run), { ...scale, ...(problem ? { problem } : {}) }];
  if (!making) return all;
  const before = run.typed['exactly'] ? all.filter(({ key }) => ASKED_AGAIN.includes(key)) : all;
  return [...before, ...weighSteps(run, making), ...endSteps(run, making)];
}

/** What a repeat begins with. Whether spirit and carrier are fit for drinks is asked each time: it may be another bottle. */
const repeats = [
  'what',
  'base',
  'litres',
  'dose',
  'brix',
  'abv',
  'spirit',
  'throw.',
  'acid',
  'acidity',
  'benzoate',
  'sorbate',
  'dosage',
  'spare',
  'make',
  'carrier',
  'oil',
  'agent',
  'gum',
  'trait.',
  'droplet',
  'gas',
  'sugar.',
  'gas.',
  'fine',
  'scatter',
  'tolerance',
  'coarse',
  'jurisdiction',
  'portion',
  'body',
];

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
