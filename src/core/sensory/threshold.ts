import { Refusal } from '../text/refusal';

/**
 * Ascending 3-AFC threshold with best-estimate (ASTM E679 type): at each step one of three holds the material, and the
 * taster must name it. One run of one nose is weak: a pure guesser ends at the top in two runs of three; repeat it two
 * to four times and take the geometric mean.
 */

/** Best-estimate threshold in the unit of the steps; `outside` when it lies beyond the ladder and is only a bound. */
export interface BestEstimate {
  readonly value: number;
  readonly outside: 'below' | 'above' | null;
}

/** Threshold of several runs or noses: geometric mean in the unit of the steps, spread as SD of log10 (0 for one). */
export interface GroupThreshold {
  readonly value: number;
  readonly sdLog10: number;
}

/**
 * Steps of a ladder with a constant `factor` (above 1; 2 or 3 are usual), rising to `top` (above 0, any unit). Arithmetic.
 * @throws Refusal for a ladder that does not rise
 */
export function ladder(top: number, factor: number, steps: number): number[] {
  if (!(top > 0 && factor > 1 && Number.isInteger(steps) && steps >= 2))
    throw new Refusal('a series needs a top above 0, a factor above 1 and at least 2 steps');
  return Array.from({ length: steps }, (_, i) => top / factor ** (steps - 1 - i));
}

/**
 * Best-estimate threshold of one run: geometric mean of the highest step missed and the next higher one. All right:
 * half a step below the ladder; the top missed: half a step above.
 * Source: ASTM E679. `steps` rise by a constant factor, any unit; `right` tells for each step whether it was named.
 * @throws Refusal when steps and answers do not fit or the steps do not rise
 */
export function bestEstimate(steps: readonly number[], right: readonly boolean[]): BestEstimate {
  if (steps.length !== right.length)
    throw new Refusal('{steps} steps need as many answers, not {answers}', {
      steps: steps.length,
      answers: right.length,
    });
  if (steps.length < 2 || steps.some((step, i) => !(step > (steps[i - 1] ?? 0))))
    throw new Refusal('a series has at least 2 steps, each stronger than the one before');
  const missed = right.lastIndexOf(false);
  if (missed === -1) return { value: steps[0]! / Math.sqrt(steps[1]! / steps[0]!), outside: 'below' };
  const top = steps.length - 1;
  if (missed === top) return { value: steps[top]! * Math.sqrt(steps[top]! / steps[top - 1]!), outside: 'above' };
  return { value: Math.sqrt(steps[missed]! * steps[missed + 1]!), outside: null };
}

/**
 * Threshold of several runs: geometric mean and SD of log10 (n − 1). Values above 0 in one unit. Source: ASTM E679.
 * @throws Refusal without runs
 */
export function groupThreshold(estimates: readonly number[]): GroupThreshold {
  if (estimates.length === 0) throw new Refusal('a threshold needs at least one run');
  const logs = estimates.map(Math.log10);
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const squares = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0);
  return { value: 10 ** mean, sdLog10: logs.length > 1 ? Math.sqrt(squares / (logs.length - 1)) : 0 };
}
