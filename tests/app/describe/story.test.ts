import { expect, test } from 'vitest';
import type { RunEvent } from '../../../src/records/kind/run';
import { storyOf } from '../../../src/app/describe/story';
import { amount, valueOf } from '../../../src/tasks/engine/fields';
import type { RunState } from '../../../src/tasks/engine/fold';
import type { Step, Task } from '../../../src/tasks/engine/task';

const volume = amount({ name: 'v', title: 'Volume', unit: 'mL', max: 100_000 });
const steps = (run: RunState): Step[] => [
  { key: 'a', say: 'How much?', ask: [volume] },
  ...(valueOf(run, volume) === null ? [] : [{ key: 'b', say: 'Pour it.' }]),
];

test('a run of a version that read 1,000 as 1 is told as it was read then', () => {
  const happened = [
    { type: 'go' as const, key: 'a' },
    { type: 'typed' as const, key: 'v', text: '1,000' },
    { type: 'go' as const, key: 'b', text: 'a' },
  ];
  const at = '2026-11-30T12:00:00Z';
  const events = happened.map((one, seq): RunEvent => ({ run: 'r', seq, at, ...one }));
  const [line] = storyOf({ steps } as Partial<Task> as Task, events);
  expect(line).toEqual({ say: 'How much?', answers: [['Volume', '1 mL']], at });
});
