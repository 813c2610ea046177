import { describe, expect, test } from 'vitest';
import type { RunEvent } from '../../../src/records/kind/run';
import { storyOf } from '../../../src/app/describe/story';
import { answer, ask } from '../../../src/tasks/engine/answers';
import { choice, whole } from '../../../src/tasks/engine/fields';
import { fold, freshRun } from '../../../src/tasks/engine/fold';
import { dropped, nextKey, recordedOn, withHappenings, withPresets } from '../../../src/tasks/engine/leaving';
import type { Step, Task } from '../../../src/tasks/engine/task';

/** A task whose second step is there only for more than two of something, and whose preset moves on. */
let usual = '3';
const many = whole({ name: 'many', title: 'How many', unit: 'pieces' });
const task: Task = {
  id: 'trial',
  recorded: true,
  title: () => 'Trial',
  keep: () => [],
  steps(run) {
    const first: Step = { key: 'first', say: 'How many?', ask: [ask(many, { preset: usual })], types: { seen: 'yes' } };
    const all = Array.from({ length: answer(run, many) ?? 0 }, (_, i): Step => ({ key: `of.${i}`, say: `${i}` }));
    return [first, ...all];
  },
};
const first = (run = freshRun) => task.steps(run)[0]!;

describe('leaving a step', () => {
  test('records what it types and what stood in the fields where nothing was typed, and leads where that leads', () => {
    expect(recordedOn(first(), freshRun)).toEqual([
      { type: 'typed', key: 'seen', text: 'yes' },
      { type: 'preset', key: 'many', text: '3' },
    ]);
    expect(nextKey(task, first(), freshRun)).toBe('of.0');
  });

  test('records nothing where something was typed, nor the same preset twice', () => {
    const typed = withHappenings(freshRun, [{ type: 'typed', key: 'many', text: '0' }]);
    expect(recordedOn(first(typed), typed).map(({ key }) => key)).toEqual(['seen']);
    expect(nextKey(task, first(typed), typed)).toBeUndefined();
    const left = withHappenings(freshRun, recordedOn(first(), freshRun));
    expect(recordedOn(first(left), left).map(({ key }) => key)).toEqual(['seen']);
  });

  test('records what was asked beside a slot; with a drop that falls on a card, what is in its fields', () => {
    const unit = choice({ name: 'unit', title: 'Unit', options: [{ value: 'g', label: 'g' }], preset: 'g' });
    const card: Step = { ...first(), card: { sentence: '{many}', slots: { many: { beside: [unit] } } } };
    const presets = [
      { type: 'preset', key: 'many', text: '3' },
      { type: 'preset', key: 'unit', text: 'g' },
    ];
    expect(recordedOn(card, freshRun)).toEqual([{ type: 'typed', key: 'seen', text: 'yes' }, ...presets]);
    expect(dropped(card, freshRun, 'drops')).toEqual([...presets, { type: 'drop', key: 'drops' }]);
    const then = withHappenings(freshRun, dropped(card, freshRun, 'drops'));
    expect(dropped(card, then, 'drops')).toEqual([{ type: 'drop', key: 'drops' }]);
    expect(dropped(first(), freshRun, 'drops')).toEqual([{ type: 'drop', key: 'drops' }]); // no card
  });

  test('again, after the preset has moved on, records the new one', () => {
    const left = withHappenings(freshRun, recordedOn(first(), freshRun));
    usual = '5';
    expect(recordedOn(first(left), left)).toContainEqual({ type: 'preset', key: 'many', text: '5' });
    usual = '3';
  });
});

describe('a run read later', () => {
  const events = (all: readonly Partial<RunEvent>[]) =>
    all.map((one, seq): RunEvent => ({ run: 'r', seq, at: '2026-05-04T10:00:00.000Z', type: 'go', key: '', ...one }));

  test('tells the preset that stood there, not that of today', () => {
    const left = events([
      { type: 'preset', key: 'many', text: '2' },
      { key: 'of.0', text: 'first' },
    ]);
    expect(storyOf(task, left)[0]!.answers).toEqual([['How many', '2 pieces']]);
  });

  test('of a version that recorded none has those of the steps that were left, in turn', () => {
    const old = fold(events([{ key: 'of.0', text: 'first' }]));
    expect(withPresets(task, old).presets).toEqual({ many: '3' });
    expect(withPresets(task, fold(events([{ key: 'first' }]))).presets).toEqual({}); // not left yet
  });
});
