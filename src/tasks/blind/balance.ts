import { ordersInRound, rankingRound } from '../../core/sensory/servingOrder';
import { twoSampleTest, type Shuffle } from './design';
import type { Method } from './methods';

/** Sets that make up a whole round of a method: every order once. */
function roundOf(method: Method, samples: number): number {
  const many = method.id === 'ranking' || method.id === 'hedonic';
  return many ? rankingRound(samples) : ordersInRound(twoSampleTest(method));
}

/** What that many sets balance, before they are laid out; or how many would. `samples` are counted. */
export function balanceWords(method: Method, tries: number, samples: number, shuffle: Shuffle): string {
  if (method.id === 'threshold')
    return shuffle === 'none'
      ? 'Balanced: the cup that holds it comes first, second and third equally often, over every three steps.'
      : 'When you test alone, a series cannot be balanced: it runs in order, so you shuffle the three cups of each step by hand and their positions are random.';
  if (shuffle === 'cups')
    return `${tries} sets are too few to shuffle as a whole: your hand shuffles the cups of each set, and the order is left to chance. From 4 sets on it is balanced.`;
  const round = roundOf(method, samples);
  const whole = Math.ceil(tries / round) * round;
  if (tries === whole) return `Balanced: each of the ${round} orders comes ${timesText(tries / round)}.`;
  return `Not quite balanced: ${tries} sets are no whole rounds of ${round} orders; ${whole} would be.`;
}

function timesText(n: number): string {
  return n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`;
}

/** How to hide what is what when no one else is there, and what is then balanced and what is chance. */
export function aloneWords(method: Method, shuffle: Shuffle): string[] {
  if (shuffle === 'cards')
    return [
      'Put each set on its own card, cups in the order listed from the left, an arrow on top at the left end. The code goes underneath.',
      'All filled: shuffle the cards, never the cups, until you know none of them.',
      'Balanced: the orders on the cards. Random: which card you take when. Codes are shown only after each answer, and what was in the cups at the end.',
    ];
  const ladder = method.id === 'threshold';
  return [
    'Stick each code under its cup, and fill. Put each set by itself' + (ladder ? ', weakest first.' : '.'),
    'Before you taste a set, shuffle its cups without looking under them.',
    `Fixed: what is in each set. Chance, not balanced: the ${ladder ? 'place of the cup that holds it' : 'order in which you taste'}, since your hand makes it.`,
  ];
}
