import { expect, test } from 'vitest';
import { lacking, summary, type Holding } from '../../../src/records/union/summary';
import type { Stored } from '../../../src/records/kind/record';
import type { RunEvent } from '../../../src/records/kind/run';

const bottle = (id: string, box: string) => ({ id, kind: 'bottle', v: 1, box }) as Stored;
const run = (id: string) => ({ id, kind: 'run', v: 1 }) as Stored;
const drop = (run: string, seq: number): RunEvent => ({ run, seq, at: '', type: 'drop', key: 'k' });
const here: Holding = {
  records: [bottle('a', '1'), bottle('b', '2'), run('r'), run('s')],
  events: [drop('r', 0), drop('r', 1), drop('s', 0)],
};

test('nothing is lacking where both have the same, whatever the order of records, steps and keys', () => {
  const there: Holding = {
    records: [run('s'), { box: '2', v: 1, kind: 'bottle', id: 'b' } as Stored, bottle('a', '1'), run('r')],
    events: [drop('s', 0), drop('r', 1), drop('r', 0)],
  };
  expect(summary(there)).toEqual(summary(here));
  expect(lacking(here, summary(there))).toEqual({ records: [], events: [] });
});

test('what is lacking is what is not there, or is otherwise there, and no more', () => {
  const there: Holding = { records: [bottle('a', '1'), bottle('b', '9'), run('r'), run('s')], events: [drop('r', 0)] };
  expect(lacking(here, summary(there))).toEqual({
    records: [bottle('b', '2'), run('r'), run('s')],
    events: here.events,
  });
  expect(lacking(there, summary(here))).toEqual({
    records: [bottle('b', '9'), run('r')],
    events: [drop('r', 0)],
  });
});

test('a thousand records are told in 17 kB', () => {
  const records = Array.from({ length: 1000 }, (_, i) => bottle(`b${i}`, String(i)));
  const told = summary({ records, events: [] });
  expect(new Set(told.has).size).toBe(1000);
  expect(JSON.stringify(told).length).toBeLessThan(17_100);
});
