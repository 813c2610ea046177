import type { Problem } from './dropTerms';
import { noChoice, place, type Choice } from './dropWindow';

/**
 * Every way to fill every line, as columns: the weighted sum needs more than the smallest count of a vial, since a count
 * too small for the wish may still be worth its saved drops.
 */
export interface Options {
  /** mg per part. */
  readonly rho: readonly number[];
  /** z · sd, mg per part. */
  readonly spread: readonly number[];
  readonly drops: readonly number[];
  readonly choices: readonly Choice[];
  /** Options of each line, as places in the columns. */
  readonly lists: readonly (readonly number[])[];
}

/** All options that leave the other lines their fewest drops under the cap. */
export function allOptions(problem: Problem, cap: number): Options {
  const spare = cap - problem.lines.reduce((sum, { drops, need }) => sum + drops + need, 0);
  const options = { rho: [] as number[], spread: [] as number[], drops: [] as number[], choices: [] as Choice[] };
  const lists = problem.lines.map((line) => {
    const list: number[] = [];
    const most = line.need + spare;
    const offer = (pick: Pick<Choice, 'a' | 'na' | 'b' | 'nb'>) => {
      const choice = { ...noChoice(), ...pick, drops: line.drops + pick.na + pick.nb };
      place(line, choice);
      list.push(options.rho.length);
      options.rho.push(choice.rho);
      options.spread.push((choice.hi - choice.lo) / 2);
      options.drops.push(choice.drops);
      options.choices.push(choice);
    };
    if (line.need === 0 && spare >= 0) offer({ a: null, na: 0, b: null, nb: 0 });
    for (const a of line.singles)
      for (let na = Math.max(1, line.need); na <= Math.min(a.most, most); na++) offer({ a, na, b: null, nb: 0 });
    for (const [a, b] of line.pairs)
      for (let na = 1; na <= Math.min(a.most, most - 1); na++)
        for (let nb = Math.max(1, line.need - na); nb <= Math.min(b.most, most - na); nb++) offer({ a, na, b, nb });
    return list;
  });
  return { ...options, lists };
}
