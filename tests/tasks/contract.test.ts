import { describe, expect, test } from 'vitest';
import { tasks } from '../../src/tasks';
import { freshRun } from '../../src/tasks/engine/fold';

const loaded = await Promise.all(tasks.map(async (card) => [card.name, await card.load(), card.id] as const));

describe.each(loaded)('%s', (_, task, id) => {
  test('is the task that its card names', () => expect(task.id).toBe(id));

  test('has a first step before anything is known, and a title', () => {
    expect(task.steps(freshRun).length).toBeGreaterThan(0);
    expect(task.title(freshRun)).not.toBe('');
  });

  test('says one thing a step, under keys of its own', () => {
    const steps = task.steps(freshRun);
    const keys = steps.map((step) => step.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(steps.every((step) => step.say !== '' && /^[\w.-]+$/.test(step.key))).toBe(true);
  });
});

test('task ids are unique', () => {
  expect(new Set(tasks.map((task) => task.id)).size).toBe(tasks.length);
});
