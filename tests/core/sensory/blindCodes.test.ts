import { expect, test } from 'vitest';
import { blindCodes } from '../../../src/core/sensory/blindCodes';
import { seeded } from '../seeded';

test('codes have three digits and never repeat, nor repeat one taken', () => {
  const random = seeded(1);
  const first = blindCodes(36, random);
  const second = blindCodes(36, random, first);
  const all = [...first, ...second];
  expect(new Set(all).size).toBe(72);
  expect(all.every((code) => Number.isInteger(code) && code >= 100 && code <= 999)).toBe(true);
});

test('every code is as likely: chi-squared of 45,000 draws over 900 codes', () => {
  const random = seeded(2);
  const times = new Map<number, number>();
  for (let i = 0; i < 4500; i++) for (const code of blindCodes(10, random)) times.set(code, (times.get(code) ?? 0) + 1);
  const chi = [...times.values()].reduce((sum, n) => sum + (n - 50) ** 2 / 50, 0);
  expect(times.size).toBe(900);
  expect(Math.abs(chi - 899)).toBeLessThan(4 * Math.sqrt(2 * 899));
});

test('all 900 can be had, and not one more', () => {
  expect(new Set(blindCodes(900, seeded(3))).size).toBe(900);
  expect(() =>
    blindCodes(
      2,
      seeded(3),
      Array.from({ length: 899 }, (_, i) => 100 + i),
    ),
  ).toThrow('1 codes are left, not 2');
  expect(blindCodes(0, seeded(3))).toEqual([]);
});
