import { expect, test } from 'vitest';
import { describe as wordsOf } from '../../../src/app/describe/describe';
import { nextsOf } from '../../../src/app/record/nexts';
import { newRecord } from '../../../src/records/shelf';

const at = '2026-05-04T10:06:00.000Z';
const layering = newRecord('layering', {
  id: 'L1',
  name: 'PGF + HEX',
  strips: [{ vial: 'x', code: 'PGF 1 %', dips: 1, dippedAt: at, takenOutAt: null }],
  readings: [{ at, minute: null, vials: ['x'], words: 'sharp', intensity: 7, liking: 3, note: '', wet: ['x'] }],
  verdict: { liking: 3, decision: 'drop', words: 'Not these.' },
});

test('a layering that was rejected says so, a note on wet strips too, and its page leads to a formula', () => {
  const { line, facts = [] } = wordsOf(layering);
  expect(line).toBe('rejected, liked 3 of 9');
  expect(facts).toContainEqual(['Note', 'Not these.']);
  expect(facts.at(-1)![1]).toBe('sharp, strength 7 of 10, liked 3 of 9, while wet');
  expect(nextsOf(layering, false)[0]!.start).toEqual({ task: 'formula', typed: { from: 'L1', of: 'L1' } });
});
