/**
 * Which vials help, and which pairs are worth re-smelling: liking of the layerings so far, taken apart into one part per
 * vial and one per pair, shrunk towards nothing (ridge regression).
 *
 * When it may be shown comes from simulated benches (three vials a try, parts of SD 1, noise of SD 1, two good pairs and
 * a bad one): single vials come out well (correlation 0.7 and more) from 15 tries on. The largest pair found is truly a
 * good one in 48 % of the benches after 15 tries of 8 vials and 68 % after 30 (an earlier study said 78 %), of 12 vials
 * 40 % after 30 and 57 % after 50. So pairs wait for four tries a vial and one a pair: then it is right about two times
 * in three, which is worth re-smelling and never a finding.
 */
import { cholesky } from '../number/cholesky';
import { Refusal } from '../text/refusal';

/** One layering smelled: its vials, and how it was liked, any scale that is the same throughout. */
export interface Try {
  readonly vials: readonly string[];
  readonly liking: number;
}

/** What one vial or pair adds to the liking, on the scale of the liking, with its standard uncertainty. */
export interface Part {
  readonly vials: readonly string[];
  readonly worth: number;
  readonly uncertainty: number;
}

/** Parts in falling order. `vialsReady` and `pairsReady` say whether there are tries enough to show them as a hint. */
export interface Worth {
  readonly mean: number;
  readonly byVial: readonly Part[];
  readonly byPair: readonly Part[];
  /** Mean squared error of foretelling each try from all others; and of foretelling their mean alone. */
  readonly leftOutError: number;
  readonly leftOutErrorOfMean: number;
  readonly vialsReady: boolean;
  readonly pairsReady: boolean;
}

/** How strongly the parts are held to 0, in the units of (noise SD / part SD)². */
export interface Shrinkage {
  readonly vial: number;
  readonly pair: number;
}

const USUAL: Shrinkage = { vial: 1, pair: 4 };
const TRIES_FOR_VIALS = 15;
const TRIES_PER_VIAL_FOR_PAIRS = 4;
/** With n tries, liking by chance alone foretells itself better than the mean by 4.5/n in at most 5 % of benches (simulated). */
const CHANCE_GAIN = 4.5;

/**
 * Worth of every vial and of every pair that was smelled. Liking and columns are centred, the mean is not shrunk.
 * A hint is ready when there are tries enough and all others foretell each try clearly better than their mean does.
 * Source: ridge regression, Hoerl & Kennard, Technometrics 12 (1970) 55; left-out errors e/(1 − h) in closed form.
 * @throws Refusal for fewer than 3 tries, an empty layering, or a liking that is no number
 */
export function worth(tries: readonly Try[], shrinkage: Shrinkage = USUAL): Worth {
  if (tries.length < 3)
    throw new Refusal('a worth needs at least 3 layerings with a liking, not {tries}', { tries: tries.length });
  if (tries.some(({ vials, liking }) => vials.length === 0 || !Number.isFinite(liking)))
    throw new Refusal('every layering needs its vials and a liking');
  const { names, columns, held } = parts(tries, shrinkage);
  const n = tries.length;
  const mean = tries.reduce((sum, { liking }) => sum + liking, 0) / n;
  const rest = tries.map(({ liking }) => liking - mean);
  const { solve, inverse } = cholesky(kernelPlusOne(columns, held, n));
  const weights = solve(rest); // (K + 1)⁻¹·y, which is also what the fit leaves
  const inverted = inverse();
  const leftOut = weights.map((residual, t) => residual / (inverted[t]![t]! - 1 / n)); // e/(1 − h), mean included
  const noise = rest.reduce((sum, y, t) => sum + y * weights[t]!, 0) / (n - 1); // variance, by the marginal likelihood
  const uncertainty = (x: readonly number[], hold: number): number => {
    const seen = dot(
      x,
      inverted.map((row) => dot(row, x)),
    );
    return Math.sqrt(Math.max(0, noise * (1 / hold - seen / hold ** 2)));
  };
  const all = columns.map((x, c) => ({
    vials: names[c]!,
    worth: dot(x, weights) / held[c]!,
    uncertainty: uncertainty(x, held[c]!),
  }));
  const vials = all.filter((part) => part.vials.length === 1);
  const leftOutError = dot(leftOut, leftOut) / n;
  const leftOutErrorOfMean = dot(rest, rest) / n / (1 - 1 / n) ** 2;
  const foretells = leftOutError < (1 - CHANCE_GAIN / n) * leftOutErrorOfMean;
  return {
    mean,
    byVial: falling(vials),
    byPair: falling(all.filter((part) => part.vials.length === 2)),
    leftOutError,
    leftOutErrorOfMean,
    vialsReady: foretells && n >= TRIES_FOR_VIALS,
    pairsReady: foretells && n >= triesForPairs(vials.length),
  };
}

/** X·Λ⁻¹·Xᵀ + 1: with many columns and few tries the fit is solved in the tries (dual form). */
function kernelPlusOne(columns: readonly number[][], held: readonly number[], n: number): number[][] {
  const rows = Array.from({ length: n }, (_, s) => columns.map((x) => x[s]!));
  const scaled = rows.map((row) => row.map((one, c) => one / held[c]!));
  return rows.map((row, s) => scaled.map((other, t) => dot(row, other) + (s === t ? 1 : 0)));
}

function triesForPairs(vials: number): number {
  return Math.max(TRIES_FOR_VIALS, TRIES_PER_VIAL_FOR_PAIRS * vials, (vials * (vials - 1)) / 2);
}

/** One centred column of 0 and 1 for each vial and each pair smelled, with its shrinkage. */
function parts(
  tries: readonly Try[],
  shrinkage: Shrinkage,
): { names: string[][]; columns: number[][]; held: number[] } {
  const found = new Map<string, { name: string[]; x: number[] }>();
  tries.forEach(({ vials }, t) => {
    const sorted = [...new Set(vials)].sort();
    const pairs = sorted.flatMap((a, i) => sorted.slice(i + 1).map((b) => [a, b]));
    for (const name of [...sorted.map((a) => [a]), ...pairs]) {
      const key = JSON.stringify(name);
      if (!found.has(key)) found.set(key, { name, x: new Array<number>(tries.length).fill(0) });
      found.get(key)!.x[t] = 1;
    }
  });
  const all = [...found.values()];
  return {
    names: all.map(({ name }) => name),
    columns: all.map(({ x }) => {
      const mean = x.reduce((sum, one) => sum + one, 0) / x.length;
      return x.map((one) => one - mean);
    }),
    held: all.map(({ name }) => (name.length === 1 ? shrinkage.vial : shrinkage.pair)),
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, one, i) => sum + one * b[i]!, 0);
}

function falling(all: readonly Part[]): Part[] {
  return [...all].sort((one, other) => other.worth - one.worth);
}
