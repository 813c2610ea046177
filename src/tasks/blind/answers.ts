import type { RunState } from '../engine/fold';
import { askedCups, rightSample, type CupSet, type Design } from './design';

/** The answer to one set, locked: the code named, or all codes in order; with the liking of each, where it was asked. */
export interface Answer {
  readonly codes: readonly number[];
  readonly liking: readonly number[];
}

type Laid = Pick<Design, 'sets' | 'method'>;

/** The locked answers, set by set, up to the first one still open, or whose card is not turned over yet. */
export function answersOf(run: RunState, { sets, method }: Laid): Answer[] {
  const answers: Answer[] = [];
  for (let i = 0; i < sets.length; i++) {
    const codes = codesIn(run.typed[`answer.${i}`]);
    if (codes.length === 0 || (sets[i]!.card !== undefined && !run.typed[`card.${i}`])) break;
    const liking = method.id === 'hedonic' ? codes.map((_, k) => Number(run.typed[`like.${i}.${k}`])) : [];
    answers.push({ codes, liking });
  }
  return answers;
}

/** '417 532' as numbers. */
export function codesIn(text: string | undefined): number[] {
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
