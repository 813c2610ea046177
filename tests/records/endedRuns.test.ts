import { expect, test, vi } from 'vitest';
import type * as Database from '../../src/records/store/database';
import { endedRuns, newRecord } from '../../src/records/shelf';

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
  run('e', { made: '2026-05-04T10:00:00Z' }),
];
vi.mock('../../src/records/store/database', async (actual) => ({
  ...(await actual<typeof Database>()),
  storedOfKind: async () => stored,
}));

test('the Book begins with the run that ended last, whenever it was begun', async () => {
  expect((await endedRuns()).map(({ id }) => id)).toEqual(['e', 'a', 'f', 'd', 'b']);
});
