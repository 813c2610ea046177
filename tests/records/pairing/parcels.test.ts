import { expect, test } from 'vitest';
import type { RunEvent } from '../../../src/records/kind/run';
import { inParcels } from '../../../src/records/pairing/parcels';

const record = (id: string, length: number) => ({ id, kind: 'vial', v: 1, name: 'x'.repeat(length) });

const step = (run: string, seq: number): RunEvent => ({ run, seq, at: '', type: 'drop', key: 'pad' });

test('everything goes in small parcels, and a run with all of its steps', () => {
  const records = Array.from({ length: 30 }, (_, i) => record(`r${i}`, 40_000));
  const events = Array.from({ length: 300 }, (_, i) => step(i % 2 ? 'r3' : 'r29', i >> 1));
  const parcels = inParcels({ records, events });
  expect(parcels.length).toBeGreaterThan(4);
  expect(parcels.flatMap((parcel) => parcel.records)).toEqual(records);
  expect(parcels.flatMap((parcel) => parcel.events)).toHaveLength(300);
  for (const { records, events } of parcels) {
    expect(JSON.stringify(records).length).toBeLessThan(300_000);
    const runs = new Set(events.map(({ run }) => run));
    for (const run of runs) {
      expect(records.some(({ id }) => id === run)).toBe(true);
      expect(events.filter((event) => event.run === run)).toHaveLength(150);
    }
  }
});

test('a large record goes alone, and nothing makes no parcel', () => {
  const parcels = inParcels({ records: [record('a', 10), record('b', 400_000), record('c', 10)], events: [] });
  expect(parcels.map(({ records }) => records.map(({ id }) => id))).toEqual([['a'], ['b'], ['c']]);
  expect(inParcels({ records: [], events: [] })).toEqual([]);
});

test('runs that were parted stay together', () => {
  const records = [record('run', 10), record('big', 300_000), { ...record('part', 10), partOf: 'run' }];
  const parcels = inParcels({ records, events: [step('part', 0), step('run', 0)] });
  expect(parcels.map(({ records }) => records.map(({ id }) => id))).toEqual([['run', 'part'], ['big']]);
  expect(parcels[0]!.events).toHaveLength(2);
});
