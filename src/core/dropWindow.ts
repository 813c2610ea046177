import type { Line, Term } from './dropTerms';

/**
 * Fewest drops of one line inside a window.
 *
 * A line with n drops lies between lo = ρ − z·sd and hi = ρ + z·sd (mg per part). Below, low ≤ lo and hi ≤ high is
 * "in the window [low, high]".
 *
 * Lemma 1 (separable). All lines lie in [L, U] iff each does on its own; so with a cap on drops alone a plan exists in
 * the window iff the fewest drops of the lines, summed, keep the cap.
 *
 * Lemma 2 (one candidate a vial). With z·rsd < 1 every added drop raises lo and hi (its sd grows by at most z·g·rsd < g).
 * So of one vial only the smallest n with lo(n) ≥ L counts: if its hi is above U, that of every larger n is too. That n
 * is the larger root of (g·n − c)² = v + n·w with c = L − ρ₀, in closed form below. Of two vials, for each count of
 * the stronger only the smallest count of the weaker counts, by the same argument.
 */

/** What was chosen for a line, and where it lies; lo, hi and rho in mg per part. Overwritten in place: search is hot. */
export interface Choice {
  a: Term | null;
  na: number;
  b: Term | null;
  nb: number;
  /** All drops of the line, those already counted too. */
  drops: number;
  rho: number;
  lo: number;
  hi: number;
}

/** Relative widening of every window, far below the margin of search, so that rounding of doubles loses no candidate. */
export const WINDOW_SLACK = 1e-13;

/** A choice of nothing yet. */
export function noChoice(): Choice {
  return { a: null, na: 0, b: null, nb: 0, drops: 0, rho: 0, lo: 0, hi: 0 };
}

/** Smallest whole n ≥ 0 of a vial, on top of (rho, variance), with lo ≥ low (mg per part). Lemma 2. */
export function smallestCount(term: Term, low: number, at: { rho: number; variance: number }): number {
  const { g, w } = term;
  const c = low - at.rho;
  if (c + Math.sqrt(at.variance) <= 0) return 0;
  return Math.ceil((2 * g * c + w + Math.sqrt(w * (w + 4 * g * c) + 4 * g * g * at.variance)) / (2 * g * g));
}

/** Fills `out` with the line's fewest drops in [low, high] and says whether there are any. Lemmas 1 and 2. */
export function fewestInWindow(line: Line, window: { low: number; high: number }, out: Choice): boolean {
  const low = window.low * (1 - WINDOW_SLACK);
  const high = window.high * (1 + WINDOW_SLACK);
  const { rho, variance, need } = line;
  let best = Infinity;
  if (need === 0) {
    const sd = Math.sqrt(variance);
    if (rho - sd >= low && rho + sd <= high) {
      put(line, out, { a: null, na: 0, b: null, nb: 0 });
      return true;
    }
  }
  const c = low - rho;
  for (const term of line.singles) {
    if (c >= best * term.g) break; // weaker drops need at least c/g of them
    const n = Math.max(need, smallestCount(term, low, line));
    if (n >= best || n > term.most) continue;
    if (rho + n * term.g + Math.sqrt(variance + n * term.w) > high) continue;
    best = n;
    put(line, out, { a: term, na: n, b: null, nb: 0 });
  }
  for (const pair of line.pairs) best = fewestOfPair(line, { pair, low, high, best }, out);
  return best < Infinity;
}

/** Walks the stronger vial's count downwards; n_a + (L − n_a·g_a)/g_b then only grows, so it ends the walk. */
function fewestOfPair(
  line: Line,
  walk: { pair: readonly [Term, Term]; low: number; high: number; best: number },
  out: Choice,
): number {
  const [a, b] = walk.pair;
  let best = walk.best;
  const room = walk.high < Infinity ? Math.floor((walk.high - line.rho) / a.g) : Infinity;
  for (let na = Math.min(a.most, room, best - 2); na >= 1; na--) {
    const rho = line.rho + na * a.g;
    const variance = line.variance + na * a.w;
    if (na + (walk.low - rho) / b.g >= best) break;
    const nb = Math.max(1, line.need - na, smallestCount(b, walk.low, { rho, variance }));
    if (nb > b.most || na + nb >= best) continue;
    if (rho + nb * b.g + Math.sqrt(variance + nb * b.w) > walk.high) continue;
    best = na + nb;
    put(line, out, { a, na, b, nb });
  }
  return best;
}

/** Writes a choice with its place, from what is already in the line. */
export function put(line: Line, out: Choice, pick: Pick<Choice, 'a' | 'na' | 'b' | 'nb'>): void {
  const { a, na, b, nb } = pick;
  const rho = line.rho + (a ? na * a.g : 0) + (b ? nb * b.g : 0);
  const sd = Math.sqrt(line.variance + (a ? na * a.w : 0) + (b ? nb * b.w : 0));
  out.a = a;
  out.na = na;
  out.b = b;
  out.nb = nb;
  out.drops = line.drops + na + nb;
  out.rho = rho;
  out.lo = rho - sd;
  out.hi = rho + sd;
}
