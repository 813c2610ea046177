import { describe, expect, test } from 'vitest';
import { lettered, shortCode } from '../../../src/core/label/shortCode';

describe('a code that no other vial has', () => {
  const free = (stem: string, ...taken: string[]) => lettered(stem, (code) => taken.includes(code));

  test('is the target itself, or the target with a letter behind it: a digit would be read with the strength', () => {
    expect(free('PGF')).toBe('PGF');
    expect(free('PGF', 'PGF')).toBe('PGFB');
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

describe('a code for a new material', () => {
  test('has a digit behind it while another material has it, a letter where it ends with a digit', () => {
    expect(shortCode('cardamom oil', ['CARD'])).toBe('CARD2');
    expect(shortCode('cardamom oil', ['CARD', 'CARD2'])).toBe('CARD3');
  });
});
