import { measured } from '../../core/measured';
import type { Result } from '../../ui/result';

/** What came out: one plain sentence, what belongs to it, and the numbers. */
export interface Outcome {
  readonly sentence: string;
  readonly more: readonly string[];
  readonly results: readonly Result[];
  readonly p: number | null;
}

/** '42 %' of a share. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** '3 of 100', '4 of 1000' of a chance. */
export function chanceText(p: number): string {
  if (p >= 0.01) return `${Math.round(p * 100)} of 100`;
  return p >= 0.001 ? `${Math.round(p * 1000)} of 1000` : 'less than 1 of 1000';
}

/** The chance of as much by guessing alone, with how it was counted. */
export function chanceResult(p: number, words: string, inputs: Result['how']['inputs']): Result {
  const amount = measured(p, 0, { id: 'exact', words: 'counted' });
  return { label: 'Chance of this by guessing alone', amount, unit: '', how: { words: [words], inputs } };
}
