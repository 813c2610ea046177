import { afterEach, expect, test, vi } from 'vitest';
import { freshRun } from '../../../src/tasks/engine/fold';
import { dayOfRun } from '../../../src/tasks/engine/runDay';

afterEach(() => void vi.useRealTimers());

test('the day of a run is that of the last step it was led on, whenever it is looked at', () => {
  vi.useFakeTimers({ now: new Date('2026-11-30T12:00:00Z'), toFake: ['Date'] });
  const run = {
    ...freshRun,
    done: { 'count.a': '2026-11-21T10:00:00Z', 'count.b': '2026-11-22T10:00:00Z', truth: '2026-11-24T10:00:00Z' },
  };
  expect(dayOfRun(run)).toBe('2026-11-24');
  expect(dayOfRun(run, 'count.')).toBe('2026-11-22');
  expect(dayOfRun(run, 'pour.')).toBe('2026-11-30');
  expect(dayOfRun(freshRun)).toBe('2026-11-30');
});
