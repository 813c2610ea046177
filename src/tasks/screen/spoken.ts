import { resultText } from '../../ui/controls/result';
import type { Sound } from '../../ui/device/tick';
import type { Step } from '../engine/task';

const NEAR = 3; // our choice: from that many drops before the target on, what is left is said
const MOST = 8; // options; our choice: no one keeps more in mind by ear

/** A counter before and after something happened to it, and the drops asked for. */
export interface Counted {
  readonly before: number;
  readonly now: number;
  readonly target: number | null;
}

/** What is said when a drop was counted or taken back. */
export function countWords({ before, now, target }: Counted): string {
  return `${now < before ? `Drop ${before} taken back. ` : ''}${now}${standing(now, target)}`;
}

function standing(now: number, target: number | null): string {
  if (target === null || target - now > NEAR) return '.';
  if (now < target) return `, ${leftWords(now, target)}`;
  return now === target ? '. Stop, that is all.' : `. ${now - target === 1 ? 'One' : now - target} too many.`;
}

/** "3 left." */
export function leftWords(now: number, target: number): string {
  return `${target - now} left.`;
}

/** Which sound goes with it. */
export function soundOf({ before, now, target }: Counted): Sound {
  if (now < before) return 'undo';
  if (target === null || now < target) return 'drop';
  return now === target ? 'reached' : 'over';
}

/** What is said when a step comes on the screen; `count` is what was counted there before. */
export function stepWords(step: Step, count: number): string {
  const { say, more = [], cautions = [], counting } = step;
  const wanted = counting?.target ? [`${counting.target} to count.`] : []; // a pad's step says so itself
  const counted = count > 0 ? [`${count} counted so far.`] : [];
  return [say, ...wanted, ...more, ...resultWords(step), ...optionWords(step), ...cautions, ...counted]
    .map(aloud)
    .join(' ');
}

/** The number that stands largest, with its ±. */
function resultWords({ results = [] }: Step): string[] {
  return results.slice(0, 1).map((one) => `${one.label}: ${resultText(one)}.`);
}

/** What can be chosen, by number; which question it answers is said where there are several. */
function optionWords({ ask = [], drawn = [] }: Step): string[] {
  const choices = ask.filter(({ name, input }) => input === 'choice' && !drawn.includes(name));
  return choices.flatMap(({ title, options = [] }) => [
    ...(choices.length > 1 ? [`${title}:`] : []),
    ...(options.length > MOST
      ? [`${options.length} to choose from.`]
      : options.map(({ label: words }, i) => `${i + 1}: ${words}.`)),
  ]);
}

/** How signs are said that a voice would spell or swallow. */
const signs: readonly (readonly [RegExp, string])[] = [
  [/[‹›]/g, ''],
  [/\(([^()]* ± [^()]*)\)/g, '$1'],
  [/ ± ?/g, ' plus or minus '],
  [/ · /g, ', '],
  [/\bmg\/kg\b/g, 'milligrams per kilogram'],
  [/\bmg\/L\b/g, 'milligrams per litre'],
  [/(\d) mg\b/g, '$1 milligrams'],
  [/(\d) g\b/g, '$1 grams'],
  [/(\d) mL\b/g, '$1 millilitres'],
  [/ °C/g, ' degrees'],
  [/\bw\/w\b/g, 'by weight'],
  [/\bv\/v\b/g, 'by volume'],
  [/\bw\/v\b/g, 'weight by volume'],
];

function aloud(text: string): string {
  return signs.reduce((words, [sign, said]) => words.replace(sign, said), text);
}
