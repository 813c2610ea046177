/**
 * The 9-point hedonic scale and what may be said of it. The points are an order, not a measure: medians first, and
 * tests by rank.
 */
import { atLeast } from '../number/binomial';
import { ranks } from './ranking';
import { Refusal } from '../text/refusal';

/** The nine points, 1 to 9. Source: Peryam & Pilgrim, Food Technol. 11 (1957) 9–14. */
export const HEDONIC_WORDS = [
  'dislike extremely',
  'dislike very much',
  'dislike moderately',
  'dislike slightly',
  'neither like nor dislike',
  'like slightly',
  'like moderately',
  'like very much',
  'like extremely',
] as const;

/** Two samples scored in the same sittings: sittings for each, and exact two-sided p of the sign and Wilcoxon tests. */
export interface PairOfSamples {
  readonly firstLiked: number;
  readonly secondLiked: number;
  readonly signP: number;
  readonly wilcoxonP: number;
}

/** Most sittings counted exactly by Wilcoxon's test; our choice. */
const MOST_SITTINGS = 200;

/**
 * Median of scores, by definition the middle one, or the mean of the two middle ones.
 * @throws Refusal without scores
 */
export function median(scores: readonly number[]): number {
  if (scores.length === 0) throw new Refusal('a median needs at least one score');
  const sorted = [...scores].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/**
 * Is one of two samples liked better? `first[i]` and `second[i]` are scores of the same sitting, any scale. Sittings
 * that score both alike are left out. Wilcoxon's signed ranks are counted over all 2ⁿ signs, ties sharing their ranks.
 * Source: Wilcoxon, Biometrics Bull. 1 (1945) 80–83.
 * @throws Refusal for lists of different length or more than 200 sittings
 */
export function comparePair(first: readonly number[], second: readonly number[]): PairOfSamples {
  if (first.length !== second.length) throw new Refusal('both samples need a score from every session');
  if (first.length > MOST_SITTINGS)
    throw new Refusal('{most} sessions at most can be compared', { most: MOST_SITTINGS });
  const differences = first.map((score, i) => score - second[i]!).filter((difference) => difference !== 0);
  const firstLiked = differences.filter((difference) => difference > 0).length;
  const n = differences.length;
  return {
    firstLiked,
    secondLiked: n - firstLiked,
    signP: Math.min(1, 2 * atLeast(Math.max(firstLiked, n - firstLiked), n, 1 / 2)),
    wilcoxonP: signedRankP(differences),
  };
}

function signedRankP(differences: readonly number[]): number {
  const doubled = ranks(differences.map(Math.abs)).map((rank) => 2 * rank); // whole numbers, ties and all
  const total = doubled.reduce((sum, rank) => sum + rank, 0);
  const positive = doubled.reduce((sum, rank, i) => sum + (differences[i]! > 0 ? rank : 0), 0);
  const chances = new Float64Array(total + 1);
  chances[0] = 1;
  for (const rank of doubled)
    for (let sum = total; sum >= 0; sum--)
      chances[sum] = (chances[sum]! + (sum >= rank ? chances[sum - rank]! : 0)) / 2;
  const outer = Math.max(positive, total - positive);
  let tail = 0;
  for (let sum = outer; sum <= total; sum++) tail += chances[sum]!;
  return Math.min(1, 2 * tail);
}
