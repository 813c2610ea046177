import { Refusal } from '../text/refusal';

/**
 * Layerings of three so that every pair of v vials meets, in the fewest possible: ⌈v/3·⌈(v−1)/2⌉⌉ for every v.
 *
 * Steiner triple systems where they exist (v = 1, 3 mod 6: Bose 1939, Skolem 1958), one more point on them (v = 2, 4),
 * the pairwise balanced design with one block of five (v = 5), and one more point on that (v = 0). Source:
 * Lindner & Rodger, Design Theory; that the bound is reached for every v: Fort & Hedlund, Pacific J. Math. 8 (1958) 709.
 */

type Triple = readonly [number, number, number];

/** The fewest triples of 0…v−1 that bring every pair together. v is a count of vials, 3 to 100. @throws Refusal outside */
export function triplesForAllPairs(v: number): number[][] {
  if (!(Number.isInteger(v) && v >= 3 && v <= 100))
    throw new Refusal('threes are planned for 3 to 100 vials, not {v}', { v });
  return triples(v).map((triple) => [...triple].sort((a, b) => a - b));
}

function triples(v: number): Triple[] {
  if (v % 6 === 1 || v % 6 === 3) return steiner(v);
  if (v % 6 === 5) return [...oneBlockOfFive(v), ...FIVE_BY_THREES];
  if (v % 6 === 0) return [...oneBlockOfFive(v - 1), ...sixByThrees(v - 1), ...paired(5, v - 1)];
  return [...steiner(v - 1), ...paired(0, v - 1)]; // v even: v − 1 points for the new one, one of them twice
}

/** Triples of a new point `v` with the points from…v−1, two at a time; an odd one takes the first again. */
function paired(from: number, v: number): Triple[] {
  const added: Triple[] = [];
  for (let i = from; i < v; i += 2) added.push([i, i + 1 < v ? i + 1 : 0, v]);
  return added;
}

/** The points 0…4 of the block of five, all pairs in four triples. */
const FIVE_BY_THREES: readonly Triple[] = [
  [0, 1, 2],
  [0, 3, 4],
  [1, 3, 4],
  [2, 3, 4],
];

/** The block of five and a new point `v`, all pairs in six triples. */
function sixByThrees(v: number): Triple[] {
  return [
    [0, 1, 2],
    [0, 3, v],
    [1, 3, 4],
    [2, 3, 4],
    [0, 4, v],
    [1, 2, v],
  ];
}

/** Every pair in exactly one triple, v = 1 or 3 mod 6. */
function steiner(v: number): Triple[] {
  const bose = v % 6 === 3;
  const q = bose ? v / 3 : (v - 1) / 3;
  const at = (i: number, layer: number): number => i + q * (layer % 3);
  // Commutative quasigroup of order q: idempotent when q is odd, half-idempotent when it is even.
  const half = (sum: number): number =>
    bose ? (sum * ((q + 1) / 2)) % q : sum % 2 === 0 ? sum / 2 : (sum - 1) / 2 + q / 2;
  const found: Triple[] = [];
  for (let i = 0; i < (bose ? q : q / 2); i++) found.push([at(i, 0), at(i, 1), at(i, 2)]);
  for (let layer = 0; layer < 3; layer++) {
    if (!bose) for (let i = 0; i < q / 2; i++) found.push([v - 1, at(i + q / 2, layer), at(i, layer + 1)]);
    for (let i = 0; i < q; i++)
      for (let j = i + 1; j < q; j++) found.push([at(i, layer), at(j, layer), at(half((i + j) % q), layer + 1)]);
  }
  return found;
}

/** v = 5 mod 6: every pair of 0…v−1 in one triple, but for the pairs of the block of five 0…4. */
function oneBlockOfFive(v: number): Triple[] {
  const q = (v - 2) / 3; // odd
  // Points: 0 and 1 stand alone, 2…4 are the first of each layer, the others follow.
  const at = (i: number, layer: number): number => 2 + 3 * i + (layer % 3);
  const round = (i: number): number => (i === 0 ? 0 : (i % (q - 1)) + 1); // keeps 0, turns 1…q−1
  const back = (i: number): number => (i === 0 ? 0 : i === 1 ? q - 1 : i - 1);
  const found: Triple[] = [];
  for (let i = 1; i < q; i += 2) {
    const next = round(i);
    found.push([0, at(i, 0), at(i, 1)], [0, at(i, 2), at(next, 0)], [0, at(next, 1), at(next, 2)]);
    found.push([1, at(i, 1), at(i, 2)], [1, at(next, 0), at(next, 1)], [1, at(i, 0), at(back(i), 2)]);
  }
  for (let i = 0; i < q; i++)
    for (let j = i + 1; j < q; j++) {
      const product = ((i + j) * ((q + 1) / 2)) % q; // idempotent and commutative
      found.push([at(i, 0), at(j, 0), at(product, 1)], [at(i, 1), at(j, 1), at(product, 2)]);
      found.push([at(i, 2), at(j, 2), at(round(product), 0)]);
    }
  return found;
}
