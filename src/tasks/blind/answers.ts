import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { askedCups, rightSample, type CupSet } from './design';
import { fields } from './fields';
import type { Method } from './methods';

/** The answer to one set, locked: the code named, or all codes in order; with the liking of each, where it was asked. */
export interface Answer {
  readonly codes: readonly number[];
  readonly liking: readonly number[];
}

/** Of a design, what answers are judged by. */
interface Laid {
  readonly sets: readonly CupSet[];
  readonly method: Method;
}

/** The locked answers, set by set, up to the first one still open, or whose card is not turned over yet. */
export function answersOf(run: RunState, { sets, method }: Laid): Answer[] {
  const answers: Answer[] = [];
  for (let i = 0; i < sets.length; i++) {
    const codes = codesIn(answer(run, fields.locked(i)));
    if (codes.length === 0 || (sets[i]!.card !== undefined && answer(run, fields.card(i)) === null)) break;
    const liking = method.id === 'hedonic' ? codes.map((_, k) => Number(answer(run, fields.like(i, k)))) : [];
    answers.push({ codes, liking });
  }
  return answers;
}

/** '417 532' as numbers. */
export function codesIn(text: string | null): number[] {
  return (text ?? '').split(' ').filter(Boolean).map(Number);
}

/** Whether the answer is complete: one code, or for an order all of them. */
export function isComplete(design: Laid, set: CupSet, codes: readonly number[]): boolean {
  const orders = design.method.id === 'ranking' || design.method.id === 'hedonic';
  return codes.length === (orders ? askedCups(design, set).length : 1);
}

/** Whether a set was answered right; null where no answer is. */
export function isRight(design: Laid, i: number, { codes }: Answer): boolean | null {
  const set = design.sets[i]!;
  const right = rightSample(design, set);
  return right === null ? null : askedCups(design, set).find(({ code }) => code === codes[0])?.sample === right;
}

/** Place in the samples' names of every code of an answer. */
export function samplesOf(design: Laid, i: number, { codes }: Answer): number[] {
  return codes.map((code) => design.sets[i]!.cups.find((cup) => cup.code === code)!.sample);
}
