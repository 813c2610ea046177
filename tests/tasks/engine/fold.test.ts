import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RunEvent } from '../../../src/records/kind/run';
import { fold, freshRun } from '../../../src/tasks/engine/fold';

const event = (seq: number, part: Pick<RunEvent, 'type' | 'key'> & Partial<RunEvent>): RunEvent => ({
  run: 'r',
  seq,
  at: `t${seq}`,
  ...part,
});

describe('a run is what its events add up to', () => {
  test('drops count up, undo takes one back, never below nothing', () => {
    const state = fold([
      event(0, { type: 'undo', key: 'a' }),
      event(1, { type: 'drop', key: 'a' }),
      event(2, { type: 'drop', key: 'a' }),
      event(3, { type: 'undo', key: 'a' }),
      event(4, { type: 'count', key: 'b', by: 7 }),
    ]);
    expect(state.drops).toEqual({ a: 1, b: 7 });
  });

  test('text stays as typed, comma and all', () => {
    expect(fold([event(0, { type: 'typed', key: 'x', text: '0,' })]).typed['x']).toBe('0,');
  });

  test('a step left as done keeps its time; going back keeps it too', () => {
    const state = fold([event(0, { type: 'go', key: 'two', text: 'one' }), event(1, { type: 'go', key: 'one' })]);
    expect(state).toMatchObject({ at: 'one', done: { one: 't0' } });
  });

  test('a moment can be marked and unmarked', () => {
    expect(fold([event(0, { type: 'mark', key: 'dip' })]).marks).toEqual({ dip: 't0' });
    expect(fold([event(0, { type: 'mark', key: 'dip' }), event(1, { type: 'unmark', key: 'dip' })]).marks).toEqual({});
  });

  test('stopping anywhere and going on gives the same as never having stopped', () => {
    const types = fc.constantFrom('go', 'typed', 'drop', 'count', 'undo', 'mark', 'unmark');
    const happening = fc.record({ type: types, key: fc.constantFrom('a', 'b'), text: fc.string(), by: fc.nat(9) });
    fc.assert(
      fc.property(fc.array(happening), fc.nat(), (happenings, cut) => {
        const events = happenings.map((part, seq) => event(seq, part as RunEvent));
        const at = cut % (events.length + 1);
        expect(fold(events.slice(at), fold(events.slice(0, at), freshRun))).toEqual(fold(events));
      }),
    );
  });
});
