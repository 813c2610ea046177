import { expect, test } from 'vitest';
import { placesOf } from '../../../src/core/liquid/places';

test('what lies apart has one place, what overlaps shares its places', () => {
  const range = (low: number, high: number) => ({ low, high });
  expect(placesOf([range(1, 2), range(3, 4), range(5, 6)])).toEqual(
    [1, 2, 3].map((place) => ({ from: place, to: place })),
  );
  expect(placesOf([range(5, 6), range(1, 3), range(2, 4)])).toEqual([
    { from: 3, to: 3 },
    { from: 1, to: 2 },
    { from: 1, to: 2 },
  ]);
  expect(placesOf([range(1, 10), range(2, 3), range(4, 5)])).toEqual([
    { from: 1, to: 3 },
    { from: 1, to: 2 },
    { from: 2, to: 3 },
  ]);
  expect(placesOf([])).toEqual([]);
});
