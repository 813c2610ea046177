import { incompleteBeta } from './beta';
import { Refusal } from '../text/refusal';

/**
 * Probability that Student's t with `df` degrees of freedom is at most `t`, dimensionless.
 * Valid: any finite t, df ≥ 1. Source: Abramowitz & Stegun 26.7.1, through the incomplete beta function.
 * @throws Refusal below one degree of freedom
 */
export function studentCdf(t: number, df: number): number {
  if (!(df >= 1)) throw new Refusal('Student’s t needs one degree of freedom or more, not {df}', { df });
  const tail = 0.5 * incompleteBeta(df / (df + t * t), df / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}

/**
 * The value that Student's t with `df` degrees of freedom stays below with probability `p`, dimensionless.
 * Valid: 0 < p < 1, df ≥ 1. Source: as {@link studentCdf}, by bisection on the tail, so that small tails keep their digits.
 * Check: 12.706, 4.303, 2.776, 2.093 for p = 0.975 and df = 1, 2, 4, 19 (every printed t table).
 * @throws Refusal outside
 */
export function studentQuantile(p: number, df: number): number {
  if (!(p > 0 && p < 1)) throw new Refusal('a probability lies between 0 and 1, not at {p}', { p });
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  let high = 1;
  while (studentCdf(-high, df) > tail) high *= 2;
  let low = 0;
  for (let i = 0; i < 200 && high - low > high * 1e-15; i++) {
    const middle = (low + high) / 2;
    if (studentCdf(-middle, df) > tail) low = middle;
    else high = middle;
  }
  const t = (low + high) / 2;
  return p < 0.5 ? -t : t;
}

/**
 * Student's factor for a two-sided 95 % interval of a mean of `n` readings: t(0.975; n − 1), dimensionless.
 * Source: GUM (JCGM 100:2008) table G.2.
 * @throws Refusal when n < 2
 */
export function studentFactor95(n: number): number {
  if (!(n >= 2)) throw new Refusal('an interval from scatter needs two weighings or more, not {n}', { n });
  return studentQuantile(0.975, n - 1);
}
