/**
 * How well a pure guesser climbs a ladder of 3-AFC steps. A run's streak is the number of steps named right without a
 * miss, counted down from the strongest: what a threshold by best estimate hangs on.
 */

const GUESSED = 1 / 3;

/**
 * Chance, 0 to 1, that streaks as long, or longer, when those of all runs are added up, come from guessing alone.
 * `runs`: for each run, whether each step was named, weakest first; every run of the same ladder. Exact: a run of n steps
 * has streak k with (1/3)^k·(2/3) for k < n, and n with (1/3)^n; runs are independent. Source: arithmetic; that streaks
 * are what is counted is our choice.
 */
export function chanceOfStreaks(runs: readonly (readonly boolean[])[]): number {
  const reached = runs.reduce((sum, right) => sum + (right.length - 1 - right.lastIndexOf(false)), 0);
  let chances = [1];
  for (const { length } of runs) {
    const next = new Array<number>(chances.length + length).fill(0);
    chances.forEach((chance, before) => {
      for (let k = 0; k <= length; k++) next[before + k]! += chance * GUESSED ** k * (k < length ? 1 - GUESSED : 1);
    });
    chances = next;
  }
  return Math.min(
    1,
    chances.slice(reached).reduce((sum, chance) => sum + chance, 0),
  );
}
