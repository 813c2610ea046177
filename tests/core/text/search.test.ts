import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slipsToPrefix } from '../../../src/core/text/editDistance';
import { search, searchIndex } from '../../../src/core/text/search';
import { anySign } from './anySign';

const shelf = searchIndex([
  {
    id: 'lim',
    texts: [
      ['d-limonene', 5],
      ['LIM', 8],
      ['5989-27-5', 6],
      ['2633', 6],
      ['citrus, orange', 1],
    ],
  },
  {
    id: 'lin',
    texts: [
      ['linalool', 5],
      ['LNL', 8],
      ['78-70-6', 6],
      ['floral', 1],
    ],
  },
  {
    id: 'hex',
    texts: [
      ['cis-3-hexen-1-ol', 5],
      ['HEX3', 8],
      ['leaf alcohol', 3],
      ['green', 1],
    ],
  },
  {
    id: 'ion',
    texts: [
      ['β-ionone', 5],
      ['violet, raspberry', 1],
    ],
  },
  {
    id: 'eb',
    texts: [
      ['ethyl butyrate', 5],
      ['105-54-4', 6],
      ['fruity, pineapple', 1],
    ],
  },
  {
    id: 'emb',
    texts: [
      ['ethyl 2-methylbutyrate', 5],
      ['fruity, apple', 1],
    ],
  },
  { id: 'nero', texts: [['néroli oil', 5]] },
]);
const found = (query: string) => search(shelf, query, 10).map(({ id }) => id);

describe('looking for a material', () => {
  test('by name, by its beginning, by a part of it', () => {
    expect(found('linalool')).toEqual(['lin']);
    expect(found('lin')[0]).toBe('lin');
    expect(found('butyrate')).toEqual(['eb', 'emb']);
  });

  test('by own code comes first', () => {
    expect(found('hex3')[0]).toBe('hex');
    expect(found('LI')[0]).toBe('lim');
  });

  test('by synonym and by word of smell', () => {
    expect(found('leaf')).toEqual(['hex']);
    expect(found('raspberry')).toEqual(['ion']);
    expect(found('fruity apple')).toEqual(['emb', 'eb']); // "pineapple" holds "apple" too, but not as its beginning
  });

  test('by CAS with or without hyphens, half typed, and by FEMA number', () => {
    for (const typed of ['5989-27-5', '5989275', '5989-2', '2633']) expect(found(typed)).toEqual(['lim']);
  });

  test('a number is never guessed at', () => {
    expect(found('5989-27-4')).toEqual([]);
    expect(found('2634')).toEqual([]);
  });

  test('misspelled', () => {
    for (const typed of ['limonen', 'lemonene', 'limnoene', 'limoneen']) expect(found(typed)[0]).toBe('lim');
    expect(found('lynalol')[0]).toBe('lin');
    expect(found('etyl butirate')[0]).toBe('eb');
  });

  test('with a Greek letter, an accent, or the hyphens left out', () => {
    expect(found('beta ionone')).toEqual(['ion']);
    expect(found('β-ionone')).toEqual(['ion']);
    expect(found('neroli')).toEqual(['nero']);
    expect(found('hexenol')).toEqual(['hex']);
    expect(found('ethylbutyrate')[0]).toBe('eb');
  });

  test('all words must fit, and nothing typed finds nothing', () => {
    expect(found('linalool green')).toEqual([]);
    expect(found('  ')).toEqual([]);
  });

  test('of many only the best are told, those of one score in the order of the list', () => {
    const weights = Array.from({ length: 40 }, (_, i) => 1 + ((i * 7) % 5));
    const many = searchIndex(weights.map((weight, i) => ({ id: `${i}`, texts: [['rose', weight]] })));
    const sorted = weights
      .map((weight, i) => ({ weight, i }))
      .sort((a, b) => b.weight - a.weight || a.i - b.i)
      .map(({ i }) => `${i}`);
    for (const limit of [1, 8, 11, 40, 60])
      expect(search(many, 'rose', limit).map(({ id }) => id)).toEqual(sorted.slice(0, limit));
  });

  test('strange signs do not break it', () => {
    fc.assert(fc.property(fc.string({ unit: anySign, maxLength: 30 }), (typed) => Array.isArray(found(typed))));
  });
});

/** The same distance without band and shortcuts, against every beginning of the word. */
function plainly(typed: string, word: string): number {
  const cells: number[][] = [];
  for (let i = 0; i <= typed.length; i++) {
    cells.push([]);
    for (let j = 0; j <= word.length; j++) {
      const row = cells[i]!;
      if (i === 0 || j === 0) row.push(i + j);
      else {
        const same = typed[i - 1] === word[j - 1] ? 0 : 1;
        row.push(Math.min(cells[i - 1]![j]! + 1, row[j - 1]! + 1, cells[i - 1]![j - 1]! + same));
        if (i > 1 && j > 1 && typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1])
          row[j] = Math.min(row[j]!, cells[i - 2]![j - 2]! + 1);
      }
    }
  }
  return Math.min(...cells[typed.length]!);
}

describe('slips of the finger', () => {
  test('are counted as the plain table counts them', () => {
    const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'd'), maxLength: 12 });
    fc.assert(
      fc.property(letters, letters, fc.nat(3), (typed, word, limit) => {
        expect(slipsToPrefix(typed, word, limit)).toBe(Math.min(plainly(typed, word), limit + 1));
      }),
      { numRuns: 3000 },
    );
  });

  test('one slip in a word of four letters or more still finds it', () => {
    const word = fc.string({ unit: fc.constantFrom(...'aeiolmnrst'), minLength: 4, maxLength: 12 });
    fc.assert(
      fc.property(word, fc.nat(11), fc.nat(3), fc.constantFrom(...'aeiolmnrst'), (name, at, how, letter) => {
        const i = at % name.length;
        const slips = [
          name.slice(0, i) + letter + name.slice(i), // one too many
          name.slice(0, i) + name.slice(i + 1), // one too few
          name.slice(0, i) + letter + name.slice(i + 1), // another one
          name.slice(0, i) + (name[i + 1] ?? '') + name[i] + name.slice(i + 2), // exchanged
        ];
        const typed = slips[how]!;
        fc.pre(typed.length >= 4);
        expect(search(searchIndex([{ id: 'x', texts: [[name, 1]] }]), typed, 1)).toHaveLength(1);
      }),
    );
  });
});
