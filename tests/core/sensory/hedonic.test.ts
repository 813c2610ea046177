import { describe, expect, test } from 'vitest';
import { comparePair, HEDONIC_WORDS, median } from '../../../src/core/sensory/hedonic';
import { seeded } from '../seeded';
import { Refusal } from '../../../src/core/text/refusal';

describe('the hedonic scale', () => {
  test('has nine points, with neither like nor dislike in the middle (Peryam & Pilgrim 1957)', () => {
    expect(HEDONIC_WORDS).toHaveLength(9);
    expect(HEDONIC_WORDS[4]).toBe('neither like nor dislike');
  });

  test('the median is the middle score', () => {
    expect(median([9, 1, 5])).toBe(5);
    expect(median([6, 9, 7, 1])).toBe(6.5);
    expect(() => median([])).toThrow(Refusal);
  });

  test('eight of eight for the first: p = 2/256 by signs and by ranks', () => {
    const result = comparePair([7, 8, 6, 9, 7, 8, 6, 7], [5, 5, 5, 5, 5, 5, 5, 5]);
    expect(result).toMatchObject({ firstLiked: 8, secondLiked: 0 });
    expect(result.signP).toBeCloseTo(2 / 256, 14);
    expect(result.wilcoxonP).toBeCloseTo(2 / 256, 14);
  });

  test('Wilcoxon’s exact p is the count of all signs, ties and all', () => {
    const random = seeded(9);
    for (let round = 0; round < 20; round++) {
      const first = Array.from({ length: 8 }, () => 1 + Math.floor(9 * random()));
      const second = Array.from({ length: 8 }, () => 1 + Math.floor(9 * random()));
      const gaps = first.map((score, i) => score - second[i]!).filter((gap) => gap !== 0);
      const size = gaps.map((gap) => Math.abs(gap));
      const rank = size.map((a) => size.filter((b) => b < a).length + (size.filter((b) => b === a).length + 1) / 2);
      const far = (signs: (i: number) => boolean) =>
        Math.abs(rank.reduce((sum, one, i) => sum + (signs(i) ? one : -one), 0));
      let count = 0;
      for (let signs = 0; signs < 1 << gaps.length; signs++)
        if (far((i) => (signs & (1 << i)) !== 0) >= far((i) => gaps[i]! > 0)) count++;
      expect(comparePair(first, second).wilcoxonP).toBeCloseTo(count / 2 ** gaps.length, 12);
    }
  });

  test('the classic limits hold: 8 sittings, W = 3 gives p = 0.039, W = 4 gives 0.055 (two-sided)', () => {
    const against = (lost: number[]) =>
      comparePair(
        [1, 2, 3, 4, 5, 6, 7, 8].map((d) => (lost.includes(d) ? -d : d)),
        Array(8).fill(0),
      );
    expect(against([3]).wilcoxonP).toBeCloseTo(0.0390625, 12);
    expect(against([4]).wilcoxonP).toBeCloseTo(0.0546875, 12);
  });

  test('all alike tells nothing', () => {
    expect(comparePair([5, 5], [5, 5])).toEqual({ firstLiked: 0, secondLiked: 0, signP: 1, wilcoxonP: 1 });
  });

  test('scores by a die are believed in at most 5 % of the tests', () => {
    const random = seeded(57);
    let believed = 0;
    for (let game = 0; game < 2000; game++) {
      const roll = () => Array.from({ length: 10 }, () => 1 + Math.floor(9 * random()));
      if (comparePair(roll(), roll()).wilcoxonP <= 0.05) believed++;
    }
    console.info(`Wilcoxon, 10 sittings by a die: believed ${believed / 2000}`);
    expect(believed / 2000).toBeLessThan(0.05 + 4 * Math.sqrt((0.05 * 0.95) / 2000));
    expect(believed / 2000).toBeGreaterThan(0.02);
  });

  test('a sitting without its second score is refused', () => {
    expect(() => comparePair([1, 2], [1])).toThrow(Refusal);
    expect(() => comparePair(Array(201).fill(1), Array(201).fill(2))).toThrow(Refusal);
  });
});
