import { Refusal } from '../text/refusal';
import { incompleteBeta } from './beta';

/**
 * Probability P(F ≥ f) of the F distribution, for `f` from 0 and degrees of freedom of 1 and more above and below.
 * Source: Abramowitz & Stegun 26.6.2, through the incomplete beta function. Check: 0.05 for f = 4.103 with 2 and 10.
 * @throws Refusal outside
 */
export function fisherTail(f: number, above: number, below: number): number {
  if (!(f >= 0)) throw new Refusal('a ratio of variances is 0 or more, not {f}', { f });
  if (!(above >= 1 && below >= 1))
    throw new Refusal('F needs one degree of freedom or more on both sides, not {above} and {below}', { above, below });
  return incompleteBeta(below / (below + above * f), below / 2, above / 2);
}
