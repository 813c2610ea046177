import { describe, expect, test } from 'vitest';
import {
  ordersInRound,
  rankingOrders,
  rankingRound,
  servingOrders,
  williamsSquare,
  type TwoSampleTest,
} from '../../../src/core/sensory/servingOrder';
import reference from '../../reference/williams.json';
import { seeded } from '../seeded';
import { Refusal } from '../../../src/core/text/refusal';

function counts<T>(items: readonly T[]): number[] {
  const times = new Map<T, number>();
  for (const item of items) times.set(item, (times.get(item) ?? 0) + 1);
  return [...times.values()];
}

/** How often each sample stands in each place, and how often each neighbours each, as the different counts found. */
function balance(rows: readonly (readonly number[])[]): { places: number[]; neighbours: number[]; pairs: number } {
  const places = counts(rows.flatMap((row) => row.map((sample, i) => `${sample}@${i}`)));
  const neighbours = counts(rows.flatMap((row) => row.slice(1).map((sample, i) => `${row[i]}>${sample}`)));
  return { places: [...new Set(places)], neighbours: [...new Set(neighbours)], pairs: neighbours.length };
}

describe('Williams squares', () => {
  test('every cell of the designs for 2 to 8 samples (Williams 1949)', () => {
    let compared = 0;
    for (const [samples, rows] of Object.entries(reference.designs)) {
      const square = williamsSquare(Number(samples)).map((row) => row.map((sample) => sample + 1));
      expect(square).toEqual(rows);
      compared += rows.flat().length;
    }
    console.info(`Williams designs, 2 to 8 samples: ${compared} cells, 0 differ`);
    expect(compared).toBe(4 + 18 + 16 + 50 + 36 + 98 + 64);
  });

  test('2 to 26 samples: each in each place, and each after each other, equally often', () => {
    for (let n = 2; n <= 26; n++) {
      const times = n % 2 === 0 ? 1 : 2;
      expect(balance(williamsSquare(n))).toEqual({ places: [times], neighbours: [times], pairs: n * (n - 1) });
    }
  });

  test('one sample alone has no order', () => {
    expect(() => williamsSquare(1)).toThrow('2 to 26 samples can be balanced, not 1');
  });

  test('ranking orders are balanced after whole squares, shuffled or not', () => {
    for (const n of [3, 4, 5, 6]) {
      const rows = n % 2 === 0 ? n : 2 * n;
      const orders = rankingOrders(n, 2 * rows, seeded(n));
      expect(orders).toHaveLength(2 * rows);
      expect(balance(orders).places).toEqual([(2 * rows) / n]);
      expect(balance(orders).neighbours).toHaveLength(1);
      expect(orders).not.toEqual(rankingOrders(n, 2 * rows, seeded(n + 100)));
    }
  });
});

describe('orders of two samples', () => {
  const orders: Record<TwoSampleTest, number> = { triangle: 6, 'duo-trio': 4, paired: 2, '3-AFC': 3 };

  test('every order comes as often as every other in whole rounds, and never twice in a round cut short', () => {
    for (const [kind, round] of Object.entries(orders) as [TwoSampleTest, number][]) {
      const served = servingOrders(kind, 4 * round, seeded(round));
      expect(counts(served)).toEqual(Array(round).fill(4));
      const short = servingOrders(kind, round - 1, seeded(round + 9));
      expect(new Set(short).size).toBe(round - 1);
    }
  });

  test('every triangle has an odd one, and over a round it stands in each place twice, A and B odd equally often', () => {
    const served = servingOrders('triangle', 12, seeded(12));
    const odd = served.map((order) => [...order].findIndex((one) => order.split(one).length === 2));
    expect(counts(odd).sort()).toEqual([4, 4, 4]);
    expect(served.filter((order) => order.split('A').length === 2)).toHaveLength(6);
  });

  test('a duo-trio offers one of each after the reference', () => {
    for (const order of servingOrders('duo-trio', 8, seeded(3))) expect([...order.slice(1)].sort().join('')).toBe('AB');
  });

  test('the next order cannot be told from the last: over many rounds every order starts equally often', () => {
    const random = seeded(77);
    const starts = counts(Array.from({ length: 6000 }, () => servingOrders('triangle', 1, random)[0]!));
    expect(starts).toHaveLength(6);
    for (const n of starts) expect(Math.abs(n - 1000)).toBeLessThan(4 * Math.sqrt((6000 * 5) / 36));
  });

  test('half a try is no try', () => {
    expect(() => servingOrders('paired', 1.5, seeded(1))).toThrow(Refusal);
    expect(() => rankingOrders(3, -1, seeded(1))).toThrow(Refusal);
  });
});

describe('whole rounds', () => {
  test('are as many as different orders are served before one comes again', () => {
    for (const [kind, many] of [
      ['triangle', 6],
      ['duo-trio', 4],
      ['paired', 2],
      ['3-AFC', 3],
    ] as const) {
      expect(ordersInRound(kind)).toBe(many);
      expect(new Set(servingOrders(kind, many, seeded(5))).size).toBe(many);
    }
    for (const samples of [2, 3, 4, 5, 6]) expect(rankingRound(samples)).toBe(williamsSquare(samples).length);
  });
});
