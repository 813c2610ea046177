import { beforeAll, expect, test, vi } from 'vitest';
import { endedRuns, lastRuns } from '../../src/records/endedRuns';
import { newRecord } from '../../src/records/shelf';
import { putBack } from '../../src/records/store/bulk';

const run = (id: string, facts: object) => ({
  ...newRecord('run', { id, task: 'dilute', kept: [], title: id }),
  made: '2026-05-01T08:00:00Z',
  ...facts,
});
const stored = [
  run('a', { endedAt: '2026-05-03T10:00:00Z' }),
  run('b', { endedAt: '2026-05-01T10:00:00Z' }),
  run('c', { open: 1 }),
  run('d', { endedAt: '2026-05-02T10:00:00Z' }),
  run('f', { discarded: '2026-05-02T12:00:00Z' }),
  run('e', { made: '2026-05-04T10:00:00Z' }), // no one knows when it ended
  run('g', { goesOn: { run: 'h', steps: 1 } }),
  run('i', { endedAt: '2026-05-02T10:00:00Z', discarded: '2026-05-01T09:00:00Z' }),
];
vi.mock('idb', () => import('../app/fault/memoryDb'));

beforeAll(async () => {
  const changes = stored.map((record) => ({ record }));
  await putBack(changes);
});

test('the Book begins with the run that ended last, whenever it was begun', async () => {
  expect((await endedRuns()).map(({ id }) => id)).toEqual(['e', 'a', 'f', 'd', 'b', 'i']);
});

test('its first page is read without the rest', async () => {
  expect((await lastRuns(2)).map(({ id }) => id)).toEqual(['a', 'f']);
  expect((await lastRuns(40)).map(({ id }) => id)).toEqual(['a', 'f', 'd', 'b', 'i']);
});
