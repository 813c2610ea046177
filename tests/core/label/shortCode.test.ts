import { describe, expect, test } from 'vitest';
import { freeCode } from '../../../src/core/label/shortCode';

describe('a code that no other vial has', () => {
  const free = (stem: string, ...taken: string[]) => freeCode(stem, (code) => taken.includes(code));

  test('is the wish itself, or the wish with a digit behind it', () => {
    expect(free('PGF')).toBe('PGF');
    expect(free('PGF', 'PGF')).toBe('PGF2');
    expect(free('PGF', 'PGF', 'PGF2')).toBe('PGF3');
  });

  test('has a letter where the wish ends with a digit, so that no other number comes of it', () => {
    expect(free('HEX3', 'HEX3')).toBe('HEX3B');
    expect(free('HEX3', 'HEX3', 'HEX3B')).toBe('HEX3C');
  });

  test('fits on a strip, however many there are', () => {
    for (const stem of ['GRAPEF', 'HEX301', 'X', '7']) {
      const taken: string[] = [];
      for (let n = 1; n <= 40; n++) taken.push(free(stem, ...taken));
      expect(new Set(taken).size).toBe(40);
      expect(taken.every((code) => /^[A-Z\d]{1,6}$/.test(code))).toBe(true);
    }
  });
});
