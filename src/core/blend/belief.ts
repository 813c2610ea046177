/**
 * What the likings so far let one believe of every blend: a Gaussian process over the shares, averaged over how fast liking
 * may change, by how much, and how well the nose repeats. All on the nine-point scale of liking.
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning 2006, 2.2 and 5.4; the values tried are our choice,
 * from simulated noses (`npm run bench -- blends 300 3 1.5 tuning`).
 */
import { cholesky } from '../number/cholesky';
import { normalTail } from '../number/tails';
import { Refusal } from '../text/refusal';
import type { Shares } from './region';
import type { Judged } from './scheffe';

const CENTRE = 5; // the middle of the scale
const LEVEL = 1.5; // SD of how well the parts are liked in general, points
const SLOPE = 1.5; // SD of how much better one part is liked than another, points
const PAIRS = 3; // SD of what two parts lift each other by, points over the product of their shares
const REACHES = [0.2, 0.35, 0.6]; // distance over which likings hang together, in shares
const HEIGHTS = [0.6, 1.2, 2.4]; // SD of the surface about its quadratic, points
/** SD of one judgement of one blend, points, and how likely each is beforehand. */
const NOISES = [
  { noise: 0.8, prior: 0.3 },
  { noise: 1.2, prior: 0.4 },
  { noise: 1.8, prior: 0.3 },
];
const NEGLIGIBLE = 0.1; // of the weight of the likeliest setting; less is left out

/** A value with its standard uncertainty, points of liking. */
export interface Expected {
  readonly value: number;
  readonly uncertainty: number;
}

/** What is believed of a surface after some likings. Shares are fractions, all else points of liking. */
export interface Belief {
  /**
   * The true liking of a blend; by how much it is expected to be better than the best of those judged (expected improvement), and
   * how much of that one more judgement of it would tell (augmented expected improvement).
   */
  readonly at: (shares: Shares) => Expected & { readonly gain: number; readonly worth: number };
  /** By how much the one is truly better than the other. */
  readonly between: (one: Shares, other: Shares) => Expected;
  /** SD of one judgement of one blend. */
  readonly noise: number;
}

interface Setting {
  readonly reach: number;
  readonly height: number;
  readonly noise: number;
  readonly prior: number;
}

/** What one setting foretells. */
interface Fitted extends Setting {
  /** Its share of all that are kept. */
  readonly weight: number;
  /** (K + noise²)⁻¹·(likings − centre), and (K + noise²)⁻¹. */
  readonly weights: Float64Array;
  readonly inverse: readonly Float64Array[];
}

/** What one setting says of one or two blends. */
interface Guess {
  readonly weight: number;
  readonly value: number;
  readonly variance: number;
}

const SETTINGS: readonly Setting[] = REACHES.flatMap((reach) =>
  HEIGHTS.flatMap((height) => NOISES.map((one) => ({ reach, height, ...one }))),
);

/**
 * The belief after some likings, 1 to 9 points each. Deterministic.
 * @throws Refusal without likings, or for one that is no number
 */
export function beliefAfter(judged: readonly Judged[]): Belief {
  if (judged.length === 0) throw new Refusal('a surface needs at least one liking');
  if (judged.some(({ liking }) => !Number.isFinite(liking))) throw new Refusal('every blend needs its liking');
  const models = likeliest(judged);
  const blends = judged.map(({ shares }) => shares);
  const [room, own, k] = [roomFor(blends.length), roomFor(1), new Float64Array(blends.length)]; // used again for each blend
  const guesses = (shares: Shares): Guess[] => {
    meet(blends, shares, room);
    meet([shares], shares, own);
    return models.map((model) => guess(model, commonWith(room, model, k), commonWith(own, model)[0]!));
  };
  const likings = blends.map((shares) => guesses(shares).map(({ value }) => value));
  const best = models.map((_, i) => Math.max(...likings.map((values) => values[i]!)));
  return {
    at: (shares) => {
      const all = guesses(shares);
      const { value, uncertainty } = mixed(all);
      const gains = all.map((one, i) => one.weight * above(one, best[i]!));
      const worth = gains.reduce((sum, gain, i) => sum + gain * told(all[i]!, models[i]!), 0);
      return { value: CENTRE + value, uncertainty, gain: gains.reduce((sum, gain) => sum + gain, 0), worth };
    },
    between: (one, other) => {
      const [met, metByOther] = [meetings(blends, one), meetings(blends, other)];
      return mixed(
        models.map((model) => {
          const byOther = commonWith(metByOther, model);
          const bare = kernel(one, one, model) + kernel(other, other, model) - 2 * kernel(one, other, model);
          return guess(model, commonWith(met, model).map((k, i) => k - byOther[i]!), bare); // prettier-ignore
        }),
      );
    },
    noise: Math.sqrt(models.reduce((sum, { noise, weight }) => sum + weight * noise ** 2, 0)),
  };
}

/** The settings that count, fitted, with their shares of the weight. */
function likeliest(judged: readonly Judged[]): Fitted[] {
  const blends = judged.map(({ shares }) => shares);
  const met = blends.map((shares) => meetings(blends, shares));
  const rest = judged.map(({ liking }) => liking - CENTRE);
  const all = SETTINGS.map((setting) => {
    const noise = setting.noise ** 2;
    const solved = cholesky(met.map((one, i) => [...commonWith(one, setting).map((k, j) => k + (i === j ? noise : 0))])); // prettier-ignore
    const weights = solved.solve(rest);
    const misfit = rest.reduce((sum, one, i) => sum + one * weights[i]!, 0);
    return { setting, solved, weights, lnWeight: Math.log(setting.prior) - (misfit + solved.lnDeterminant()) / 2 };
  });
  const top = Math.max(...all.map(({ lnWeight }) => lnWeight));
  const kept = all.filter(({ lnWeight }) => lnWeight > top + Math.log(NEGLIGIBLE));
  const total = kept.reduce((sum, { lnWeight }) => sum + Math.exp(lnWeight - top), 0);
  return kept.map(({ setting, solved, weights, lnWeight }) => ({
    ...setting,
    weight: Math.exp(lnWeight - top) / total,
    weights: Float64Array.from(weights),
    inverse: solved.inverse().map((line) => Float64Array.from(line)),
  }));
}

/** From what a blend has in common with those judged, and with itself. */
function guess({ weight, weights, inverse }: Fitted, k: Float64Array, bare: number): Guess {
  let taken = 0; // kᵀ·inverse·k, from one half of it and its diagonal
  for (let i = 0; i < k.length; i++) {
    const line = inverse[i]!;
    let half = 0;
    for (let j = 0; j < i; j++) half += line[j]! * k[j]!;
    taken += k[i]! * (2 * half + line[i]! * k[i]!);
  }
  return { weight, value: dot(k, weights), variance: bare - taken };
}

/** Of a blend and each of those judged: the product of their shares, that of their pairs, and how near they are at each reach, 0 to 1. */
interface Meetings {
  readonly along: Float64Array;
  readonly pairs: Float64Array;
  readonly near: ReadonlyMap<number, Float64Array>;
}

/** Room for what a blend has to do with `n` others. */
function roomFor(n: number): Meetings {
  const near = new Map(REACHES.map((reach) => [reach, new Float64Array(n)]));
  return { along: new Float64Array(n), pairs: new Float64Array(n), near };
}

function meetings(blends: readonly Shares[], shares: Shares): Meetings {
  const room = roomFor(blends.length);
  meet(blends, shares, room);
  return room;
}

/** What a blend has to do with others, into room that is there. */
function meet(blends: readonly Shares[], shares: Shares, { along, pairs, near }: Meetings): void {
  for (let i = 0; i < blends.length; i++) {
    const blend = blends[i]!;
    let [product, squares, apart] = [0, 0, 0];
    for (let part = 0; part < shares.length; part++) {
      const both = blend[part]! * shares[part]!;
      product += both;
      squares += both * both;
      apart += (blend[part]! - shares[part]!) ** 2 / 2;
    }
    along[i] = product;
    pairs[i] = (product ** 2 - squares) / 2; // Σ i<j of (a_i·a_j)·(b_i·b_j)
    for (const reach of REACHES) near.get(reach)![i] = Math.exp(-apart / reach ** 2);
  }
}

/** How much a blend has in common with each of those judged: level, slopes, pairs, and what is near; into room that is there. */
function commonWith(
  { along, pairs, near }: Meetings,
  { reach, height }: Setting,
  common = new Float64Array(along.length),
): Float64Array {
  const by = near.get(reach)!;
  for (let i = 0; i < common.length; i++)
    common[i] = LEVEL ** 2 + SLOPE ** 2 * along[i]! + PAIRS ** 2 * pairs[i]! + height ** 2 * by[i]!;
  return common;
}

function kernel(one: Shares, other: Shares, setting: Setting): number {
  return commonWith(meetings([one], other), setting)[0]!;
}

/** Mean and SD of several guesses with weights. */
function mixed(guesses: readonly Guess[]): Expected {
  const value = guesses.reduce((sum, one) => sum + one.weight * one.value, 0);
  const variance = guesses.reduce((sum, one) => sum + one.weight * (one.variance + (one.value - value) ** 2), 0);
  return { value, uncertainty: Math.sqrt(Math.max(0, variance)) };
}

/** E[max(0, X − best)] of a normal X. Source: Jones, Schonlau & Welch, J. Glob. Optim. 13 (1998) 455. */
function above({ value, variance }: Guess, best: number): number {
  const sd = Math.sqrt(Math.max(variance, 1e-12));
  const z = (value - best) / sd;
  return sd * (z * normalTail(-z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI));
}

/**
 * What part of a gain one more judgement tells, 0 to 1: little of a blend that is known better than a nose repeats.
 * Source: Huang, Allen, Notz & Zeng, J. Glob. Optim. 34 (2006) 441.
 */
function told({ variance }: Guess, { noise }: Setting): number {
  return 1 - noise / Math.sqrt(noise ** 2 + Math.max(0, variance));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
