import type { Problem } from './dropTerms';
import { place, type Choice } from './dropWindow';

/**
 * Every way to fill every line, as columns: the weighted sum needs more than the smallest count of a vial, since a count
 * too small for the wish may still be worth its saved drops.
 */
export interface Options {
  /** mg per part, ascending. */
  readonly rho: Float64Array;
  /** z · sd, mg per part. */
  readonly spread: Float64Array;
  readonly drops: Int32Array;
  /** Which line of the problem each option fills. */
  readonly line: Int32Array;
  readonly choices: readonly Choice[];
}

/** All options that leave the other lines their fewest drops under the cap (drops), by ascending ρ. Counted out: arithmetic. */
export function allOptions(problem: Problem, cap: number): Options {
  const spare = cap - problem.lines.reduce((sum, { drops, need }) => sum + drops + need, 0);
  const all: { choice: Choice; at: number }[] = [];
  problem.lines.forEach((line, at) => {
    const most = line.need + spare;
    const offer = ({ a, na, b, nb }: Pick<Choice, 'a' | 'na' | 'b' | 'nb'>) => {
      const choice = { a, na, b, nb, drops: line.drops + na + nb, rho: 0, lo: 0, hi: 0 };
      place(line, choice);
      all.push({ choice, at });
    };
    if (line.need === 0 && spare >= 0) offer({ a: null, na: 0, b: null, nb: 0 });
    for (const a of line.singles)
      for (let na = Math.max(1, line.need); na <= Math.min(a.most, most); na++) offer({ a, na, b: null, nb: 0 });
    for (const [a, b] of line.pairs)
      for (let na = 1; na <= Math.min(a.most, most - 1); na++)
        for (let nb = Math.max(1, line.need - na); nb <= Math.min(b.most, most - na); nb++) offer({ a, na, b, nb });
  });
  all.sort((one, two) => one.choice.rho - two.choice.rho);
  return {
    rho: Float64Array.from(all, ({ choice }) => choice.rho),
    spread: Float64Array.from(all, ({ choice }) => (choice.hi - choice.lo) / 2),
    drops: Int32Array.from(all, ({ choice }) => choice.drops),
    line: Int32Array.from(all, ({ at }) => at),
    choices: all.map(({ choice }) => choice),
  };
}
