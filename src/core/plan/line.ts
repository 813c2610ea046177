/**
 * One line of a plan: what it holds, and which drops bring it into a window.
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

/** One vial in the arithmetic of its line: what one more drop of it brings. */
export interface Term {
  readonly stockId: string;
  /** mg of neat material per part in one drop. */
  readonly g: number;
  /** (z · g · rsd)², variance of one drop times z², (mg per part)². */
  readonly w: number;
  /** Drops that may be added. */
  readonly most: number;
  /** What one drop takes of each cap: mg of the trial, mg of a solvent. */
  readonly costs: readonly number[];
}

/** One line: what is already in the vial (nothing, unless a slip is repaired) and what may be added. */
export interface Line {
  readonly componentId: string;
  /** Already counted: mg per part, variance times z², drops. */
  readonly rho: number;
  readonly variance: number;
  readonly drops: number;
  /** Drops that must still be added. */
  readonly need: number;
  /** Vials that may give on their own, strongest drop first. */
  readonly singles: readonly Term[];
  /** The same for the hot loop, four numbers a vial: g, w, 1/(2g²), most. */
  readonly flat: Float64Array;
  /** Pairs of vials that may give together, stronger drop first. */
  readonly pairs: readonly (readonly [Term, Term])[];
}

/** What is added to a line. */
interface Added {
  a: Term | null;
  na: number;
  b: Term | null;
  nb: number;
}

/** What was chosen for a line, and where it lies; lo, hi and rho in mg per part. Overwritten in place: search is hot. */
export interface Choice extends Added {
  /** All drops of the line, those already counted too. */
  drops: number;
  rho: number;
  lo: number;
  hi: number;
}

/** One way to fill a line, with what it uses of each cap: drops first, then the capped masses (mg). */
export interface Option {
  readonly choice: Choice;
  readonly uses: readonly number[];
}

/** mg per part. */
export interface Window {
  low: number;
  high: number;
}

/** Relative widening of every window, far below the margin of search, so that rounding of doubles loses no candidate. */
const WINDOW_SLACK = 1e-13;

/** A choice of nothing yet. */
export function noChoice(): Choice {
  return { a: null, na: 0, b: null, nb: 0, drops: 0, rho: 0, lo: 0, hi: 0 };
}

/**
 * Writes the line's fewest drops in the window into `out`, and says whether there are any. Lemmas 1 and 2.
 * Where they lie is left to `place`: most draws fail at a later line.
 */
export function fewestInWindow(line: Line, window: Window, out: Choice): boolean {
  const low = window.low * (1 - WINDOW_SLACK);
  const high = window.high * (1 + WINDOW_SLACK);
  const { rho, variance, need, flat } = line;
  if (need === 0 && rho - Math.sqrt(variance) >= low && rho + Math.sqrt(variance) <= high)
    return choose(line, out, { a: null, na: 0, b: null, nb: 0 });
  const c = low - rho;
  const bare = c + Math.sqrt(variance) <= 0; // already above low
  let best = Infinity;
  let term = -1;
  for (let at = 0, k = 0; at < flat.length; at += 4, k++) {
    const g = flat[at]!;
    const w = flat[at + 1]!;
    if (c >= best * g) break; // weaker drops need at least c/g of them
    const root = bare ? 0 : 2 * g * c + w + Math.sqrt(w * (w + 4 * g * c) + 4 * g * g * variance);
    let n = Math.ceil(root * flat[at + 2]!);
    if (n < need) n = need;
    if (n >= best || n > flat[at + 3]!) continue;
    if (rho + n * g + Math.sqrt(variance + n * w) > high) continue;
    best = n;
    term = k;
  }
  if (term >= 0) choose(line, out, { a: line.singles[term]!, na: best, b: null, nb: 0 });
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
    choose(line, out, { a, na, b, nb });
  }
  return best;
}

/**
 * The ways to fill a line in a window that can matter: within `most` drops (those counted too) all of them; without it only
 * the smallest count of each vial, which is all that caps can ask for (Lemma 2).
 */
export function waysToFill(line: Line, window: Window, most?: number): Option[] {
  const low = window.low * (1 - WINDOW_SLACK);
  const high = window.high * (1 + WINDOW_SLACK);
  const spare = most === undefined ? Infinity : most - line.drops;
  const ways: Option[] = [];
  const offer = (pick: Added) => {
    const way = wayTo(line, pick);
    if (way.choice.lo >= low && way.choice.hi <= high) ways.push(way);
  };
  const last = (from: number, left: number) => (most === undefined ? from : left);
  if (line.need === 0) offer({ a: null, na: 0, b: null, nb: 0 });
  for (const a of line.singles) {
    const from = Math.max(1, line.need, smallestCount(a, low, line));
    for (let na = from; na <= Math.min(last(from, spare), a.most); na++) offer({ a, na, b: null, nb: 0 });
  }
  for (const [a, b] of line.pairs)
    for (let na = 1; na <= Math.min(spare - 1, a.most) && line.rho + na * a.g <= high; na++) {
      const at = { rho: line.rho + na * a.g, variance: line.variance + na * a.w };
      const from = Math.max(1, line.need - na, smallestCount(b, low, at));
      for (let nb = from; nb <= Math.min(last(from, spare - na), b.most); nb++) offer({ a, na, b, nb });
    }
  return ways;
}

/** Smallest whole n ≥ 0 of a vial, on top of (rho, variance), with lo ≥ low (mg per part). Lemma 2. */
function smallestCount({ g, w }: Term, low: number, at: { rho: number; variance: number }): number {
  const c = low - at.rho;
  if (c + Math.sqrt(at.variance) <= 0) return 0;
  return Math.ceil((2 * g * c + w + Math.sqrt(w * (w + 4 * g * c) + 4 * g * g * at.variance)) / (2 * g * g));
}

function wayTo(line: Line, pick: Added): Option {
  const { a, na, b, nb } = pick;
  const choice = { ...noChoice(), ...pick, drops: line.drops + na + nb };
  place(line, choice);
  const some = a ?? line.singles[0] ?? line.pairs[0]?.[0]; // tells how many masses are capped
  const masses = (some?.costs ?? []).map((_, at) => na * (a?.costs[at] ?? 0) + nb * (b?.costs[at] ?? 0));
  return { choice, uses: [choice.drops, ...masses] };
}

/** Writes a choice, without its place; true. */
function choose(line: Line, out: Choice, { a, na, b, nb }: Added): true {
  out.a = a;
  out.na = na;
  out.b = b;
  out.nb = nb;
  out.drops = line.drops + na + nb;
  return true;
}

/** Works out where a choice lies, from what is already in the line and what is added. */
export function place(line: Line, out: Choice): void {
  const { a, na, b, nb } = out;
  const rho = line.rho + (a ? na * a.g : 0) + (b ? nb * b.g : 0);
  const sd = Math.sqrt(line.variance + (a ? na * a.w : 0) + (b ? nb * b.w : 0));
  out.rho = rho;
  out.lo = rho - sd;
  out.hi = rho + sd;
}
