import { expect, test } from 'vitest';
import { joinedWords, lookedWords, refilledWords } from '../../../src/records/journal/journalWords';
import { freshState } from '../../../src/records/store/state';

const filled = { state: freshState('s'), records: 1, events: 1, missing: 0, damagedLines: 0 };
const lost = 'The browser had lost what was stored. Minim put back';

test('what came back after a loss is told in one number or in many', () => {
  expect(refilledWords(filled)).toBe(`${lost} 1 record and 1 step from the second copy. Nothing is missing.`);
  const many = { ...filled, records: 12, events: 0, damagedLines: 2 };
  expect(refilledWords(many)).toBe(
    `${lost} 12 records and 0 steps from the second copy. 2 entries of it were damaged and may be missing.`,
  );
  expect(refilledWords({ ...many, missing: 1 })).toMatch(/ 1 entry of it was damaged and may be missing\.$/);
  expect(refilledWords({ ...filled, state: null })).toBe('The database is empty and the second copy cannot be read.');
  expect(joinedWords(1)).toBe(`${lost} 1 record from the second copy. Nothing is missing.`);
});

test('what a comparison found is told, and nothing of what it did not find', () => {
  expect(lookedWords({ records: 1, events: 20, putBack: 0, damagedLines: 0 })).toEqual([
    'Compared 1 record and 20 steps in both copies.',
  ]);
  expect(lookedWords({ records: 2, events: 1, putBack: 1, damagedLines: 1 })).toEqual([
    'Compared 2 records and 1 step in both copies.',
    '1 entry was missing from the database and has been restored.',
    '1 entry of the second copy was damaged; it is being rewritten.',
  ]);
  expect(lookedWords({ records: 2, events: 2, putBack: 3, damagedLines: 2 }).slice(1)).toEqual([
    '3 entries were missing from the database and have been restored.',
    '2 entries of the second copy were damaged; it is being rewritten.',
  ]);
});
