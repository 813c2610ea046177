import type { Line, Problem, Term } from './dropTerms';
import { fewestInWindow, noChoice, place, smallestCount, WINDOW_SLACK, type Choice } from './dropWindow';

/**
 * Draws a plan inside a window under the caps, or says that there is none.
 *
 * One cap (drops): the lines' fewest drops, summed (Lemma 1). Lines that failed last are asked first, which only saves time.
 * More caps (mass, solvents): a multiple-choice knapsack. Every cap grows with every drop, so per vial only the smallest
 * count in the window can be needed, per pair the smallest of the weaker for each of the stronger (Lemma 2). Sums of
 * the lines' minima refute most windows; a depth-first search cut by the minima of the lines still to come settles the rest.
 */
export interface Drawer {
  /** Overwritten by each draw that fits; order of the problem's lines. */
  readonly choices: Choice[];
  /** low and high in mg per part, cap in drops. */
  fits(low: number, high: number, cap: number): boolean;
}

/** A drawer for this problem. Our own; why it misses nothing stands at {@link Drawer}. */
export function drawer(problem: Problem): Drawer {
  return problem.caps.length === 0 ? dropDrawer(problem) : knapsackDrawer(problem);
}

function dropDrawer(problem: Problem): Drawer {
  const choices = problem.lines.map(noChoice);
  const order = problem.lines.map((_, at) => at);
  const least = problem.lines.map(({ drops, need }) => drops + need);
  const leastOfAll = least.reduce((sum, n) => sum + n, 0);
  const window = { low: 0, high: 0 };
  return {
    choices,
    fits(low, high, cap) {
      window.low = low;
      window.high = high;
      let total = leastOfAll;
      for (let k = 0; k < order.length; k++) {
        const at = order[k]!;
        if (!fewestInWindow(problem.lines[at]!, window, choices[at]!)) {
          order.copyWithin(1, 0, k);
          order[0] = at;
          return false;
        }
        total += choices[at]!.drops - least[at]!;
        if (total > cap) return false;
      }
      for (let at = 0; at < choices.length; at++) place(problem.lines[at]!, choices[at]!);
      return true;
    },
  };
}

/** One way to fill a line, as the knapsack sees it: drops first, then the capped masses. `cost` is what is minimised. */
export interface Option {
  readonly choice: Choice;
  readonly uses: readonly number[];
  readonly cost: number;
}

function knapsackDrawer(problem: Problem): Drawer {
  const separate = dropDrawer(problem); // its fewest drops are a bound, and often keep the other caps as they are
  const { choices } = separate;
  return {
    choices,
    fits(low, high, cap) {
      if (!separate.fits(low, high, cap)) return false;
      if (problem.caps.every((most, at) => massOf(choices, at) <= most)) return true;
      const lists = problem.lines.map((line) => undominated(smallestOptions(line, { low, high })));
      const picked = cheapestPick(lists, [cap, ...problem.caps]);
      picked?.forEach(({ choice }, at) => Object.assign(choices[at]!, choice));
      return picked !== null;
    },
  };
}

/** What a plan takes of a capped mass, mg. Arithmetic. */
function massOf(choices: readonly Choice[], at: number): number {
  let mg = 0;
  for (const { a, na, b, nb } of choices) mg += na * (a?.costs[at] ?? 0) + nb * (b?.costs[at] ?? 0);
  return mg;
}

/** All options of a line that can matter to the caps in a window, mg per part (Lemma 2). */
export function smallestOptions(line: Line, window: { low: number; high: number }): Option[] {
  const low = window.low * (1 - WINDOW_SLACK);
  const high = window.high * (1 + WINDOW_SLACK);
  const options: Option[] = [];
  const offer = (a: Term | null, na: number, b: Term | null, nb: number) => {
    const option = optionOf(line, { a, na, b, nb });
    if (option.choice.lo >= low && option.choice.hi <= high) options.push(option);
  };
  if (line.need === 0) offer(null, 0, null, 0);
  for (const term of line.singles) {
    const n = Math.max(line.need, 1, smallestCount(term, low, line));
    if (n <= term.most) offer(term, n, null, 0);
  }
  for (const [a, b] of line.pairs)
    for (let na = 1; na <= a.most && line.rho + na * a.g <= high; na++) {
      const at = { rho: line.rho + na * a.g, variance: line.variance + na * a.w };
      const nb = Math.max(1, line.need - na, smallestCount(b, low, at));
      if (nb <= b.most) offer(a, na, b, nb);
    }
  return options;
}

/** A way to fill a line, with its place (mg per part) and uses (drops, mg). Arithmetic. */
export function optionOf(line: Line, pick: Pick<Choice, 'a' | 'na' | 'b' | 'nb'>, cost = 0): Option {
  const choice = { ...noChoice(), ...pick, drops: line.drops + pick.na + pick.nb };
  place(line, choice);
  const some = pick.a ?? pick.b ?? line.singles[0] ?? line.pairs[0]?.[0];
  const masses = (some?.costs ?? []).map(
    (_, at) => pick.na * (pick.a?.costs[at] ?? 0) + pick.nb * (pick.b?.costs[at] ?? 0),
  );
  return { choice, uses: [choice.drops, ...masses], cost };
}

function undominated(options: Option[]): Option[] {
  options.sort((one, two) => one.uses[0]! - two.uses[0]!);
  const kept: Option[] = [];
  for (const option of options)
    if (!kept.some(({ uses }) => uses.every((use, at) => use <= option.uses[at]!))) kept.push(option);
  return kept;
}

/**
 * One option a line, within all caps, with the smallest sum of costs; null where nothing fits. Each cap in the unit of its
 * uses. Our own: depth first, exact.
 */
export function cheapestPick(lists: readonly (readonly Option[])[], caps: readonly number[]): Option[] | null {
  const order = lists.map((_, at) => at).sort((one, two) => lists[one]!.length - lists[two]!.length);
  const measures = [...caps.map((_, r) => (option: Option) => option.uses[r] ?? 0), ({ cost }: Option) => cost];
  const rest = restMinima(
    order.map((at) => lists[at]!),
    measures,
  );
  const limits = [...caps, Infinity];
  const path: Option[] = [];
  let best: Option[] | null = null;
  const descend = (k: number, used: readonly number[]): boolean => {
    if (k === order.length) {
      best = [...path];
      limits[caps.length] = used[caps.length]!;
      return used[caps.length] === rest[0]![caps.length]; // nothing can be cheaper
    }
    for (const option of lists[order[k]!]!) {
      const now = used.map((sum, r) => sum + measures[r]!(option));
      const fits = now.every((sum, r) => sum + rest[k + 1]![r]! <= limits[r]!);
      if (!fits || (best && now[caps.length]! + rest[k + 1]![caps.length]! >= limits[caps.length]!)) continue;
      path[k] = option;
      if (descend(k + 1, now)) return true;
    }
    return false;
  };
  const none = limits.map(() => 0);
  if (rest[0]!.some((sum, r) => sum > limits[r]!)) return null;
  descend(0, none);
  const found = best as Option[] | null;
  return found && lists.map((_, at) => found[order.indexOf(at)]!);
}

/** rest[k][r]: least use of measure r by the lines from k on. */
function restMinima(
  lists: readonly (readonly Option[])[],
  measures: readonly ((option: Option) => number)[],
): number[][] {
  const rest = [measures.map(() => 0)];
  for (const list of [...lists].reverse()) {
    const after = rest[0]!;
    rest.unshift(
      measures.map((measure, r) => after[r]! + list.reduce((least, o) => Math.min(least, measure(o)), Infinity)),
    );
  }
  return rest;
}
