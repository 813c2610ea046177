import { describe, expect, test } from 'vitest';
import { firstBlends, mostInformative } from '../../../src/core/blend/design';
import { corners, free, keeps, lattice, reachable, type Bounds } from '../../../src/core/blend/region';
import { fitted, information } from '../../../src/core/blend/scheffe';
import { carryOver, tastingOrder } from '../../../src/core/blend/tastingOrder';
import { Refusal } from '../../../src/core/text/refusal';
import { seeded } from '../seeded';

const texts = (blends: readonly (readonly number[])[]) =>
  blends.map((shares) => shares.map((share) => share.toFixed(3)).join(' ')).sort();

describe('the first blends', () => {
  test('of two: ends, middle and quarters', () => {
    expect(texts(firstBlends(free(2)))).toEqual(
      ['0.000 1.000', '0.250 0.750', '0.500 0.500', '0.750 0.250', '1.000 0.000'], // prettier-ignore
    );
  });

  test('of three and four: the lattice, the centre and the axial points', () => {
    const axial = (parts: number) =>
      Array.from({ length: parts }, (_, i) =>
        Array.from({ length: parts }, (_, j) => (i === j ? 0.5 : 0) + 0.5 / parts),
      );
    for (const parts of [3, 4]) {
      const centre = Array.from({ length: parts }, () => 1 / parts);
      const wanted = [...lattice(free(parts), 2), centre, ...axial(parts)];
      expect(texts(firstBlends(free(parts)))).toEqual(texts(wanted));
      expect(wanted.length).toBe(parts === 3 ? 10 : 15);
    }
  });

  test('they leave errors to tell by: a quadratic of 3, 6 and 10 terms in 5, 10 and 15 blends', () => {
    for (const [parts, freedom] of [
      [2, 2],
      [3, 4],
      [4, 5],
    ] as const)
      // prettier-ignore
      expect(
        fitted(
          firstBlends(free(parts)).map((shares, i) => ({ shares, liking: (i * 7) % 9 })),
          'quadratic',
        ).freedom,
      ).toBe(freedom);
  });

  test('never more than half of one: ten blends, all within, that carry a quadratic', () => {
    const bounds: Bounds = [{ least: 0, most: 0.5 }, { least: 0, most: 1 }, { least: 0, most: 1 }]; // prettier-ignore
    const blends = firstBlends(bounds);
    expect(blends).toHaveLength(10);
    expect(blends.every((shares) => keeps(shares, bounds))).toBe(true);
    expect(information(blends, 'quadratic')).toBeGreaterThan(0);
    expect(texts(corners(bounds))).toEqual(['0.000 0.000 1.000', '0.000 1.000 0.000', '0.500 0.000 0.500', '0.500 0.500 0.000']); // prettier-ignore
  });

  test('without the pure ends: none above 80 %, of two, three and four', () => {
    for (const [parts, count] of [
      [2, 5],
      [3, 10],
      [4, 15],
    ] as const) {
      // prettier-ignore
      const bounds = free(parts).map(() => ({ least: 0, most: 0.8 }));
      const blends = firstBlends(bounds);
      expect(blends).toHaveLength(count);
      expect(Math.max(...blends.flat())).toBeCloseTo(0.8, 12);
      expect(information(blends, 'quadratic')).toBeGreaterThan(1e-12);
    }
  });

  test('least shares shrink the lattice to the corner that they leave (pseudo-components)', () => {
    const bounds: Bounds = [{ least: 0.2, most: 1 }, { least: 0.1, most: 1 }, { least: 0, most: 1 }]; // prettier-ignore
    const shrunk = firstBlends(free(3)).map((shares) => shares.map((x, i) => bounds[i]!.least + 0.7 * x));
    expect(texts(firstBlends(bounds))).toEqual(texts(shrunk));
    expect(reachable(bounds).map(({ most }) => most.toFixed(3))).toEqual(['0.900', '0.800', '0.700']);
  });

  test('any bounds that leave room give blends within them, as many as the free region', () => {
    const random = seeded(20);
    let most = 0;
    for (let game = 0; game < 300; game++) {
      const parts = 2 + (game % 3);
      const bounds = free(parts).map(() => ({ least: 0.2 * random(), most: 0.4 + 0.6 * random() }));
      if (bounds.reduce((sum, one) => sum + one.most, 0) < 1.05) continue;
      const blends = firstBlends(bounds);
      for (const shares of blends) {
        expect(keeps(shares, bounds)).toBe(true);
        most = Math.max(most, Math.abs(shares.reduce((sum, one) => sum + one, 0) - 1));
      }
      expect(blends).toHaveLength([5, 10, 15][parts - 2]!);
    }
    console.info(`first blends within 300 bounds: shares add to 1 within ${most.toExponential(1)}`);
    expect(most).toBeLessThan(1e-12);
  });

  test('a search over all multiples of 5 % finds nothing that tells more of a quadratic than the lattice', () => {
    const six = mostInformative(lattice(free(3), 20), 6, 'quadratic');
    expect(texts(six)).toEqual(texts(lattice(free(3), 2)));
    expect(information(six, 'quadratic') * 4096).toBeCloseTo(1, 12);
  });

  test('bounds that cannot be kept are refused', () => {
    expect(() => firstBlends(free(1))).toThrow('2 to 4 vials');
    expect(() => firstBlends(free(5))).toThrow(Refusal);
    const both = (least: number, most: number) => free(2).map(() => ({ least, most }));
    expect(() => firstBlends(both(0.6, 1))).toThrow('more than the whole');
    expect(() => firstBlends(both(0, 0.4))).toThrow('less than the whole');
    expect(() => firstBlends(both(0.5, 0.5))).toThrow('one blend only');
    expect(() => firstBlends(both(0.7, 0.5))).toThrow('its least below its most');
  });
});

describe('the order of judging', () => {
  test('every blend once and one twice, not soon after the first time', () => {
    for (const parts of [2, 3, 4])
      for (let seed = 0; seed < 30; seed++) {
        const blends = firstBlends(free(parts));
        const order = tastingOrder(blends, seeded(seed));
        expect(order).toHaveLength(blends.length + 1);
        expect(new Set(order.map(({ blend }) => blend)).size).toBe(blends.length);
        const again = order.findIndex((one) => one.again);
        const first = order.findIndex(({ blend }) => blend === order[again]!.blend);
        expect(again - first).toBeGreaterThanOrEqual(3);
      }
  });

  test('what was smelled before tells less of the next blend than in an order by chance', () => {
    const blends = firstBlends(free(3));
    let [ours, chance] = [0, 0];
    for (let seed = 0; seed < 40; seed++) {
      const random = seeded(seed);
      ours += carryOver(tastingOrder(blends, random).map(({ blend }) => blends[blend]!)) / 40;
      chance += carryOver([...blends, blends[0]!].sort(() => random() - 0.5)) / 40;
    }
    console.info(`carry-over, mean squared correlation: ${ours.toFixed(3)}, by chance ${chance.toFixed(3)}`);
    expect(ours).toBeLessThan(chance / 2);
  });

  test('one blend has no order', () => {
    expect(() => tastingOrder([[1, 0]], seeded(1))).toThrow(Refusal);
  });
});
