import { describe, expect, test } from 'vitest';
import { leastPageL, page } from '../../../src/core/sensory/pageTest';
import { friedman, leastRankDistance, ranks } from '../../../src/core/sensory/ranking';
import { seeded } from '../seeded';
import { plainRows, rowsWithL } from './rankRows';
import { Refusal } from '../../../src/core/text/refusal';

const grass = [
  [4, 3, 2, 1],
  [4, 2, 3, 1],
  [3, 1.5, 1.5, 4],
  [3, 1, 2, 4],
  [4, 2, 1, 3],
  [2, 2, 2, 4],
  [1, 3, 2, 4],
  [2, 4, 1, 3],
  [3.5, 1, 2, 3.5],
  [4, 1, 3, 2],
  [4, 2, 3, 1],
  [3.5, 1, 2, 3.5],
];

describe('Friedman’s test', () => {
  test('eight sittings of five samples with rank sums 17 31 32 23 17 give F = 10.60 (ISO 8587 example)', () => {
    // The single rows are not printed with the example; these have its sums, on which F and p depend.
    const rows = [
      [1, 4, 5, 3, 2],
      [2, 5, 1, 3, 4],
      [1, 4, 5, 3, 2],
      [3, 4, 5, 1, 2],
      [5, 2, 4, 1, 3],
      [2, 5, 3, 4, 1],
      [1, 4, 5, 3, 2],
      [2, 3, 4, 5, 1],
    ];
    const { rankSums, f, exact, chiSquared } = friedman(rows);
    expect(rankSums).toEqual([17, 31, 32, 23, 17]);
    expect(f).toBeCloseTo(10.6, 10);
    expect(exact).toBeCloseTo(0.024646691132021583, 12);
    expect(chiSquared).toBeCloseTo(0.031447041613534434, 12);
    const least = leastRankDistance(8, 5, 0.05);
    expect(least).toBeCloseTo(12.3959007, 6);
    const apart = rankSums.flatMap((a, i) =>
      rankSums.flatMap((b, j) => (a - b > least ? [`${'ABCDE'[i]}-${'ABCDE'[j]}`] : [])),
    );
    expect(apart).toEqual(['B-A', 'B-E', 'C-A', 'C-E']);
  });

  test('eleven sittings of four brands: sums 33 14 20 43, F = 27.764, pairs A-B, A-C, D-B, D-C apart (exercise, pairs printed)', () => {
    const rows = [3124, 3124, 3124, 3214, 4123, 3124, 3214, 3214, 3124, 3124, 2134].map((row) =>
      [...`${row}`].map(Number),
    );
    const { rankSums, f, exact } = friedman(rows);
    expect(rankSums).toEqual([33, 14, 20, 43]);
    expect(f).toBeCloseTo(27.76363636363635, 10);
    expect(exact! / 4.4089762366561555e-9).toBeCloseTo(1, 9);
    const least = leastRankDistance(11, 4, 0.05);
    expect(least).toBeCloseTo(11.8681714, 6);
    const apart = rankSums.flatMap((a, i) =>
      rankSums.flatMap((b, j) => (a - b > least ? [`${'ABCD'[i]}-${'ABCD'[j]}`] : [])),
    );
    expect(apart).toEqual(['A-B', 'A-C', 'D-B', 'D-C']);
  });

  test('Conover’s grasses with ties: chi-squared 8.1, p 0.044 (Conover 1999 p. 372, printed with agricolae)', () => {
    const { rankSums, f, chiSquared } = friedman(grass);
    expect(rankSums).toEqual([38, 23.5, 24.5, 34]);
    expect(f).toBeCloseTo(8.097345132743364, 10);
    expect(chiSquared).toBeCloseTo(0.04404213782167815, 12);
  });

  test('ten tasters score three beers, ties and all: F = 11.405, beyond the printed 1 % limit of 9.6', () => {
    const scores = ['458', '376', '288', '579', '136', '446', '368', '255', '279', '645'].map((row) =>
      [...row].map(Number),
    );
    const { rankSums, f, exact } = friedman(scores);
    expect(rankSums).toEqual([12.5, 20.5, 27]);
    expect(f).toBeCloseTo(11.405405405405418, 10);
    expect(exact).toBeLessThan(0.01);
  });

  test('two sittings of three that tie all tell nothing', () => {
    expect(
      friedman([
        [5, 5, 5],
        [2, 2, 2],
      ]),
    ).toMatchObject({ f: 0, exact: 1, chiSquared: 1 });
  });

  test('where counting would take too long, chi-squared stands alone', () => {
    expect(friedman(plainRows(7, 4)).exact).toBeNull();
    expect(friedman(plainRows(3, 25)).exact).toBeNull();
  });

  test('a sitting that leaves a sample out is refused', () => {
    expect(() =>
      friedman([
        [1, 2, 3],
        [1, 2],
      ]),
    ).toThrow('every session has to rank all samples');
    expect(() => friedman([[1]])).toThrow('2 to 10 samples can be ranked, not 1');
    expect(() => friedman([])).toThrow(Refusal);
  });

  test('whoever ranks by a die is believed in at most 5 % of the afternoons', () => {
    const random = seeded(8587);
    const games = 1500;
    let [exactly, byChiSquared] = [0, 0];
    for (let game = 0; game < games; game++) {
      const rows = Array.from({ length: 6 }, () => ranks(Array.from({ length: 3 }, random)));
      const result = friedman(rows);
      if (result.exact! <= 0.05) exactly++;
      if (result.chiSquared <= 0.05) byChiSquared++;
    }
    console.info(
      `Friedman 6×3, die believed: exact ${exactly / games} (0.0289 computed), chi-squared ${byChiSquared / games}`,
    );
    expect(exactly / games).toBeLessThan(0.0289 + 4 * Math.sqrt((0.0289 * 0.9711) / games));
    expect(exactly / games).toBeGreaterThan(0.0289 - 4 * Math.sqrt((0.0289 * 0.9711) / games));
  });
});

describe('Page’s test', () => {
  test('five sittings of three in the expected order: L = 70, p = 1 in 6⁵', () => {
    const result = page(plainRows(3, 5));
    expect(result.l).toBe(70);
    expect(result.exact).toBeCloseTo(1 / 6 ** 5, 15);
    expect(page(plainRows(3, 5).map((row) => row.reverse())).exact).toBeCloseTo(1, 12);
  });

  test('the normal form is what ISO 8587 prints: L = 128 of ten sittings of three lies just beyond 1.645', () => {
    const result = page(rowsWithL(3, 10, 128)!);
    expect(result.normal).toBeLessThan(0.05);
    expect(page(rowsWithL(3, 10, 127)!).normal).toBeGreaterThan(0.05);
  });

  test('an L is asked for at a risk between 0 and 1, of sittings and samples that can be', () => {
    expect(() => leastPageL(6, 3, 0)).toThrow('a risk lies between 0 and 1, not 0');
    expect(() => leastPageL(6, 1, 0.05)).toThrow(Refusal);
    expect(() => leastPageL(0, 3, 0.05)).toThrow(Refusal);
  });

  test('a row that ties all neither helps nor harms', () => {
    const rows = plainRows(3, 3);
    expect(page([...rows, [2, 2, 2]]).exact).toBeCloseTo(page(rows).exact, 12);
  });
});

describe('ranks', () => {
  test('equal scores share the mean of their ranks', () => {
    expect(ranks([7, 3, 7, 1])).toEqual([3.5, 2, 3.5, 1]);
    expect(ranks([2, 2, 2])).toEqual([2, 2, 2]);
  });
});
