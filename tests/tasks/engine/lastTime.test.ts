import { describe, expect, test } from 'vitest';
import { newRecord } from '../../../src/records/shelf';
import { answer, ask } from '../../../src/tasks/engine/answers';
import { amount, pick } from '../../../src/tasks/engine/fields';
import { freshRun } from '../../../src/tasks/engine/fold';
import { asBefore, askedIn, lastTime } from '../../../src/tasks/engine/lastTime';

const size = amount({ name: 'size', title: 'Size', unit: 'mL', above: 0, max: 100 });
const options = [{ value: 'e', label: 'ethanol' }];
const solvent = ask(pick({ name: 'solvent', title: 'Solvent' }), { options });

describe('as last time', () => {
  test('what a run keeps of its answers: those named, typed or left as they were, none that is empty', () => {
    const run = {
      ...freshRun,
      typed: { size: '15', note: 'x', 'lot.a': 'L1', gone: '' },
      presets: { solvent: 'e', size: '5' },
    };
    expect(askedIn(run, ['size', 'solvent', 'lot.', 'gone'])).toEqual({ size: '15', solvent: 'e', 'lot.a': 'L1' });
  });

  test('the newest record that tells is asked', () => {
    const dropper = newRecord('dropper', { name: 'P1', tip: '' });
    const told = { ...dropper, done: { from: '', to: '', asked: { size: '15' } } };
    expect(lastTime([dropper, told])).toEqual({ size: '15' });
    expect(lastTime([dropper])).toEqual({});
  });

  test('the closest time that is still an answer, else what is usual; what was in it when its card was left stays', () => {
    expect(answer(freshRun, asBefore(freshRun, size, [{ size: '500' }, { size: '15' }], '10'))).toBe(15);
    expect(answer(freshRun, asBefore(freshRun, size, [{}], '10'))).toBe(10);
    expect(answer(freshRun, asBefore(freshRun, size, []))).toBeNull();
    expect(answer(freshRun, asBefore(freshRun, solvent, [{ solvent: 'gone' }, { solvent: 'e' }]))).toBe('e');
    const left = { ...freshRun, presets: { size: '5' } };
    expect(answer(left, asBefore(left, size, [{ size: '15' }]))).toBe(5);
    const typed = { ...left, typed: { size: '30' } };
    expect(answer(typed, asBefore(typed, size, [{ size: '15' }]))).toBe(30);
  });
});
