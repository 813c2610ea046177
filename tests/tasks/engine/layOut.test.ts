import { describe, expect, test } from 'vitest';
import { fold } from '../../../src/tasks/engine/fold';
import { layOut } from '../../../src/tasks/engine/layOut';
import type { Task } from '../../../src/tasks/engine/task';
import type { RunEvent } from '../../../src/records/kind/run';

const task: Task = {
  id: 'made up',
  recorded: true,
  title: () => 'Made up',
  steps: ({ typed }) => {
    if (typed['what'] === 'bad' || typed['first'] === 'bad') throw new TypeError('planted');
    return [
      { key: 'first', say: 'First?' },
      { key: 'second', say: `Second, after ${typed['first'] ?? 'nothing'}?` },
    ];
  },
  keep: () => [],
};

const events = (...happened: [RunEvent['type'], string, string?][]): RunEvent[] =>
  happened.map(([type, key, text], seq) => ({
    run: 'r',
    seq,
    at: '2026-05-04T10:00:00.000Z',
    type,
    key,
    ...(text === undefined ? {} : { text }),
  }));
const laid = (list: RunEvent[]) => layOut(task, list, fold(list));

describe('the steps of a run whose task breaks', () => {
  test('on no answer are those of the task', () => {
    const { steps, fault } = laid(events(['typed', 'first', 'good']));
    expect(fault).toBeNull();
    expect(steps[1]!.say).toBe('Second, after good?');
  });

  test('on the last answer are those from before it, with the earlier answers, whatever came after', () => {
    const list = events(['typed', 'first', 'good'], ['go', 'second'], ['typed', 'what', 'bad'], ['go', 'first']);
    const { steps, fault } = laid(list);
    expect(fault?.error).toBeInstanceOf(TypeError);
    expect(steps[1]!.say).toBe('Second, after good?');
  });

  test('on an early answer are those from before that one', () => {
    const { steps } = laid(events(['typed', 'first', 'bad'], ['typed', 'other', 'x'], ['drop', 'pad']));
    expect(steps[1]!.say).toBe('Second, after nothing?');
  });

  test('come back when the answer is changed', () => {
    expect(laid(events(['typed', 'what', 'bad'], ['typed', 'what', 'good'])).fault).toBeNull();
  });

  test('from the beginning are none: the error goes on to the page', () => {
    const broken: Task = {
      ...task,
      steps: () => {
        throw new TypeError('planted');
      },
    };
    const list = events(['typed', 'first', 'good']);
    expect(() => layOut(broken, list, fold(list))).toThrow('planted');
  });
});
