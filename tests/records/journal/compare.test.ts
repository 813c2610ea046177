import { describe, expect, test } from 'vitest';
import { compareCopies, type FileFacts } from '../../../src/records/journal/compare';
import { freshState, stateAfter, type State } from '../../../src/records/store/state';

const event = (seq: number) => ({ event: { run: 'r', seq, at: '', type: 'drop' as const, key: 'k' } });

function stateAt(n: number): State {
  return Array.from({ length: n }, (_, seq) => [event(seq)]).reduce(stateAfter, freshState('s'));
}

function file(last: number, more: Partial<FileFacts> = {}): FileFacts {
  return { head: { journal: 1, store: 's', base: 0 }, last, damaged: false, ...more };
}

describe('the two copies at a start', () => {
  test('that stand at the same write are left alone', () => {
    expect(compareCopies(stateAt(7), [file(7)])).toEqual({ do: 'nothing' });
    expect(compareCopies(stateAt(7), [file(3), file(7)])).toEqual({ do: 'nothing' });
  });

  test('both empty are those of a new phone', () => {
    expect(compareCopies(undefined, [])).toEqual({ do: 'nothing' });
  });

  test('an emptied store is filled from the journal', () => {
    expect(compareCopies(undefined, [file(7)])).toEqual({ do: 'fill the database', after: -1 });
    expect(compareCopies(undefined, [file(7, { head: null, damaged: true })])).toEqual({
      do: 'fill the database',
      after: -1,
    });
  });

  test('a store that went back a few writes gets them from the journal', () => {
    expect(compareCopies(stateAt(5), [file(7)])).toEqual({ do: 'fill the database', after: 5 });
  });

  test('a journal that lacks the last write, as after a kill between the two, is topped up', () => {
    expect(compareCopies(stateAt(7), [file(6)])).toEqual({
      do: 'top up the second copy',
      writes: [{ n: 7, keys: [['r', 6]] }],
    });
  });

  test('a journal that lacks more than is noted, is gone, or is damaged, is written anew', () => {
    const anew = { do: 'rewrite the second copy' };
    expect(compareCopies(stateAt(40), [file(3)])).toEqual(anew);
    expect(compareCopies(stateAt(7), [])).toEqual(anew);
    expect(compareCopies(stateAt(7), [file(7, { damaged: true })])).toEqual(anew);
    const begunLate = { head: { journal: 1, store: 's', base: -1 } } as const; // its own lines only
    expect(compareCopies(stateAt(7), [file(7, begunLate)])).toEqual(anew);
    expect(compareCopies(stateAt(7), [file(5), file(7, begunLate)])).toEqual({ do: 'nothing' });
    const bulk = stateAfter(
      stateAt(6),
      Array.from({ length: 500 }, (_, seq) => event(seq + 100)),
    );
    expect(compareCopies(bulk, [file(6)])).toEqual(anew);
  });

  test('a journal of another store gives back what this one has not', () => {
    const other = file(90, { head: { journal: 1, store: 'lost', base: 0 } });
    expect(compareCopies(stateAt(2), [other])).toEqual({ do: 'join' });
  });

  test('a damaged journal does not keep a store that went back from being filled first', () => {
    expect(compareCopies(stateAt(5), [file(7, { damaged: true })])).toEqual({ do: 'fill the database', after: 5 });
  });
});
