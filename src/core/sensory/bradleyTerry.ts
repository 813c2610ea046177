/** Worth of each vial from verdicts of the kind "this layering is better than that one with one strip swapped". */
import { cholesky } from '../number/cholesky';
import { Refusal } from '../text/refusal';

/** Log-worth of each item (mean 0, natural logarithm) and its standard error. */
export interface LogWorth {
  readonly logWorth: readonly number[];
  readonly standardError: readonly number[];
}

/** Ties count half a win for each side; a "better" is a whole one. `wins[i][j]`: how often i was better than j. */
export type Wins = readonly (readonly number[])[];

/**
 * Bradley–Terry worths: P(i better than j) = e^(w_i)/(e^(w_i) + e^(w_j)), by Newton's method. `ghost` pseudo wins and as
 * many pseudo losses of every item against an item of worth 0 keep the estimates finite and shrink them: 0.5 is usual,
 * 0 is the plain maximum of likelihood. Standard errors are of the worths less their mean.
 * Source: Bradley & Terry, Biometrika 39 (1952) 324; ghost item: Turner et al., Comput. Stat. 35 (2020) 1027.
 * @throws Refusal for negative wins, or without a ghost when the verdicts do not connect all items both ways
 */
export function bradleyTerry(wins: Wins, ghost = 0.5): LogWorth {
  const n = wins.length;
  if (!(ghost >= 0) || wins.some((row) => row.length !== n || row.some((one) => !(one >= 0))))
    throw new Refusal('wins are counted from 0, for every pair of items');
  if (n === 0) return { logWorth: [], standardError: [] };
  if (ghost === 0) demandConnected(wins);
  const worth = new Array<number>(n).fill(0);
  for (let round = 0; round < 200; round++) {
    const { slope, bend } = likelihood(wins, worth, ghost);
    const step = cholesky(bend).solve(slope);
    const largest = Math.max(...step.map(Math.abs));
    const damping = largest > 2 ? 2 / largest : 1; // keeps the first steps from overshooting
    for (let i = 0; i < n; i++) worth[i]! += damping * step[i]!;
    if (largest < 1e-12) break;
  }
  const mean = worth.reduce((sum, one) => sum + one, 0) / n;
  const spread = cholesky(likelihood(wins, worth, ghost).bend).inverse();
  return { logWorth: worth.map((one) => one - mean), standardError: centred(spread) };
}

/** First derivatives and minus the second ones of the log-likelihood; without a ghost, pinned to a mean of 0. */
function likelihood(wins: Wins, worth: readonly number[], ghost: number): { slope: number[]; bend: number[][] } {
  const n = wins.length;
  const slope = new Array<number>(n).fill(0);
  const bend = wins.map(() => new Array<number>(n).fill(ghost === 0 ? 1 : 0));
  for (let i = 0; i < n; i++) {
    const p = 1 / (1 + Math.exp(-worth[i]!)); // against the ghost
    slope[i]! += ghost - 2 * ghost * p;
    bend[i]![i]! += 2 * ghost * p * (1 - p);
    for (let j = 0; j < n; j++) {
      if (i === j) continue;
      const tries = wins[i]![j]! + wins[j]![i]!;
      const better = 1 / (1 + Math.exp(worth[j]! - worth[i]!));
      slope[i]! += wins[i]![j]! - tries * better;
      bend[i]![i]! += tries * better * (1 - better);
      bend[i]![j]! -= tries * better * (1 - better);
    }
  }
  return { slope, bend };
}

/** Standard errors of x_i less the mean of all x, from their covariance. */
function centred(spread: readonly (readonly number[])[]): number[] {
  const n = spread.length;
  const rowMeans = spread.map((row) => row.reduce((sum, one) => sum + one, 0) / n);
  const mean = rowMeans.reduce((sum, one) => sum + one, 0) / n;
  return spread.map((row, i) => Math.sqrt(Math.max(0, row[i]! - 2 * rowMeans[i]! + mean)));
}

/** Without a ghost, everyone must be able to beat everyone along a chain of wins (Ford 1957). */
function demandConnected(wins: Wins): void {
  for (const beats of [(i: number, j: number) => wins[i]![j]!, (i: number, j: number) => wins[j]![i]!]) {
    const reached = new Set([0]);
    for (const i of reached) wins.forEach((_, j) => beats(i, j) > 0 && reached.add(j));
    if (reached.size < wins.length) throw new Refusal('some vials only ever won or lost: their worth has no end');
  }
}
