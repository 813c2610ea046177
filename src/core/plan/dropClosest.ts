import { cheapestPick, optionOf, type Option } from './dropCaps';
import { errorBetween } from './dropScale';
import { fewestDrops, hunt, noWorseThan, type Found } from './dropSearch';
import type { Line, Problem } from './dropTerms';
import { fewestInWindow, noChoice, smallestCount, WINDOW_SLACK } from './dropWindow';

/**
 * Second and third key in one hunt: of all plans of the smallest error, the fewest drops; of these, one whose lines are
 * nearest to their wish (smallest sum of |ρ/s − 1|).
 *
 * Our own. Proof: plans of equal error e and equal L share their best scale s, hence lie in one window [s(1−e), s(1+e)], and
 * every plan in that window is one of them. The hunt meets every such window once; inside, the lines' options are a small
 * knapsack, whose drops are settled beforehand: the fewest of each line, when drops are all that is capped.
 */
export function closest(problem: Problem, found: Found): Found {
  const target = noWorseThan(found.error);
  let best = problem.caps.length > 0 ? fewestDrops(problem, found) : found; // a knapsack draws any plan, not the fewest drops
  let bestSum = Infinity;
  hunt(problem, {
    target,
    cap: best.drops,
    take(other) {
      if (other.drops < best.drops) {
        [best, bestSum] = [other, Infinity];
        this.cap = other.drops;
      }
      const nearest = nearestInWindow(problem, other, target);
      const sum = distance(nearest);
      if (sum < bestSum - 1e-12) [best, bestSum] = [nearest, sum];
      return other.scale < problem.scaleMax
        ? [Math.min(other.low, (other.high * (1 - target)) / (1 + target)), other.low] // below, its top line falls out
        : [Math.min(other.low, problem.scaleMax * (1 - target)), Infinity]; // all these are best at the same end
    },
  });
  return best;
}

/** Sum of the lines' |relative rounding error| at the plan's best scale. */
function distance({ choices, scale }: Found): number {
  return choices.reduce((sum, { rho }) => sum + Math.abs(rho / scale - 1), 0);
}

function nearestInWindow(problem: Problem, found: Found, target: number): Found {
  const { scale, drops } = found;
  const window = { low: scale * (1 - target), high: scale * (1 + target) };
  const scratch = noChoice();
  const least = problem.lines.map((line) => (fewestInWindow(line, window, scratch) ? scratch.drops : Infinity));
  const spare = drops - least.reduce((sum, n) => sum + n, 0);
  if (!(spare >= 0)) return found; // the window's edge is rounded: what was found stands
  const lists = problem.lines.map((line, at) =>
    optionsInWindow(line, { ...window, drops: least[at]! + spare }, scale).sort((one, two) => one.cost - two.cost),
  );
  const picked = cheapestPick(lists, [drops, ...problem.caps]);
  if (!picked) return found;
  const choices = picked.map(({ choice }) => choice);
  const low = Math.min(...choices.map(({ lo }) => lo));
  const high = Math.max(...choices.map(({ hi }) => hi));
  const total = choices.reduce((sum, choice) => sum + choice.drops, 0);
  return { choices, low, high, drops: total, ...errorBetween(problem, low, high) };
}

/** Every way to fill a line in a window (mg per part) with at most so many drops; cost |ρ/s − 1|. */
function optionsInWindow(line: Line, within: { low: number; high: number; drops: number }, scale: number): Option[] {
  const low = within.low * (1 - WINDOW_SLACK);
  const high = within.high * (1 + WINDOW_SLACK);
  const most = within.drops - line.drops;
  const options: Option[] = [];
  const offer = (pick: Parameters<typeof optionOf>[1]) => {
    const { rho, lo, hi } = optionOf(line, pick).choice;
    if (lo >= low && hi <= high) options.push(optionOf(line, pick, Math.abs(rho / scale - 1)));
  };
  if (line.need === 0) offer({ a: null, na: 0, b: null, nb: 0 });
  for (const a of line.singles)
    for (let na = Math.max(1, line.need, smallestCount(a, low, line)); na <= Math.min(most, a.most); na++)
      offer({ a, na, b: null, nb: 0 });
  for (const [a, b] of line.pairs)
    for (let na = 1; na <= Math.min(most - 1, a.most) && line.rho + na * a.g <= high; na++) {
      const at = { rho: line.rho + na * a.g, variance: line.variance + na * a.w };
      const from = Math.max(1, line.need - na, smallestCount(b, low, at));
      for (let nb = from; nb <= Math.min(most - na, b.most); nb++) offer({ a, na, b, nb });
    }
  return options;
}
