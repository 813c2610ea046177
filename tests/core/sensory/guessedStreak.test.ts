import { describe, expect, test } from 'vitest';
import { chanceOfStreaks } from '../../../src/core/sensory/guessedStreak';

const run = (word: string): boolean[] => [...word].map((one) => one === '1');

/** Every way a guesser can answer, by plain enumeration: the sum of the chances of those who do as well. */
function byEnumeration(runs: readonly boolean[][]): number {
  const streak = (right: readonly boolean[]): number => right.length - 1 - right.lastIndexOf(false);
  const steps = runs.flat().length;
  const wanted = runs.reduce((sum, right) => sum + streak(right), 0);
  let chance = 0;
  for (let way = 0; way < 2 ** steps; way++) {
    const all = Array.from({ length: steps }, (_, i) => ((way >> i) & 1) === 1);
    const each = runs.map((right, r) => all.slice(r * right.length, (r + 1) * right.length));
    if (each.reduce((sum, right) => sum + streak(right), 0) < wanted) continue;
    chance += all.reduce((product, right) => product * (right ? 1 / 3 : 2 / 3), 1);
  }
  return chance;
}

describe('streaks of a guesser on a ladder', () => {
  test('three right to the top of one run come of guessing in 1 of 27', () => {
    expect(chanceOfStreaks([run('010111')])).toBeCloseTo(1 / 27, 15);
    expect(chanceOfStreaks([run('111111')])).toBeCloseTo(1 / 729, 15);
  });

  test('who misses the top has shown nothing', () => {
    expect(chanceOfStreaks([run('111110')])).toBe(1);
    expect(chanceOfStreaks([])).toBe(1);
  });

  test('one, two and three runs agree with every way counted by itself', () => {
    for (const words of [['0011'], ['0111', '0001'], ['111', '011', '001'], ['00011', '11111']])
      expect(chanceOfStreaks(words.map(run))).toBeCloseTo(byEnumeration(words.map(run)), 13);
  });
});
