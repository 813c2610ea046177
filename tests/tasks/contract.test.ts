import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { shelfTasks, tasks } from '../../src/tasks';
import { freshRun } from '../../src/tasks/engine/fold';

const all = [...tasks, ...shelfTasks];
const loaded = await Promise.all(all.map(async (card) => [card.name, await card.load(), card.id] as const));
const src = resolve(import.meta.dirname, '../../src/tasks');

/** The text of a room of the tasks, with that of the rooms in it. */
function textOf(room: string): string {
  return readdirSync(join(src, room), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => readFileSync(join(src, room, file), 'utf8'))
    .join('\n');
}

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

  test('repeats what it asks: each name is that of a field', () => {
    const text = `${textOf(id)}\n${textOf('shared')}`.replace(/const repeats = [^;]*;/, '');
    const named = (name: string) =>
      [`'${name}`, `\`${name}`, `named('${name.replace('.', '')}'`].some((start) => text.includes(start));
    expect((task.repeats ?? []).filter((name) => !named(name))).toEqual([]);
    expect(new Set(task.repeats).size).toBe((task.repeats ?? []).length);
  });
});

test('task ids are unique', () => {
  expect(new Set(all.map((task) => task.id)).size).toBe(all.length);
});
