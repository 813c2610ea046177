import type { Shortage } from './draw';
import type { Choice } from './line';
import type { Problem } from './problem';

/**
 * Smallest worst error over all whole-drop plans; our own, proved by branch and bound on one number.
 *
 * L and U are the smallest lo and largest hi of a plan's lines (mg per part). At scale s the worst error is
 * max(U/s − 1, 1 − L/s), least at s = (L+U)/2 clamped to the scale's range; at free scale it is (U−L)/(U+L).
 *
 * Lemma 3 (window). A plan with smallest lo L has an error ≤ e iff U ≤ top(L, e) = (1+e) · min(scaleMax, L/(1−e)) and
 * L/(1−e) ≥ scaleMin: s must be at least U/(1+e), at most L/(1−e), and in its range. top increases in L and in e.
 *
 * Hence for a node [l1, l2]: every plan with its L in the node and an error ≤ e lies in the window [l1, top(l2, e)].
 * Window empty: nothing in the node, it is closed. Window filled by a plan that reaches e: that plan is the new best, e
 * falls below it, same node again. Filled by a plan p with a larger error (then L(p) < l2): the node is cut in two, in
 * the middle while wide, at L(p) when narrow. There p is in neither half: below, as U(p) > top(L(p), e); above, as its
 * lowest line falls out. Every cut at L(p) thus excludes one of finitely many options, so the search ends, and what it
 * keeps is the optimum, to the margin by which "better" is said from equal (1e-11 in the error).
 */

/** Where a plan lies: L and U in mg per part, its best scale, its error there, its drops. */
interface Weight {
  readonly low: number;
  readonly high: number;
  readonly scale: number;
  readonly error: number;
  readonly drops: number;
}

/** A plan as found: its lines in the order of the problem. */
export interface Found extends Weight {
  readonly choices: readonly Readonly<Choice>[];
}

/** Two errors nearer than this, relative to 1 + error, are equal: far above rounding of doubles, far below any hand. */
const ERROR_MARGIN = 1e-11;
const REACH = 1e-12; // how far above its target an error may stand, relative to 1 + target: above rounding of doubles
const NARROW = 1.02; // our choice: nodes wider than 2 % are cut in the middle
const STEP = 4e-13; // from one L to "above it": more than the slack of a window
const SAME = 1e-10; // windows whose L differ by less, relatively, are one window
const SAMPLES = 48; // our choice: scales tried first, for a good start

/**
 * What is hunted: plans of error ≤ target and drops ≤ cap. `take` is given one and tightens target or cap by it; or it
 * answers from which to which L (mg per part) all plans are settled by it.
 */
interface Hunt {
  target: number;
  cap: number;
  take(found: Found): readonly [number, number] | void;
  /** Every plan met on the way, by its drops: a better start for the next hunt. */
  met?: Met;
}

/** Best plan met for each number of drops. */
export type Met = Map<number, Found>;

/**
 * The best plan with at most `cap` drops: smallest error, then fewest drops, then nearest lines; or which limit leaves none.
 * Our own; proof at the head of this file.
 */
export function best(problem: Problem, cap = problem.cap): Found | Shortage {
  const found = smallestError(problem, cap);
  return found ? closest(problem, found) : problem.drawer.shortage(cap);
}

/**
 * The best plan above the limit of drops, up to `most`: with the least cap that brings the error to `asked for` (fraction), else with
 * `most`. Our own: the error falls as the cap rises, so that cap is found by halving.
 */
export function bestAbove(problem: Problem, wished: number, most: number): Found | Shortage {
  const reaches = (cap: number) => (smallestError(problem, cap)?.error ?? Infinity) <= noWorseThan(wished);
  let [low, high] = [problem.cap, most]; // strictly above the limit: within it is `best`
  if (reaches(high))
    while (high - low > 1) reaches((low + high) >> 1) ? (high = (low + high) >> 1) : (low = (low + high) >> 1);
  return best(problem, high);
}

/**
 * The plan of smallest error with at most `cap` drops; null where no plan keeps the limits. It starts from plans `met` before,
 * or from an error (fraction) that it must come `below`. Our own.
 */
export function smallestError(
  problem: Problem,
  cap: number,
  { met, below = Infinity }: { met?: Met; below?: number } = {},
): Found | null {
  let best: Found | null = null;
  for (const found of met?.values() ?? []) if (found.drops <= cap && !(best && found.error >= best.error)) best = found;
  const known = Math.min(below, best?.error ?? Infinity);
  hunt(problem, {
    ...(met && { met }),
    target: known < Infinity ? better(known) : Infinity,
    cap,
    take(found) {
      best = found;
      this.target = better(found.error);
    },
  });
  return best;
}

/** The error that a better plan must reach. */
function better(error: number): number {
  return error - ERROR_MARGIN * (1 + error);
}

/** The error up to which a plan counts as equal, a fraction as the error itself. Our own. */
export function noWorseThan(error: number): number {
  return error + ERROR_MARGIN * (1 + error);
}

/**
 * Second and third key in one hunt: of all plans of the smallest error, the fewest drops; of these, one whose lines are
 * nearest to their target (smallest sum of |ρ/s − 1|).
 *
 * Our own. Proof: plans of equal error e and equal L share their best scale s, hence lie in one window [s(1−e), s(1+e)], and
 * every plan in that window is one of them. The hunt meets every such window once; inside, the lines' options are a small
 * knapsack, whose drops are settled beforehand: the fewest of each line, when drops are all that is capped.
 */
function closest(problem: Problem, found: Found): Found {
  const target = noWorseThan(found.error);
  let best = problem.masses.length > 0 ? fewestDrops(problem, found) : found; // a knapsack draws any plan, not the fewest drops
  let bestSum = Infinity;
  hunt(problem, {
    target,
    cap: best.drops,
    take(other) {
      if (other.drops < best.drops) {
        [best, bestSum] = [other, Infinity];
        this.cap = other.drops;
      }
      const window = { low: other.scale * (1 - target), high: other.scale * (1 + target) };
      const choices = problem.drawer.nearest(window, other.scale, other.drops);
      const nearest = choices ? { choices, ...weigh(problem, choices) } : other;
      const sum = nearest.choices.reduce((off, { rho }) => off + Math.abs(rho / nearest.scale - 1), 0);
      if (sum < bestSum - 1e-12) [best, bestSum] = [nearest, sum];
      return other.scale < problem.scaleMax
        ? [Math.min(other.low, (other.high * (1 - target)) / (1 + target)), other.low] // below, its top line falls out
        : [Math.min(other.low, problem.scaleMax * (1 - target)), Infinity]; // all these are best at the same end
    },
  });
  return best;
}

/** Of all plans no worse than `found`, one with the fewest drops. */
function fewestDrops(problem: Problem, found: Found): Found {
  let best = found;
  hunt(problem, {
    target: noWorseThan(found.error),
    cap: found.drops - 1,
    take(fewer) {
      best = fewer;
      this.cap = fewer.drops - 1;
    },
  });
  return best;
}

/** Runs a hunt over all L; the argument is at the head of this file. */
function hunt(problem: Problem, prey: Hunt): void {
  const [bottom, top] = problem.drawer.ends(prey.cap);
  if (!(bottom <= top)) return;
  if (prey.target === Infinity) sample(problem, prey, [bottom, top]);
  const stack = [top, bottom];
  while (stack.length > 0) {
    const l1 = stack.pop()!;
    const l2 = stack.pop()!;
    node(problem, prey, { l1, l2, stack });
  }
}

/** Tries a row of scales, each until it gives nothing better. Only a start: the search does not rest on it. */
function sample(problem: Problem, prey: Hunt, [bottom, top]: readonly [number, number]): void {
  for (let i = 0; i <= SAMPLES; i++) {
    const low = bottom * (top / bottom) ** (i / SAMPLES);
    for (let found = drawn(problem, prey, [low, low]); found; found = drawn(problem, prey, [low, low])) {
      if (!reaches(found, prey)) break;
      prey.take(keep(problem, found));
    }
  }
}

function node(problem: Problem, prey: Hunt, at: { l1: number; l2: number; stack: number[] }): void {
  const { l2, stack } = at;
  let { l1 } = at;
  for (;;) {
    if (prey.target < 1) l1 = Math.max(l1, problem.scaleMin * (1 - prey.target) * (1 - REACH));
    if (l1 > l2) return;
    const found = drawn(problem, prey, [l1, l2]);
    if (!found) return;
    if (reaches(found, prey)) {
      const settled = prey.take(keep(problem, found));
      if (!settled) continue;
      stack.push(l2, Math.max(l1, settled[1] * (1 + SAME)), Math.min(l2, settled[0] * (1 - SAME)), l1);
      return;
    }
    if (l2 > l1 * NARROW) {
      const middle = Math.sqrt(l1 * l2);
      stack.push(middle, l1, l2, middle);
    } else {
      const above = found.low * (1 + STEP);
      if (above <= l2) stack.push(l2, above);
      stack.push(Math.min(found.low, l2), l1);
    }
    return;
  }
}

/** Draws a plan with its L between these two into the drawer, and weighs it; null where there is none. */
function drawn(problem: Problem, prey: Hunt, [l1, l2]: readonly [number, number]): Weight | null {
  if (!problem.drawer.fits(l1, topOf(problem, l2, prey.target), prey.cap)) return null;
  const found = weigh(problem, problem.drawer.choices);
  const known = prey.met?.get(found.drops);
  if (!known || found.error < known.error) prey.met?.set(found.drops, keep(problem, found));
  return found;
}

/** Largest U that a plan with this L may have at an error ≤ e; mg per part, e a share. Lemma 3. Below L when no scale fits. */
function topOf({ scaleMin, scaleMax }: Problem, low: number, e: number): number {
  if (e >= 1) return (1 + e) * scaleMax;
  const scale = low / (1 - e);
  return scale * (1 + REACH) < scaleMin ? 0 : (1 + e) * Math.min(scaleMax, scale);
}

function weigh({ scaleMin, scaleMax }: Problem, choices: readonly Choice[]): Weight {
  let low = Infinity;
  let high = 0;
  let drops = 0;
  for (const choice of choices) {
    if (choice.lo < low) low = choice.lo;
    if (choice.hi > high) high = choice.hi;
    drops += choice.drops;
  }
  const scale = Math.min(scaleMax, Math.max(scaleMin, (low + high) / 2));
  return { low, high, scale, error: Math.max(high / scale - 1, 1 - low / scale), drops };
}

function reaches({ error, drops }: Weight, { target, cap }: Hunt): boolean {
  return error <= target + REACH * (1 + target) && drops <= cap;
}

function keep({ drawer }: Problem, found: Weight): Found {
  return { ...found, choices: drawer.choices.map((choice) => ({ ...choice })) };
}
