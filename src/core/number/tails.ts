import { continuedFraction, lnGamma } from './gamma';
import { Refusal } from '../text/refusal';

/** Tails of the normal and chi-squared distributions, from the incomplete gamma function. Relative error below 1e-12. */

/**
 * P(X ≥ x) for chi-squared with `df` degrees of freedom. x from 0; whole df from 1 to 200.
 * Source: regularised incomplete gamma Q(df/2, x/2), by series below x = df + 2 and by continued fraction above
 * (Abramowitz & Stegun 6.5.29 and 6.5.31).
 * @throws Refusal for a negative x or impossible degrees of freedom
 */
export function chiSquaredTail(x: number, df: number): number {
  if (!(x >= 0)) throw new Refusal('chi-squared is 0 or more, not {x}', { x });
  if (!(Number.isInteger(df) && df >= 1 && df <= 200))
    throw new Refusal('degrees of freedom are counted from 1 to 200, not {df}', { df });
  if (x === 0) return 1;
  const [a, z] = [df / 2, x / 2];
  const scale = Math.exp(a * Math.log(z) - z - lnGamma(a));
  return z < a + 1
    ? 1 - scale * series(a, z)
    : scale * continuedFraction((i) => [i === 0 ? 1 : -i * (i - a), z + 1 - a + 2 * i]);
}

/** Probability P(Z ≥ z) for the standard normal; by definition z² is chi-squared with one degree of freedom. Any finite z. */
export function normalTail(z: number): number {
  const outer = z === 0 ? 0.5 : chiSquaredTail(z * z, 1) / 2;
  return z >= 0 ? outer : 1 - outer;
}

/**
 * The z with a probability P(Z ≥ z) of `tail`, above 0 and below 1: inverse of {@link normalTail}, by halving (arithmetic).
 * @throws Refusal outside
 */
export function normalBound(tail: number): number {
  if (!(tail > 0 && tail < 1)) throw new Refusal('a tail lies between 0 and 1, not {tail}', { tail });
  let [low, high] = [-38, 38]; // beyond, the tail is below the smallest double
  for (let middle = 0; middle > low && middle < high; middle = (low + high) / 2) {
    if (normalTail(middle) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function series(a: number, z: number): number {
  let [sum, term] = [1 / a, 1 / a];
  for (let n = 1; term > sum * 1e-17; n++) sum += term *= z / (a + n);
  return sum;
}
