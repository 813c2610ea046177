import { fewestInWindow, noChoice, place, waysToFill, type Choice, type Line, type Option, type Window } from './line';

/**
 * Draws plans of a problem inside a window, or says that there are none.
 *
 * One cap (drops): the lines' fewest drops, summed (Lemma 1). Lines that failed last are asked first, which only saves time.
 * More caps (mass, solvents): a multiple-choice knapsack. Every cap grows with every drop, so per vial only the smallest
 * count in the window can be needed, per pair the smallest of the weaker for each of the stronger (Lemma 2). Sums of
 * the lines' minima refute most windows; a depth-first search cut by the minima of the lines still to come settles the rest.
 */
export interface Drawer {
  /** Overwritten by each draw that fits; order of the problem's lines. */
  readonly choices: Choice[];
  /** Draws any plan of at most `cap` drops; low and high in mg per part. */
  fits(low: number, high: number, cap: number): boolean;
  /** Of all plans in the window with at most `cap` drops, the one whose lines are nearest to their target at this scale. */
  nearest(window: Window, scale: number, cap: number): Choice[] | null;
  /** Between which ends the lowest line of a plan of at most `cap` drops can lie, mg per part. */
  ends(cap: number): [number, number];
  /** Why no plan has at most `cap` drops. */
  shortage(cap: number): Shortage;
}

/** Why there is no plan: vials give too little, a line is finished without a drop, or caps are too small. */
export type Shortage =
  | { readonly short: 'vials' | 'finished'; readonly componentId: string }
  /** Cap `at` (0: drops, then the masses) leaves too little (drops or mg); `besides`: only as the other caps are kept too. */
  | {
      readonly short: 'cap';
      readonly at: number;
      readonly need: number;
      readonly left: number;
      readonly besides: boolean;
    }
  | { readonly short: 'together' };

/** A drawer for these lines under caps of mass (mg). Our own; why it misses nothing stands at {@link Drawer}. */
export function drawer(lines: readonly Line[], masses: readonly number[]): Drawer {
  const choices = lines.map(noChoice);
  const separate = fewestOfEach(lines, choices); // a bound where masses are capped, and often it keeps their caps
  const together: Drawer['fits'] = (low, high, cap) => {
    if (!separate(low, high, cap)) return false;
    if (masses.every((most, at) => massOf(choices, at) <= most)) return true;
    const lists = lines.map((line) => undominated(waysToFill(line, { low, high })));
    const picked = cheapestPick(lists, [cap, ...masses], () => 0);
    picked?.forEach(({ choice }, at) => Object.assign(choices[at]!, choice));
    return picked !== null;
  };
  return {
    choices,
    fits: masses.length === 0 ? separate : together,
    nearest: (window, scale, cap) => nearestOf(lines, [cap, ...masses], { window, scale }),
    ends: (cap) => endsOf(lines, cap),
    shortage: (cap) => shortageOf(lines, [cap, ...masses]),
  };
}

/** Draws each line's fewest drops in the window. */
function fewestOfEach(lines: readonly Line[], choices: Choice[]): Drawer['fits'] {
  const order = lines.map((_, at) => at);
  const least = lines.map(({ drops, need }) => drops + need);
  const leastOfAll = least.reduce((sum, n) => sum + n, 0);
  const window = { low: 0, high: 0 };
  return (low, high, cap) => {
    window.low = low;
    window.high = high;
    let total = leastOfAll;
    for (let k = 0; k < order.length; k++) {
      const at = order[k]!;
      if (!fewestInWindow(lines[at]!, window, choices[at]!)) {
        order.copyWithin(1, 0, k);
        order[0] = at;
        return false;
      }
      total += choices[at]!.drops - least[at]!;
      if (total > cap) return false;
    }
    for (let at = 0; at < choices.length; at++) place(lines[at]!, choices[at]!);
    return true;
  };
}

/** What a plan takes of a capped mass, mg. Arithmetic. */
function massOf(choices: readonly Choice[], at: number): number {
  let mg = 0;
  for (const { a, na, b, nb } of choices) mg += na * (a?.costs[at] ?? 0) + nb * (b?.costs[at] ?? 0);
  return mg;
}

function undominated(options: Option[]): Option[] {
  options.sort((one, two) => one.uses[0]! - two.uses[0]!);
  const kept: Option[] = [];
  for (const option of options)
    if (!kept.some(({ uses }) => uses.every((use, at) => use <= option.uses[at]!))) kept.push(option);
  return kept;
}

/** Smallest sum of |ρ/s − 1|: a small knapsack over the lines' ways. Null where the window's rounded edge leaves none. */
function nearestOf(
  lines: readonly Line[],
  caps: readonly number[],
  at: { window: Window; scale: number },
): Choice[] | null {
  const scratch = noChoice();
  const least = lines.map((line) => (fewestInWindow(line, at.window, scratch) ? scratch.drops : Infinity));
  const spare = caps[0]! - least.reduce((sum, n) => sum + n, 0);
  if (!(spare >= 0)) return null;
  const distance = ({ choice }: Option) => Math.abs(choice.rho / at.scale - 1);
  const lists = lines.map((line, k) =>
    waysToFill(line, at.window, least[k]! + spare).sort((one, two) => distance(one) - distance(two)),
  );
  return cheapestPick(lists, caps, distance)?.map(({ choice }) => choice) ?? null;
}

/** No line can be below its first drop, and the highest L is the lowest of the lines' tops. */
function endsOf(lines: readonly Line[], cap: number): [number, number] {
  let bottom = Infinity;
  let top = Infinity;
  const spare = cap - lines.reduce((sum, { drops, need }) => sum + drops + need, 0);
  for (const { rho, variance, need, drops, singles, pairs } of lines) {
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

/** Which of the caps (drops, then mg) leaves these lines no plan at all, and how far it must be raised. */
function shortageOf(lines: readonly Line[], caps: readonly number[]): Shortage {
  const lists = lines.map((line) => waysToFill(line, { low: 0, high: Infinity })); // a window that no line can miss
  const dry = lists.findIndex((list) => list.length === 0);
  if (dry >= 0) return { short: 'vials', componentId: lines[dry]!.componentId };
  const least = (at: number) => lists.reduce((sum, list) => sum + Math.min(...list.map(({ uses }) => uses[at]!)), 0);
  const alone = caps.findIndex((cap, at) => cap < least(at));
  if (alone >= 0) return { short: 'cap', at: alone, need: least(alone), left: caps[alone]!, besides: false };
  const empty = lines.find((line) => line.drops + line.need === 0);
  if (empty && cheapestPick(lists, caps, () => 0)) return { short: 'finished', componentId: empty.componentId };
  for (let at = caps.length - 1; at >= 0; at--) {
    const picked = cheapestPick(lists, caps.with(at, Infinity), ({ uses }) => uses[at]!);
    const need = picked?.reduce((sum, { uses }) => sum + uses[at]!, 0);
    if (need !== undefined) return { short: 'cap', at, need, left: caps[at]!, besides: true };
  }
  return { short: 'together' };
}

/**
 * One option a line, within all caps, with the smallest sum of costs; null where nothing fits. Each cap in the unit of its
 * uses. Our own: depth first, exact.
 */
function cheapestPick(
  lists: readonly (readonly Option[])[],
  caps: readonly number[],
  cost: (option: Option) => number,
): Option[] | null {
  const order = lists.map((_, at) => at).sort((one, two) => lists[one]!.length - lists[two]!.length);
  const measures = [...caps.map((_, r) => (option: Option) => option.uses[r] ?? 0), cost];
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
  if (rest[0]!.some((sum, r) => sum > limits[r]!)) return null;
  descend(
    0,
    limits.map(() => 0),
  );
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
