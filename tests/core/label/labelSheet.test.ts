import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridOf, sheetPlaces, type LabelSheet } from '../../../src/core/label/labelSheet';

type Place = ReturnType<typeof sheetPlaces>[number][number];

const a4: LabelSheet = {
  widthMm: 210, // ISO 216
  heightMm: 297,
  labelWidthMm: 30,
  labelHeightMm: 20,
  marginMm: null,
  gapMm: { across: 0, down: 0 },
  skip: 0,
};

describe('labels on a sheet', () => {
  test('an A4 sheet takes 6 × 14 labels of 30 × 20 mm, in the middle', () => {
    expect(gridOf(a4)).toEqual({ columns: 6, rows: 14, left: 15, top: 8.5 });
  });

  test('a sheet of labels is filled from the maker’s margins, with the maker’s gaps', () => {
    const sheet = { ...a4, labelWidthMm: 64, marginMm: { left: 7, top: 15 }, gapMm: { across: 2, down: 1 } };
    expect(gridOf(sheet)).toEqual({ columns: 3, rows: 13, left: 7, top: 15 });
    expect(sheetPlaces(sheet, 5)[0]!.slice(2, 4)).toEqual([
      { x: 139, y: 15 },
      { x: 7, y: 36 },
    ]);
  });

  test('a begun sheet is used from its first free place, and the next sheet from its first', () => {
    const pages = sheetPlaces({ ...a4, skip: 82 }, 4);
    expect(pages.map((places) => places.length)).toEqual([2, 2]);
    expect(pages[0]![0]).toEqual({ x: 15 + 4 * 30, y: 8.5 + 13 * 20 });
    expect(pages[1]![0]).toEqual({ x: 15, y: 8.5 });
  });

  test('labels lie on the sheet, none on another, and as many as were asked for', () => {
    const some = fc.record({
      labelWidthMm: fc.double({ min: 15, max: 100, noNaN: true }),
      labelHeightMm: fc.double({ min: 6, max: 100, noNaN: true }),
      gap: fc.double({ min: 0, max: 10, noNaN: true }),
      count: fc.integer({ min: 0, max: 200 }),
    });
    fc.assert(
      fc.property(some, ({ labelWidthMm: w, labelHeightMm: h, gap, count }) => {
        const pages = sheetPlaces(
          { ...a4, labelWidthMm: w, labelHeightMm: h, gapMm: { across: gap, down: gap } },
          count,
        );
        expect(pages.flat()).toHaveLength(count);
        for (const page of pages) {
          page.forEach(({ x, y }) => {
            expect(Math.min(x, y)).toBeGreaterThanOrEqual(5 - 1e-8);
            expect(x + w).toBeLessThanOrEqual(205 + 1e-8);
            expect(y + h).toBeLessThanOrEqual(292 + 1e-8);
          });
          const apart = (a: Place, b: Place) => Math.abs(a.x - b.x) >= w - 1e-8 || Math.abs(a.y - b.y) >= h - 1e-8;
          expect(page.flatMap((a, i) => page.slice(i + 1).filter((b) => !apart(a, b)))).toEqual([]);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('what does not fit is refused in one sentence', () => {
    expect(() => gridOf({ ...a4, labelWidthMm: 205 })).toThrow('a label of 205 × 20 mm does not fit on 210 × 297 mm');
    expect(() => sheetPlaces({ ...a4, skip: 84 }, 1)).toThrow('a sheet holds 84 labels: begin at 1 to 84, not at 85');
    expect(() => gridOf({ ...a4, gapMm: { across: -1, down: 0 } })).toThrow('0 mm or more');
  });
});
