import { attempt, Refused } from '../../workshop/attempt';
import { dropsText, ofTarget } from '../../workshop/dropWords';
import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { drinkG, targetLines } from './planInstance';
import { asked, dropperOf, fields, nameOf, pickedStocks, wayOf } from './fields';
import { exactlyAs, isExact } from './exactly';
import { stopOf, stopped, whySmellOnly } from './fit';
import { happenedIn } from './happened';
import { keepTrial } from './keep';
import { Picking } from './Picking';
import { planningSteps } from './planning';
import { countedIds, counterOf, roundsOf, type Round } from './rounds';
import { slipStep } from './slip';
import { dropOfStock, leftDrops, stockOf, stocksOnHand, type Stock } from './stock';
import { VialToTake } from './VialToTake';
import { activeText, amountText, trialOf } from './trial';
import { trialResults } from './trialResults';

const FLAMES = 'Keep flames away. Open a window.';

function handSteps(run: RunState): Step[] {
  const picked = pickedStocks(run);
  return [
    {
      key: 'pick',
      say: 'Which vials go in?',
      more: ['They are counted in the order in which you pick them.'],
      draw: (walk) => (
        <Picking
          walk={walk}
          items={stocksOnHand().map(({ tag, ...stock }) => ({ ...stock, code: tag }))}
          label="Vials and bottles"
        />
      ),
      told: [['Picked', picked.map(({ tag }) => tag).join(', ') || '–']],
      ...(picked.length === 0 ? { problem: 'Pick at least one vial.' } : {}),
    },
    { key: 'drops', say: 'How many drops of each?', ask: picked.map(fields.planned) },
  ];
}

/** One turn at the pad: the vial to take, and its drops. What is said of the vial is worked out only while it is there. */
function countStep(run: RunState, { id, drops: target, key }: Round): Step {
  const stock = stockOf(id);
  return {
    key,
    say: `Take ‹${stock?.tag ?? '?'}›. Count ‹${dropsText(target)}›.`,
    ...(run.at === key ? { more: warningsOf(run, stock, target) } : {}),
    ...(stock ? { draw: () => <VialToTake stock={stock} /> } : {}),
    pad: {
      counter: counterOf(id),
      target,
      ...(stock ? { expects: { id, tag: stock.tag } } : {}),
      live: (drops) => {
        const mass = stock && drops > 0 ? ` · ${activeText(stock, drops, dropOfStock(stock, dropperOf(run)))}` : '';
        return `${ofTarget(drops, target)}${mass}`;
      },
    },
  };
}

/** Counting and all after it. What goes into a drink is asked again at each step whether it may. */
function countSteps(run: RunState, rounds: readonly Round[]): Step[] {
  const all = rounds.flatMap((round) => [countStep(run, round), ...(round.slipped ? [slipStep(run, round)] : [])]);
  const stop = stopOf(run, rounds);
  const steps = [...all, ...lastSteps(run, rounds)];
  return stop ? steps.map((step) => stopped(run, stop, step)) : steps;
}

function warningsOf(run: RunState, stock: Stock | undefined, target: number): string[] {
  if (!stock) return ['This vial is no longer on the Shelf.'];
  const left = leftDrops(stock, dropperOf(run));
  if (left === null || left >= target) return [];
  return [left === 1 ? 'By the book only 1 drop is left in it.' : `By the book only ${left} drops are left in it.`];
}

/** What is in it, and its name; worked out only when counting is over. */
function lastSteps(run: RunState, rounds: readonly Round[]): Step[] {
  const ids = [...rounds.map(({ id }) => id), ...countedIds(run)];
  const trial = ['truth', 'name', ''].includes(run.at) ? attempt(() => trialOf(run, ids)) : null;
  const truth: Step = { key: 'truth', say: 'This is what is in it.' };
  const name: Step = { key: 'name', say: 'Name it, and write the code on the vial.', done: 'Keep' };
  if (!trial) return [truth, name];
  if (trial instanceof Refused)
    return [
      { ...truth, say: 'Nothing was counted.', more: ['Go back and count at least one drop.'], problem: trial.problem },
    ];
  const targets = wayOf(run) === 'hand' ? [] : targetLines(run);
  return [
    {
      ...truth,
      more: ['Cap it and turn it over ten times.', amountText(trial)],
      cautions: whySmellOnly(run),
      results: trialResults(trial, { targets, drinkG: drinkG(run) }),
    },
    {
      ...name,
      ask: [fields.name, fields.code(), fields.size(trial.volumeMl)],
    },
  ];
}

function steps(run: RunState): Step[] {
  const first: Step = { key: 'formula', say: 'What do you count?', ask: [fields.way(run)] };
  if (stocksOnHand().length === 0)
    return [
      {
        ...first,
        ask: [],
        say: 'There is no vial on the Shelf yet.',
        more: ['Thin a material first, then count drops of it here.'],
        problem: 'There is nothing to count drops of yet.',
        offers: [{ words: 'Dilute', start: { task: 'dilute', typed: {} } }],
      },
    ];
  const rounds = roundsOf(run, asked(run));
  if (isExact(run)) return countSteps(run, rounds);
  const dropper: Step = { key: 'dropper', say: 'Which dropper?', ask: [fields.dropper()], cautions: [FLAMES] };
  return [
    first,
    ...(wayOf(run) === 'hand' ? [...handSteps(run), dropper] : planningSteps(run, dropper)),
    ...countSteps(run, rounds),
  ];
}

/** What a repeat begins with. */
const repeats = [
  'formula',
  'pick.',
  'purpose',
  'ppm',
  'drinkMl',
  'base',
  'most',
  'mix',
  'dropper',
  'part.',
  'name',
  'size',
];

const NAMED = 3; // vials; our choice: so many fit into a title

/** What is picked, where the run has no name. */
function pickedTags(run: RunState): string {
  const tags = pickedStocks(run).map(({ tag }) => tag);
  return `${tags.slice(0, NAMED).join(' + ')}${tags.length > NAMED ? ' …' : ''}`;
}

/** Count whole drops of several vials into one trial, and know what is in it. */
export const count: Task = {
  id: 'count',
  recorded: true,
  title: (run) => ['Count drops', nameOf(run) || pickedTags(run)].filter(Boolean).join(' · '),
  steps,
  keep: (run) => keepTrial(run, roundsOf(run, asked(run)), asked(run)),
  done: happenedIn,
  repeats,
  repeat: exactlyAs,
};
