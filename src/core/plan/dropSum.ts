import { massOf } from './dropCaps';
import type { Options } from './dropOptions';
import type { Found } from './dropSearch';
import type { Problem } from './dropTerms';

/** A search for the smallest weighted sum, as far as it has come. */
export interface SumSearch {
  readonly problem: Problem;
  readonly options: Options;
  readonly lines: number;
  readonly cap: number;
  readonly costs: Float64Array;
  best: Found | null;
  /** Only sums below this are of interest. */
  target: number;
}

const MARGIN = 1e-11; // sums nearer than this, relative to 1 + sum, are equal

/**
 * Takes the plan that solved the priced problem, if it keeps the limits and is better at its own best scale.
 * `picked`: whole numbers, the place of each line's option, −1 for none. Our own; Lemma 4 of dropWeighted.
 */
export function tryPlan(search: SumSearch, picked: Iterable<number>): void {
  const { problem, options, cap } = search;
  const picks = [...picked];
  if (picks.includes(-1)) return; // a line has no option
  const drops = picks.reduce((sum, o) => sum + options.drops[o]!, 0);
  const choices = picks.map((o) => options.choices[o]!);
  if (drops > cap || problem.caps.some((most, at) => massOf(choices, at) > most)) return;
  const { scale, error } = sumAtBest(problem, choices);
  const margin = MARGIN * (1 + error);
  if (error >= search.target || (search.best && error > search.best.error - margin && drops >= search.best.drops))
    return;
  search.target = error + margin; // equal sums stay of interest: they may have fewer drops
  const low = Math.min(...choices.map(({ lo }) => lo));
  search.best = { choices, low, high: Math.max(...choices.map(({ hi }) => hi)), scale, error, drops };
}

function sumAtBest(problem: Problem, choices: Found['choices']): { scale: number; error: number } {
  const { lines, scaleMin, scaleMax } = problem;
  let best = { scale: NaN, error: Infinity };
  for (const { rho } of choices) {
    const scale = Math.min(scaleMax, Math.max(scaleMin, rho));
    const error = choices.reduce(
      (sum, choice, at) =>
        sum + lines[at]!.weight * (Math.abs(choice.rho / scale - 1) + (choice.hi - choice.lo) / 2 / scale),
      0,
    );
    if (error < best.error) best = { scale, error };
  }
  return best;
}
