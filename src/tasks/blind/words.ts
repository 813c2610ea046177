import { measured, type Measured } from '../../core/number/measured';
import { formatPlain } from '../../ui/format';
import type { How, Result } from '../../ui/controls/result';

/** Places of the cups of a set, from the left. */
export const PLACES = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** What came out: one plain sentence, what belongs to it, and the numbers. */
export interface Outcome {
  readonly sentence: string;
  readonly more: readonly string[];
  readonly results: readonly Result[];
  readonly p: number | null;
}

/** What went into a number, with its source. */
export type Input = How['inputs'][number];

/** '42 %' of a share. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** '3 of 100', '4 of 1000' of a chance. */
export function chanceText(p: number): string {
  if (p >= 0.01) return `${Math.round(p * 100)} of 100`;
  return p >= 0.001 ? `${Math.round(p * 1000)} of 1000` : 'less than 1 of 1000';
}

/** A number that was counted, without uncertainty. */
export function counted(value: number): Measured {
  return measured(value, 0, { id: 'counted', words: 'counted' });
}

const SMALL = 0.001; // our choice: below it a chance is said in a million

/** The chance of as much by guessing alone, with how it was counted. */
export function chanceResult(p: number, words: readonly string[], inputs: readonly Input[]): Result {
  const full = { words: 'The chance, in full', text: formatPlain(p, 8), source: 'counted, not approximated' };
  const [amount, unit] = p < SMALL ? [counted(p * 1e6), 'in a million'] : [counted(p), ''];
  return {
    label: 'Chance of this by guessing alone',
    amount,
    unit,
    digits: 2,
    how: { words, inputs: [...inputs, full] },
  };
}

/** The answers that were counted. */
export function answersInput(words: string, text: string): Input {
  return { words, text, source: 'your locked answers' };
}

/** The risk that was chosen before the first sip. */
export function riskInput(risk: number): Input {
  return { words: 'Risk of a false alarm', text: percent(risk), source: 'chosen before the first sip' };
}
