import { Refusal } from '../text/refusal';

/**
 * Exact binomial probabilities by definition, summed term by term (our own; no normal approximation).
 * Relative error below 1e-13 for up to 60 tries, below 1e-11 for up to 2000 (checked against exact fractions).
 */

/** Most tries that are computed; our choice, far beyond what one nose can do. */
export const MOST_TRIES = 2000;

/**
 * Probability P(X ≥ x) for X binomial(n, p). Whole n from 0 to 2000, any whole x, p from 0 to 1.
 * @throws Refusal for tries or a chance outside these
 */
export function atLeast(x: number, n: number, p: number): number {
  demand(n, p);
  if (x <= 0) return 1;
  if (x > n) return 0;
  return x > n * p ? run(x, n, { n, p }) : 1 - run(0, x - 1, { n, p });
}

/**
 * Probability P(X ≤ x) for X binomial(n, p). Whole n from 0 to 2000, any whole x, p from 0 to 1.
 * @throws Refusal for tries or a chance outside these
 */
export function atMost(x: number, n: number, p: number): number {
  return atLeast(n - x, n, 1 - p);
}

/**
 * Clopper–Pearson interval for a share, from `right` of `tries`, at a two-sided `confidence` above 0 and below 1: the
 * shares for which the count is not yet improbable on either side. Never covers less than it says.
 * Source: Clopper & Pearson, Biometrika 26 (1934) 404–413.
 * @throws Refusal when the counts or the confidence are impossible
 */
export function clopperPearson(right: number, tries: number, confidence: number): { low: number; high: number } {
  if (!(Number.isInteger(right) && right >= 0 && right <= tries))
    throw new Refusal('{right} right of {tries} tries cannot be', { right, tries });
  if (!(confidence > 0 && confidence < 1))
    throw new Refusal('a confidence lies between 0 and 1, not {confidence}', { confidence });
  const tail = (1 - confidence) / 2;
  return {
    low: right === 0 ? 0 : crossing((p) => atLeast(right, tries, p) < tail),
    high: right === tries ? 1 : crossing((p) => atMost(right, tries, p) > tail),
  };
}

/** The place in 0…1 where a statement that is true below it becomes false, by halving down to the last bit. */
function crossing(isBelow: (p: number) => boolean): number {
  let [low, high] = [0, 1];
  for (let middle = 0.5; middle > low && middle < high; middle = (low + high) / 2) {
    if (isBelow(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Sum of the terms from `first` to `last`: the largest by logarithms, its neighbours from their ratios. */
function run(first: number, last: number, { n, p }: { n: number; p: number }): number {
  if (p === 0 || p === 1) return first <= n * p && n * p <= last ? 1 : 0;
  const peak = Math.min(last, Math.max(first, Math.floor((n + 1) * p)));
  const top = Math.exp(logChoose(n, peak) + peak * Math.log(p) + (n - peak) * Math.log1p(-p));
  const odds = p / (1 - p);
  let sum = top;
  for (let k = peak, term = top; k < last && term > 0; k++) sum += term *= ((n - k) / (k + 1)) * odds;
  for (let k = peak, term = top; k > first && term > 0; k--) sum += term *= k / ((n - k + 1) * odds);
  return Math.min(1, sum);
}

function logChoose(n: number, k: number): number {
  let sum = 0;
  for (let i = 1; i <= Math.min(k, n - k); i++) sum += Math.log((n - i + 1) / i);
  return sum;
}

function demand(n: number, p: number): void {
  if (!(Number.isInteger(n) && n >= 0 && n <= MOST_TRIES))
    throw new Refusal('tries are counted from 0 to {most}, not {n}', { most: MOST_TRIES, n });
  if (!(p >= 0 && p <= 1)) throw new Refusal('a chance lies between 0 and 1, not {p}', { p });
}
