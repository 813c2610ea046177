import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combinations, pairCoverage } from '../../../src/core/sensory/pairCoverage';
import { Refusal } from '../../../src/core/text/refusal';

describe('what was smelled together', () => {
  test('one layering of three does three of six pairs', () => {
    const coverage = pairCoverage(['A', 'B', 'C', 'D'], [['C', 'A', 'B']]);
    expect(coverage.done).toBe(3);
    expect(coverage.total).toBe(6);
    expect(coverage.left).toEqual([
      ['A', 'D'],
      ['B', 'D'],
      ['C', 'D'],
    ]);
  });

  test('a pair smelled twice is counted twice but done once, and the triangle is the same from both sides', () => {
    const { times, done } = pairCoverage(['A', 'B', 'C'], [['A', 'B'], ['B', 'A', 'C'], []]);
    expect(times).toEqual([
      [0, 2, 1],
      [2, 0, 1],
      [1, 1, 0],
    ]);
    expect(done).toBe(3);
  });

  test('a layering with a vial that is not on the table today still counts for the others', () => {
    expect(pairCoverage(['A', 'B'], [['A', 'Z', 'B', 'Z']]).done).toBe(1);
    expect(pairCoverage(['A', 'B'], [['A', 'Z']]).done).toBe(0);
  });

  test('a strip written down twice does not meet itself', () => {
    expect(pairCoverage(['A', 'B'], [['A', 'A', 'B']]).times).toEqual([
      [0, 1],
      [1, 0],
    ]);
  });

  test('the same vial cannot be picked twice', () => {
    expect(() => pairCoverage(['A', 'A'], [])).toThrow('a vial can be picked only once');
  });

  test('with no vials or one there is nothing to pair', () => {
    expect(pairCoverage([], []).total).toBe(0);
    expect(pairCoverage(['A'], [['A']]).left).toEqual([]);
  });

  test('done and left always make the whole, and no layering ever undoes a pair', () => {
    const vials = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
    fc.assert(
      fc.property(fc.array(fc.subarray(vials)), fc.subarray(vials), (layerings, next) => {
        const before = pairCoverage(vials, layerings);
        const after = pairCoverage(vials, [...layerings, next]);
        expect(before.done + before.left.length).toBe(21);
        expect(after.done).toBeGreaterThanOrEqual(before.done);
      }),
    );
  });
});

describe('the count of all combinations', () => {
  test('agrees with Pascal’s triangle in every cell up to 40 vials', () => {
    let row = [1n];
    for (let n = 0; n <= 40; n++) {
      row.forEach((value, k) => expect(combinations(n, k)).toBe(Number(value)));
      row = [1n, ...row.slice(1).map((value, k) => value + row[k]!), 1n];
    }
  });

  test('no layering can have more strips than vials', () => {
    expect(combinations(3, 4)).toBe(0);
    expect(combinations(0, 0)).toBe(1);
  });

  test('half a vial is no count', () => {
    expect(() => combinations(2.5, 2)).toThrow(Refusal);
    expect(() => combinations(5, -1)).toThrow(Refusal);
  });
});
