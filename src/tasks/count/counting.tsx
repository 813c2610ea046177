import { attempt, Refused } from '../../workshop/attempt';
import { dropsText, ofTarget } from '../../workshop/dropWords';
import { answer, clears } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer } from '../engine/task';
import { asked } from './asked';
import { ALL, dropperOf, fields, wayOf, type CountStep } from './fields';
import { isForDrinks, stopOf, stopped, whySmellOnly } from './fit';
import { drinkG, targetLines } from './planInstance';
import { isExact } from './picked';
import { countedDrops, countedIds, counterOf, type Round } from './rounds';
import { slipStep } from './slip';
import { dropOfStock, leftDrops, stockOf, type Stock } from './stock';
import { activeText, trialOf } from './trial';
import { trialResults } from './trialResults';
import { VialToTake } from './VialToTake';

/** Counting and all after it. What goes into a drink is asked again at each step whether it may. */
export function countSteps(run: RunState, rounds: readonly Round[]): CountStep[] {
  const stop = stopOf(run, rounds);
  const all = rounds.flatMap((round, i): CountStep[] => [
    countStep(run, round, i === rounds.length - 1),
    ...weighSteps(run, round, i === rounds.length - 1),
    ...(round.slipped ? [slipStep(run, round)] : []),
  ]);
  const steps = [...all, ...glassStep(run, rounds)];
  return stop ? steps.map((step) => stopped(run, stop, step)) : steps;
}

/** One turn at the pad: the vial to take, and its drops. What is said of the vial is worked out only while it is there. */
function countStep(run: RunState, round: Round, last: boolean): CountStep {
  const { id, drops: target, key, slipped } = round;
  const stock = stockOf(id);
  const isHere = run.at === key || run.at === '';
  const ends = last && !slipped && !isOneDrink(run);
  return {
    key,
    say: `Take ‹${stock?.tag ?? '?'}›. Count ‹${dropsText(target)}›.`,
    ...(isHere
      ? { more: [...warningsOf(run, stock, target), ...(ends ? [CAP] : [])], cautions: causes(run, ends) }
      : {}),
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
    ...(isHere ? { offers: weighOffers(run, round, last) } : {}),
    ...(ends && countedIds(run).length === 0 ? { problem: 'Tap once for each drop; none is counted yet.' } : {}),
  };
}

const CAP = 'The last one: then cap it and turn it over ten times.';

function causes(run: RunState, ends: boolean): string[] {
  return ends ? whySmellOnly(run) : [];
}

function warningsOf(run: RunState, stock: Stock | undefined, target: number): string[] {
  if (!stock) return ['This vial is no longer on the Shelf.'];
  const left = leftDrops(stock, dropperOf(run));
  if (left === null || left >= target) return [];
  return [
    left === 1
      ? 'According to your records only 1 drop is left in it.'
      : `According to your records only ${left} drops are left in it.`,
  ];
}

/** What was counted can be put on a scale: the drops of this vial at its first turn, and at the last turn all of it. */
function weighOffers(run: RunState, { id, key }: Round, last: boolean): Offer<`weigh.${string}`>[] {
  const offer = (words: string, of: string, drops: number): Offer<`weigh.${string}`> => ({
    words,
    place: of === ALL ? 'more' : 'row', // what comes and goes would move the pad
    type: { [fields.weighs(of).name]: String(drops) },
    go: `weigh.${of}`,
  });
  const [own, all] = [countedDrops(run, id), countedInAll(run)];
  return [
    ...(isFirstTurn({ id, key }) ? [offer('Weigh it', id, own)] : []),
    ...(last && own > 0 && all > own ? [offer('Weigh all of it', ALL, all)] : []),
  ];
}

function isFirstTurn({ id, key }: Pick<Round, 'id' | 'key'>): boolean {
  return key === `count.${id}`;
}

function countedInAll(run: RunState): number {
  return countedIds(run).reduce((sum, id) => sum + countedDrops(run, id), 0);
}

/** One figure after the drops: it is used for what is in the trial, and kept as a calibration of this dropper and liquid. */
function weighSteps(run: RunState, { id, key }: Round, last: boolean): CountStep[] {
  const own = isFirstTurn({ id, key }) ? [{ of: id, words: stockOf(id)?.tag ?? 'it', now: countedDrops(run, id) }] : [];
  const all = last ? [{ of: ALL, words: 'the whole trial', now: countedInAll(run) }] : [];
  return [...own, ...all].flatMap(({ of, words, now }): CountStep[] => {
    if (answer(run, fields.weighs(of)) !== now || now === 0) return []; // not put on the scale, or counted on since
    return [
      {
        key: `weigh.${of}`,
        say: `What do the ‹${dropsText(now)}› of ${words} weigh?`,
        more: ['What the scale shows more than before the first of these drops.'],
        ask: [fields.grams(of), asked(run).readability],
        offers: [{ words: 'They were not weighed', type: clears(fields.weighs(of)), go: key }],
      },
    ];
  });
}

/** Whether all of it goes into one glass, which is then filled up. */
function isOneDrink(run: RunState): boolean {
  return !isExact(run) && isForDrinks(run) && drinkG(run) !== null;
}

/** The glass that all of it goes into is filled up; what that makes of it. */
function glassStep(run: RunState, rounds: readonly Round[]): CountStep[] {
  if (!isOneDrink(run) || rounds.length === 0) return [];
  const step: CountStep = {
    key: 'truth',
    say: `Fill the glass up to ‹${answer(run, fields.drinkMl)} mL›.`,
    done: 'Save',
  };
  if (run.at !== step.key) return [step];
  const trial = attempt(() => trialOf(run, [...rounds.map(({ id }) => id), ...countedIds(run)]));
  if (trial instanceof Refused) return [{ ...step, say: 'Nothing was counted.', problem: trial.problem }];
  const targets = wayOf(run) === 'hand' ? [] : targetLines(run);
  return [
    {
      ...step,
      more: ['All the drops are in it.'],
      cautions: whySmellOnly(run),
      results: trialResults(trial, { targets, drinkG: drinkG(run) }),
    },
  ];
}
