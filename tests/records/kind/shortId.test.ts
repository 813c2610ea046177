import { describe, expect, test } from 'vitest';
import { newId } from '../../../src/records/shelf';
import {
  codeTextOf,
  foundByShortId,
  foundByTyping,
  shortIdInCode,
  shortIdOf,
  spacedShortId,
} from '../../../src/records/kind/shortId';

const vials = ['CARD', 'HEX3', 'PGF'].map((code, i) => ({ id: `0199d8e6-0000-7000-8000-00000000000${i}`, code }));

describe('a short id', () => {
  test('is eight signs that cannot be read as another: no I, no O, no 0, no 1', () => {
    for (let i = 0; i < 500; i++) expect(shortIdOf(newId())).toMatch(/^[A-HJ-NP-Z2-9]{8}$/);
  });

  test('of a record never changes: a label printed today is right for ever', () => {
    expect(shortIdOf('0199d8e6-0000-7000-8000-000000000000')).toBe('YB2GGME7');
  });

  test('is shared by none of 100,000 records made one after another', () => {
    const stamp = (i: number) =>
      `0199d8e6-${i.toString(16).padStart(4, '0').slice(-4)}-7000-8000-${i.toString(16).padStart(12, '0')}`;
    expect(new Set(Array.from({ length: 100_000 }, (_, i) => shortIdOf(stamp(i)))).size).toBe(100_000);
  });

  test('uses all its signs about equally', () => {
    const counts = new Map<string, number>();
    for (let i = 0; i < 4000; i++) for (const sign of shortIdOf(`r${i}`)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
    expect(counts.size).toBe(32);
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(5 * Math.sqrt(1000)); // 32,000 signs over 32
  });
});

describe('what a scanned code says', () => {
  const shortId = shortIdOf(vials[1]!.id);

  test('is a label only in the exact form of one', () => {
    expect(shortIdInCode(codeTextOf(shortId))).toBe(shortId);
    for (const text of [
      shortId,
      codeTextOf(shortId).toLowerCase(),
      `${codeTextOf(shortId)} `,
      `${codeTextOf(shortId)}\n`,
      codeTextOf(shortId).slice(0, -1),
      'M:ABCDEFG0',
      'https://example.com/M:ABCDEFGH',
      'javascript:alert(1)',
      'M:<script>',
      '',
    ])
      expect(shortIdInCode(text)).toBeNull();
  });

  test('finds its record and no other', () => {
    expect(foundByShortId(shortId, vials)).toEqual([vials[1]]);
    expect(foundByShortId('ABCDEFGH', vials)).toEqual([]);
  });
});

describe('what a person types', () => {
  const shortId = shortIdOf(vials[2]!.id);

  test('may be the code, or the beginning of the short id, in any spelling', () => {
    expect(foundByTyping('hex3', vials)).toEqual([vials[1]]);
    expect(foundByTyping(` ${spacedShortId(shortId).toLowerCase()}`, vials)).toEqual([vials[2]]);
    expect(foundByTyping(shortId.slice(0, 4), vials)).toEqual([vials[2]]);
  });

  test('means nothing while it is too short or wrong', () => {
    expect(foundByTyping(shortId.slice(0, 3), vials)).toEqual([]);
    expect(foundByTyping('', vials)).toEqual([]);
    expect(foundByTyping(`${shortId.slice(0, 7)}1`, vials)).toEqual([]);
  });
});
