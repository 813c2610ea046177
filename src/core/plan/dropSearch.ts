import { drawer, type Drawer } from './dropCaps';
import { errorBetween, REACH, topOf } from './dropScale';
import type { Problem } from './dropTerms';
import type { Choice } from './dropWindow';

/**
 * Smallest worst error over all whole-drop plans; our own, proved by branch and bound on one number.
 *
 * L and U are the smallest lo and largest hi of a plan's lines (dropWindow), top(L, e) the largest U that an error ≤ e leaves
 * beside L (dropScale, Lemma 3).
 *
 * Hence for a node [l1, l2]: every plan with its L in the node and an error ≤ e lies in the window [l1, top(l2, e)].
 * Window empty: nothing in the node, it is closed. Window filled by a plan that reaches e: that plan is the new best, e
 * falls below it, same node again. Filled by a plan p with a larger error (then L(p) < l2): the node is cut in two, in
 * the middle while wide, at L(p) when narrow. There p is in neither half: below, as U(p) > top(L(p), e); above, as its
 * lowest line falls out. Every cut at L(p) thus excludes one of finitely many options, so the search ends, and what it
 * keeps is the optimum, to the margin by which "better" is told from equal (1e-11 in the error).
 */

/** A plan as found: its lines in the order of the problem, L and U in mg per part, its error and drops. */
export interface Found {
  readonly choices: readonly Readonly<Choice>[];
  readonly low: number;
  readonly high: number;
  readonly scale: number;
  readonly error: number;
  readonly drops: number;
}

/** Two errors nearer than this, relative to 1 + error, are equal: far above rounding of doubles, far below any hand. */
const ERROR_MARGIN = 1e-11;
const NARROW = 1.02; // our choice: nodes wider than 2 % are cut in the middle
const STEP = 4e-13; // from one L to "above it": more than the slack of a window
const SAME = 1e-10; // windows whose L differ by less, relatively, are one window
const SAMPLES = 48; // our choice: scales tried first, for a good start

/**
 * What is hunted: plans of error ≤ target and drops ≤ cap. `take` is given one and tightens target or cap by it; or it
 * answers from which to which L (mg per part) all plans are settled by it.
 */
export interface Hunt {
  target: number;
  cap: number;
  take(found: Found): readonly [number, number] | void;
  /** Every plan met on the way, by its drops: a better start for the next hunt. */
  met?: Met;
}

/** Best plan met for each number of drops. */
export type Met = Map<number, Found>;

/** The error that a better plan must reach. */
function better(error: number): number {
  return error - ERROR_MARGIN * (1 + error);
}

/** Where a search starts from: plans met before, or an error that must be beaten. */
export interface Start {
  readonly met?: Met;
  readonly below?: number;
}

/** The plan of smallest error with at most `cap` drops; null where no plan keeps the limits (or beats `below`). */
export function smallestError(problem: Problem, cap: number, { met, below = Infinity }: Start = {}): Found | null {
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

/** The error up to which a plan counts as equal. */
export function noWorseThan(error: number): number {
  return error + ERROR_MARGIN * (1 + error);
}

/** Of all plans no worse than `found`, one with the fewest drops. */
export function fewestDrops(problem: Problem, found: Found): Found {
  let best = found;
  hunt(problem, {
    target: noWorseThan(found.error),
    cap: found.drops - 1,
    take(better) {
      best = better;
      this.cap = better.drops - 1;
    },
  });
  return best;
}

/** Runs a hunt over all L; the argument is at the head of this file. */
export function hunt(problem: Problem, prey: Hunt): void {
  const draw = drawer(problem);
  const [bottom, top] = ends(problem, prey.cap);
  if (!(bottom <= top)) return;
  if (prey.target === Infinity) sample(problem, draw, { prey, bottom, top });
  const stack = [top, bottom];
  while (stack.length > 0) {
    const l1 = stack.pop()!;
    const l2 = stack.pop()!;
    node(problem, draw, { prey, l1, l2, stack });
  }
}

/** Tries a row of scales, each until it gives nothing better. Only a start: the search does not rest on it. */
function sample(problem: Problem, draw: Drawer, at: { prey: Hunt; bottom: number; top: number }): void {
  const { prey, bottom, top } = at;
  for (let i = 0; i <= SAMPLES; i++) {
    const low = bottom * (top / bottom) ** (i / SAMPLES);
    while (draw.fits(low, topOf(problem, low, prey.target), prey.cap)) {
      const found = weigh(problem, draw);
      if (prey.met) remember(prey.met, draw, found);
      if (!reaches(found, prey)) break;
      prey.take(keep(draw, found));
    }
  }
}

function node(problem: Problem, draw: Drawer, at: { prey: Hunt; l1: number; l2: number; stack: number[] }): void {
  const { prey, l2, stack } = at;
  let { l1 } = at;
  for (;;) {
    if (prey.target < 1) l1 = Math.max(l1, problem.scaleMin * (1 - prey.target) * (1 - REACH));
    if (l1 > l2) return;
    if (!draw.fits(l1, topOf(problem, l2, prey.target), prey.cap)) return;
    const found = weigh(problem, draw);
    if (prey.met) remember(prey.met, draw, found);
    if (reaches(found, prey)) {
      const settled = prey.take(keep(draw, found));
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

function reaches(found: Omit<Found, 'choices'>, prey: Hunt): boolean {
  return found.error <= prey.target + REACH * (1 + prey.target) && found.drops <= prey.cap;
}

/** L, U, error and drops of what was just drawn. */
function weigh(problem: Problem, draw: Drawer): Omit<Found, 'choices'> {
  let low = Infinity;
  let high = 0;
  let drops = 0;
  for (const choice of draw.choices) {
    if (choice.lo < low) low = choice.lo;
    if (choice.hi > high) high = choice.hi;
    drops += choice.drops;
  }
  return { low, high, drops, ...errorBetween(problem, low, high) };
}

function keep(draw: Drawer, found: Omit<Found, 'choices'>): Found {
  return { ...found, choices: draw.choices.map((choice) => ({ ...choice })) };
}

/** Between which ends L can lie: no line can be below its first drop, and the highest L is the lowest of the lines' tops. */
function ends(problem: Problem, cap: number): [number, number] {
  let bottom = Infinity;
  let top = Infinity;
  const spare = cap - problem.lines.reduce((sum, { drops, need }) => sum + drops + need, 0);
  for (const { rho, variance, need, drops, singles, pairs } of problem.lines) {
    const terms = [...singles, ...pairs.flat()];
    let most = rho;
    for (const { g, w } of terms) {
      bottom = Math.min(bottom, rho + g - Math.sqrt(variance + w));
      most = Math.max(most, rho + g * Math.max(0, spare + need));
    }
    if (drops > 0) bottom = Math.min(bottom, rho - Math.sqrt(variance));
    top = Math.min(top, most);
  }
  return [bottom, top];
}

function remember(met: Met, draw: Drawer, found: Omit<Found, 'choices'>): void {
  const known = met.get(found.drops);
  if (!known || found.error < known.error) met.set(found.drops, keep(draw, found));
}
