/**
 * What the likings so far let one believe of every blend: a Gaussian process over the shares, averaged over how fast liking
 * may change, by how much, and how well the nose repeats. All on the nine-point scale of liking.
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning 2006, 2.2 and 5.4; the values tried are our choice,
 * from simulated noses (`npm run bench -- blends`).
 */
import { cholesky } from '../number/cholesky';
import { normalTail } from '../number/tails';
import { Refusal } from '../text/refusal';
import type { Shares } from './region';
import type { Judged } from './scheffe';

const CENTRE = 5; // the middle of the scale
const LEVEL = 1.5; // SD of how well the parts are liked in general, points
const SLOPE = 1.5; // SD of how much better one part is liked than another, points
const REACHES = [0.25, 0.4, 0.7]; // distance over which likings hang together, in shares
const HEIGHTS = [0.6, 1.2, 2.4]; // SD of the surface about its plane, points
const NOISES = [0.7, 1, 1.4, 2]; // SD of one nose on one blend, points
/** How likely each noise is beforehand. */
const NOISE_PRIOR = [0.15, 0.35, 0.35, 0.15];
const NEGLIGIBLE = 0.01; // share of the weight below which a setting is left out

/** A value with its standard uncertainty, points of liking. */
export interface Expected {
  readonly value: number;
  readonly uncertainty: number;
}

/** What is believed of a surface after some likings. Shares are fractions, all else points of liking. */
export interface Belief {
  /** The true liking of a blend. */
  readonly at: (shares: Shares) => Expected;
  /** By how much the one is truly better than the other. */
  readonly between: (one: Shares, other: Shares) => Expected;
  /** Expected improvement: by how much judging a blend is expected to raise the best of those judged. */
  readonly gain: (shares: Shares) => number;
  /** SD of one judgement of one blend. */
  readonly noise: number;
}

interface Setting {
  readonly reach: number;
  readonly height: number;
  readonly noise: number;
  readonly prior: number;
}

/** One setting, fitted: what it foretells. */
interface Fitted {
  readonly setting: Setting;
  readonly lnWeight: number;
  readonly mean: (k: readonly number[]) => number;
  readonly taken: (k: readonly number[], other: readonly number[]) => number;
}

const SETTINGS: readonly Setting[] = REACHES.flatMap((reach) =>
  HEIGHTS.flatMap((height) => NOISES.map((noise, i) => ({ reach, height, noise, prior: NOISE_PRIOR[i]! }))),
);

/**
 * The belief after some likings, 1 to 9 points each. Deterministic.
 * @throws Refusal without likings, or for one that is no number
 */
export function beliefAfter(judged: readonly Judged[]): Belief {
  if (judged.length === 0) throw new Refusal('a surface needs at least one liking');
  if (judged.some(({ liking }) => !Number.isFinite(liking))) throw new Refusal('every blend needs its liking');
  const all = SETTINGS.map((setting) => fit(judged, setting));
  const top = Math.max(...all.map(({ lnWeight }) => lnWeight));
  const kept = all.filter(({ lnWeight }) => lnWeight > top + Math.log(NEGLIGIBLE));
  const total = kept.reduce((sum, { lnWeight }) => sum + Math.exp(lnWeight - top), 0);
  const models = kept.map((one) => ({ ...one, weight: Math.exp(one.lnWeight - top) / total }));
  const row = (shares: Shares, setting: Setting) => judged.map((one) => kernel(one.shares, shares, setting));
  const guesses = (shares: Shares) =>
    models.map(({ setting, mean, taken, weight }) => {
      const k = row(shares, setting);
      return { weight, value: CENTRE + mean(k), variance: kernel(shares, shares, setting) - taken(k, k) };
    });
  const best = models.map(({ setting, mean }) =>
    Math.max(...judged.map(({ shares }) => CENTRE + mean(row(shares, setting)))),
  );
  return {
    at: (shares) => mixed(guesses(shares)),
    between: (one, other) =>
      mixed(
        models.map(({ setting, mean, taken, weight }) => {
          const k = row(one, setting).map((value, i) => value - row(other, setting)[i]!);
          const bare = kernel(one, one, setting) + kernel(other, other, setting) - 2 * kernel(one, other, setting);
          return { weight, value: mean(k), variance: bare - taken(k, k) };
        }),
      ),
    gain: (shares) =>
      guesses(shares).reduce(
        (sum, { weight, value, variance }, i) => sum + weight * above(value, variance, best[i]!),
        0,
      ),
    noise: Math.sqrt(models.reduce((sum, { setting, weight }) => sum + weight * setting.noise ** 2, 0)),
  };
}

function fit(judged: readonly Judged[], setting: Setting): Fitted {
  const { solve, inverse, lnDeterminant } = cholesky(
    judged.map((one, i) =>
      judged.map((other, j) => kernel(one.shares, other.shares, setting) + (i === j ? setting.noise ** 2 : 0)),
    ),
  );
  const rest = judged.map(({ liking }) => liking - CENTRE);
  const weights = solve(rest);
  const inverted = inverse();
  return {
    setting,
    lnWeight: Math.log(setting.prior) - (dot(rest, weights) + lnDeterminant()) / 2,
    mean: (k) => dot(k, weights),
    taken: (k, other) => inverted.reduce((sum, line, i) => sum + k[i]! * dot(line, other), 0),
  };
}

/** How much two blends have in common: level, slopes, and what is near. */
function kernel(one: Shares, other: Shares, { reach, height }: Setting): number {
  let [along, apart] = [0, 0];
  for (let i = 0; i < one.length; i++) {
    along += one[i]! * other[i]!;
    apart += (one[i]! - other[i]!) ** 2;
  }
  return LEVEL ** 2 + SLOPE ** 2 * along + height ** 2 * Math.exp(-apart / (2 * reach * reach));
}

/** Mean and SD of several guesses with weights. */
function mixed(guesses: readonly { weight: number; value: number; variance: number }[]): Expected {
  const value = guesses.reduce((sum, one) => sum + one.weight * one.value, 0);
  const variance = guesses.reduce((sum, one) => sum + one.weight * (one.variance + (one.value - value) ** 2), 0);
  return { value, uncertainty: Math.sqrt(Math.max(0, variance)) };
}

/** E[max(0, X − best)] of a normal X. Source: Jones, Schonlau & Welch, J. Glob. Optim. 13 (1998) 455. */
function above(value: number, variance: number, best: number): number {
  const sd = Math.sqrt(Math.max(variance, 1e-12));
  const z = (value - best) / sd;
  return sd * (z * normalTail(-z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI));
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
