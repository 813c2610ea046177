import { describe, expect, test } from 'vitest';
import { measured } from '../../../src/core/number/measured';
import { choice } from '../../../src/tasks/engine/fields';
import { actionOf } from '../../../src/tasks/screen/keyActions';
import { countWords, soundOf, stepWords } from '../../../src/tasks/screen/spoken';
import type { Step } from '../../../src/tasks/engine/task';

/** What is said of each drop from the first to the last. */
function counting(to: number, target: number | null): string[] {
  return Array.from({ length: to }, (_, before) => countWords({ before, now: before + 1, target: target }));
}

describe('what is said at which count', () => {
  test('each drop says its number, the last three before the target what is left, the target that it is reached', () => {
    expect(counting(8, 6)).toEqual([
      '1.',
      '2.',
      '3, 3 left.',
      '4, 2 left.',
      '5, 1 left.',
      '6. Stop, that is all.',
      '7. One too many.',
      '8. 2 too many.',
    ]);
  });

  test('a single drop wished for is the last at once', () => {
    expect(counting(1, 1)).toEqual(['1. Stop, that is all.']);
  });

  test('without a target there is only the number', () => {
    expect(counting(3, null)).toEqual(['1.', '2.', '3.']);
  });

  test('a drop taken back is named, with where the count stands then', () => {
    expect(countWords({ before: 8, now: 7, target: 6 })).toBe('Drop 8 taken back. 7. One too many.');
    expect(countWords({ before: 7, now: 6, target: 6 })).toBe('Drop 7 taken back. 6. Stop, that is all.');
    expect(countWords({ before: 6, now: 5, target: 6 })).toBe('Drop 6 taken back. 5, 1 left.');
    expect(countWords({ before: 1, now: 0, target: null })).toBe('Drop 1 taken back. 0.');
  });

  test('the drop that reaches the target, one too many, and one taken back each sound otherwise', () => {
    const sounds = [0, 1, 2].map((before) => soundOf({ before, now: before + 1, target: 2 }));
    expect(sounds).toEqual(['drop', 'reached', 'over']);
    expect(soundOf({ before: 3, now: 2, target: 2 })).toBe('undo');
    expect(soundOf({ before: 0, now: 1, target: null })).toBe('drop');
  });
});

describe('what is said of a step', () => {
  test('its instruction, what stands below it, its cautions, and what was counted there before', () => {
    const step = {
      key: 'a',
      say: 'Drop in ‹12› of lemon.',
      more: ['A drop weighs 15 ± 2 mg.'],
      cautions: ['No flames.'],
    };
    expect(stepWords(step, 0)).toBe('Drop in 12 of lemon. A drop weighs 15 plus or minus 2 milligrams. No flames.');
    expect(stepWords(step, 4)).toMatch(/No flames\. 4 counted so far\.$/);
  });

  test('how many there are to count, where the instruction does not say it', () => {
    const step = { key: 'a', say: 'Drop ‹TIDE› into the glass.', counting: { counter: 'drops', target: 4 } };
    expect(stepWords(step, 0)).toBe('Drop TIDE into the glass. 4 to count.');
  });

  test('the largest of its results, with unit and ±, and not the others', () => {
    const how = { words: [], inputs: [] };
    const strength = { label: 'Strength', amount: measured(1.04, 0.055, { id: 'a', words: 'a' }), unit: '% w/v', how };
    const step = { key: 'a', say: 'Made.', results: [strength, { ...strength, label: 'Mass', unit: 'g' }] };
    expect(stepWords(step, 0)).toBe('Made. Strength: 1.04 plus or minus 0.11 % weight by volume.');
    const exact = { ...strength, amount: measured(12, 0, { id: 'a', words: 'a' }), unit: 'mg' };
    expect(stepWords({ ...step, results: [exact] }, 0)).toBe('Made. Strength: 12 milligrams.');
  });

  test('what can be chosen, by number; of many only how many', () => {
    const of = (name: string, many: number) =>
      choice({
        name,
        title: name,
        options: Array.from({ length: many }, (_, i) => ({ value: `${i}`, label: `w${i}` })),
      });
    const words = (...ask: Step['ask'] & {}) => stepWords({ key: 'a', say: 'Which?', ask }, 0);
    expect(words(of('Way', 2))).toBe('Which? 1: w0. 2: w1.');
    expect(words(of('Way', 2), of('Scale', 1))).toBe('Which? Way: 1: w0. 2: w1. Scale: 1: w0.');
    expect(words(of('Vial', 9))).toBe('Which? 9 to choose from.');
    expect(stepWords({ key: 'a', say: 'Which?', ask: [of('Way', 2)], drawn: ['Way'] }, 0)).toBe('Which?');
  });

  test('units are words, and a letter that is no unit stays', () => {
    const say = 'Put ‹4.5 mL› of G into 3 g: 7 mg/kg, 20 °C, 1 % w/w · done.';
    expect(stepWords({ key: 'a', say }, 0)).toBe(
      'Put 4.5 millilitres of G into 3 grams: 7 milligrams per kilogram, 20 degrees, 1 % by weight, done.',
    );
  });
});

describe('what a key does', () => {
  test('a presenter counts forward and takes back backward; a key that was taught does what it was taught', () => {
    const keys = ['PageDown', 'PageUp', 'MediaTrackNext', 'b', '.', '3', 'Enter', ' '];
    expect(keys.map((key) => actionOf(key)).slice(0, 3)).toEqual(['drop', 'undo', 'next']);
    expect(keys.flatMap((key) => ([...key].length === 1 || key === 'Enter' ? [actionOf(key)] : []))).toEqual(
      Array.from({ length: 5 }, () => undefined), // a typed line can hold them
    );
    const taught = { q: 'drop', PageUp: 'next' } as const;
    expect(['PageDown', 'PageUp', 'q'].map((key) => actionOf(key, taught))).toEqual(['drop', 'next', 'drop']);
  });
});
