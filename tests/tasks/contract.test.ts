import { describe, expect, test } from 'vitest';
import { tasks } from '../../src/tasks';
import { freshRun } from '../../src/tasks/fold';

describe.each(tasks.map((task) => [task.name, task] as const))('%s', (_, task) => {
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
