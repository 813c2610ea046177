import { expect, test } from 'vitest';
import { triplesForAllPairs } from '../../../src/core/sensory/tripleSystems';

test('threes of 3 to 100 vials: every pair meets, in the fewest layerings possible, ⌈v/3·⌈(v−1)/2⌉⌉ (Fort & Hedlund 1958)', () => {
  for (let v = 3; v <= 100; v++) {
    const triples = triplesForAllPairs(v);
    const met = new Set(triples.flatMap(([a, b, c]) => [`${a},${b}`, `${a},${c}`, `${b},${c}`]));
    expect(met.size).toBe((v * (v - 1)) / 2);
    expect(triples).toHaveLength(Math.ceil((v * Math.ceil((v - 1) / 2)) / 3));
    expect(triples.every((one) => new Set(one).size === 3 && one.every((i) => i >= 0 && i < v))).toBe(true);
  }
});

test('19 vials give the 57 layerings of a Steiner triple system, each pair exactly once', () => {
  const triples = triplesForAllPairs(19);
  expect(triples).toHaveLength(57);
  expect(new Set(triples.flatMap(([a, b, c]) => [`${a},${b}`, `${a},${c}`, `${b},${c}`])).size).toBe(3 * 57);
});

test('two vials make no three', () => {
  expect(() => triplesForAllPairs(2)).toThrow('threes are planned for 3 to 100 vials, not 2');
});
