import { expect, test } from 'vitest';
import { batchOf, lastWriteWins } from '../../../src/records/journal/journalRead';
import { goneOf } from '../../../src/records/kind/record';
import type { RunEvent } from '../../../src/records/kind/run';
import { erasedBy } from '../../../src/records/store/change';

const event: RunEvent = { run: 'r', seq: 0, at: '', type: 'drop', key: 'k' };
const run = { id: 'r', kind: 'run', v: 1 };

test('a run that was erased leaves its id in the journal and none of its steps, in whatever order the lines come', () => {
  const [made, erased] = [batchOf(1, [{ record: run }, { event }]), batchOf(2, [{ record: goneOf('r') }])];
  const forwards = lastWriteWins();
  expect([made, erased].flatMap(forwards).map(erasedBy)).toEqual([null, null, 'r']); // put in this order, the store drops the steps
  const backwards = lastWriteWins();
  expect([erased, made].flatMap(backwards)).toEqual([{ record: goneOf('r') }]);
});
