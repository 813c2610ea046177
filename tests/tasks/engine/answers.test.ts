import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { answer, ask, clears, types } from '../../../src/tasks/engine/answers';
import { amount, choice, given, pick, shaped } from '../../../src/tasks/engine/fields';
import { freshRun } from '../../../src/tasks/engine/fold';
import type { Step } from '../../../src/tasks/engine/task';

const size = amount({ name: 'size', title: 'Vial', unit: 'mL', above: 0, preset: '10' });
const way = choice({
  name: 'way',
  title: 'Way',
  options: [
    { value: 'drops', label: 'By drops' },
    { value: 'mass', label: 'On a scale' },
  ],
});
const run = (typed: Record<string, string>, presets: Record<string, string> = {}) => ({ ...freshRun, typed, presets });

describe('the answer in a field', () => {
  test('is what was typed, else what stood there when its screen was left, else the fixed preset', () => {
    expect(answer(run({ size: '15' }, { size: '5' }), size)).toBe(15);
    expect(answer(run({}, { size: '5' }), size)).toBe(5);
    expect(answer(run({}), size)).toBe(10);
  });

  test('is null while what is there is no value', () => {
    expect(answer(run({ size: 'much' }), size)).toBeNull();
    expect(answer(run({}), way)).toBeNull();
    expect(answer(run({ way: 'spoon' }), way)).toBeNull();
  });

  test('on its own screen is what stands there now, though another stood there when it was left', () => {
    const now = ask(size, { preset: '20' });
    expect(answer(run({}, { size: '5' }), now)).toBe(20);
    expect(answer(run({ size: '15' }), now)).toBe(15);
  });

  test('is refused where it will not do today, and still read', () => {
    const bottle = pick({ name: 'bottle', title: 'From' });
    const now = ask(bottle, { options: [{ value: 'a', label: 'A' }] });
    expect(now.read('gone')).toEqual({ ok: false, why: '“From”: choose one.' });
    expect(answer(run({ bottle: 'gone' }), bottle)).toBe('gone');
    const odd = ask(size, { refuse: (ml) => (ml > 30 ? 'Too large.' : null) });
    expect([odd.read('31'), odd.read('30')]).toEqual([
      { ok: false, why: 'Too large.' },
      { ok: true, value: 30 },
    ]);
  });

  test('with a structure is JSON of a shape, and what is not of that shape is no answer', () => {
    const pair = shaped('pair', z.object({ id: z.string(), drops: z.number() }));
    const kept = types(pair, { id: 'a', drops: 3 });
    expect(answer(run(kept), pair)).toEqual({ id: 'a', drops: 3 });
    expect(answer(run({ pair: '{"id":"a"}' }), pair)).toBeNull();
    expect(answer(run({ pair: 'id=a' }), pair)).toBeNull();
  });

  test('is taken back by its name', () => {
    expect(clears(size)).toEqual({ size: '' });
  });
});

test('a wrong name does not compile', () => {
  const exact = given('exact', ['yes']);
  // @ts-expect-error no such option
  expect(answer(run({ way: 'drops' }), way) === 'drop').toBe(false);
  // @ts-expect-error no such answer
  expect(types(exact, 'yess')).toEqual({ exact: 'yess' });
  const step: Step<'a' | `reading.${number}`> = { key: 'reading.1', say: 'Weigh.', next: 'a' };
  // @ts-expect-error no such step
  const wrong: typeof step = { key: 'reading.one', say: 'Weigh.' };
  // @ts-expect-error no such step to go to
  const lost: typeof step = { key: 'a', say: 'Weigh.', offers: [{ words: 'On', go: 'b' }] };
  expect([step.key, wrong.key, lost.key]).toEqual(['reading.1', 'reading.one', 'a']);
});
