import { describe, expect, test } from 'vitest';
import { free } from '../../../src/core/blend/region';
import { sliceCells, slicesOf } from '../../../src/ui/plot/blendPlaces';

describe('slices of blends of four', () => {
  test('four from the least share of the fourth upwards; one where it may not change', () => {
    expect(slicesOf({ least: 0, most: 1 })).toEqual([0, 0.25, 0.5, 0.75]);
    expect(slicesOf({ least: 0.2, most: 0.4 }).map((share) => share.toFixed(2))).toEqual([
      '0.20',
      '0.25',
      '0.30',
      '0.35',
    ]);
    expect(slicesOf({ least: 0.3, most: 0.3 })).toEqual([0.3]);
  });

  test('every cell has the share of its slice, adds to the whole and keeps the bounds', () => {
    const bounds = [{ least: 0.1, most: 0.5 }, ...free(3)];
    for (const share of slicesOf(bounds[3]!)) {
      const cells = sliceCells(share, bounds, 8);
      expect(cells.length).toBeGreaterThan(0);
      for (const cell of cells) {
        expect(cell[3]).toBe(share);
        expect(cell.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
        expect(cell[0]).toBeGreaterThanOrEqual(0.1 - 1e-9);
        expect(cell[0]).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
    expect(sliceCells(0.25, free(4), 8)).toHaveLength(45);
  });
});
