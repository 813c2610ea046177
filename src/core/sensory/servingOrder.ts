import { Refusal } from '../text/refusal';

/** Balanced serving orders. Chance comes in as `random`, numbers from 0 up to, not including, 1. */

/** The orders that make up one balanced round of each test; two samples are A and B. */
const ROUNDS = {
  /** ISO 4120: six orders, each of A and B twice as often in three of them. */
  triangle: ['AAB', 'ABA', 'BAA', 'BBA', 'BAB', 'ABB'],
  /** ISO 10399, balanced reference: the reference first, then the two. */
  'duo-trio': ['AAB', 'ABA', 'BAB', 'BBA'],
  /** ISO 5495. */
  paired: ['AB', 'BA'],
  /** 3-AFC: B is the one with the material; it stands first, second or third. */
  '3-AFC': ['BAA', 'ABA', 'AAB'],
} as const;

/** A test whose serving orders are of two samples. */
export type TwoSampleTest = keyof typeof ROUNDS;

/**
 * Serving orders of `tries` tries as words of A and B, in whole rounds of all orders, each round shuffled; a last round
 * cut short keeps different orders. For the duo-trio the first letter is the reference.
 * Source: ISO 4120, 10399, 5495 and 13301: every order as often as every other.
 * @throws Refusal when the tries are no count
 */
export function servingOrders(test: TwoSampleTest, tries: number, random: () => number): string[] {
  if (!(Number.isInteger(tries) && tries >= 0)) throw new Refusal('tries are counted, not {tries}', { tries });
  const orders: string[] = [];
  while (orders.length < tries) orders.push(...shuffled(ROUNDS[test], random));
  return orders.slice(0, tries);
}

/** How many orders make up one balanced round of a test, a count. Source: ISO 4120, 10399, 5495 and 13301. */
export function ordersInRound(test: TwoSampleTest): number {
  return ROUNDS[test].length;
}

/**
 * Williams square of `samples` (a count, 2 to 26, numbered from 0): rows are serving orders in which every sample stands in
 * every place equally often and follows every other equally often: once in n rows when n is even, twice in 2n when odd.
 * Source: Williams, Aust. J. Sci. Res. A 2 (1949) 149–168.
 * @throws Refusal outside 2 to 26 samples
 */
export function williamsSquare(samples: number): number[][] {
  if (!(Number.isInteger(samples) && samples >= 2 && samples <= 26))
    throw new Refusal('2 to 26 samples can be balanced, not {samples}', { samples });
  const first = Array.from({ length: samples }, (_, i) => (i % 2 === 0 ? i / 2 : samples - (i + 1) / 2));
  const square = first.map((_, row) => first.map((sample) => (sample + row) % samples));
  return samples % 2 === 0 ? square : [...square, ...square.map((row) => [...row].reverse())];
}

/**
 * Serving orders for ranking `samples` in `sittings`: rows of Williams squares, shuffled, with the samples' numbers
 * shuffled too. Balanced after whole squares (n rows for even n, 2n for odd).
 * Source: as {@link williamsSquare}; shuffling: our choice.
 * @throws Refusal outside 2 to 26 samples or when the sittings are no count
 */
export function rankingOrders(samples: number, sittings: number, random: () => number): number[][] {
  if (!(Number.isInteger(sittings) && sittings >= 0))
    throw new Refusal('sessions are whole numbers, not {sittings}', { sittings });
  const square = williamsSquare(samples);
  const names = shuffled(square[0]!, random);
  const orders: number[][] = [];
  while (orders.length < sittings)
    orders.push(...shuffled(square, random).map((row) => row.map((sample) => names[sample]!)));
  return orders.slice(0, sittings);
}

/** How many rows make up a balanced round of `samples` samples, both counts: n for even n, 2n for odd. Source: Williams 1949. */
export function rankingRound(samples: number): number {
  return samples % 2 === 0 ? samples : 2 * samples;
}

/** A copy in random order, every order as likely (Fisher–Yates). */
function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const left = [...items];
  for (let i = left.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [left[i], left[j]] = [left[j]!, left[i]!];
  }
  return left;
}
