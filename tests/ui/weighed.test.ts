import { expect, test } from 'vitest';
import { netMass } from '../../src/core/dilution/weighing';
import { plannedText, weighedCells, weighedText } from '../../src/ui/weighed';

const weighed = (grossG: number, readabilityG: number, repeatabilityG = 0) =>
  netMass({ grossG, tareG: 0, readabilityG, repeatabilityG }, { id: 'w', words: 'w' });

test.each([
  [16643, 1, '16643 ± 1 g'],
  [1019.07, 0.01, '1019.07 ± 0.01 g'],
  [3.1, 0.1, '3.1 ± 0.1 g'],
  [391.792, 0.001, '391.792 ± 0.001 g'],
  [0.34, 0.02, '0.34 ± 0.02 g'],
])('%d g on a scale of %d g is %s: all that it shows, and no more', (grams, step, text) => {
  expect(weighedText(weighed(grams, step))).toBe(text);
});

test('a scale that scatters has fewer digits', () => {
  expect(weighedText(weighed(12.34, 0.01, 0.2))).toBe('12.3 ± 0.4 g');
});

test('what was planned is no finer than the scale it was read on, and never 0.00 g', () => {
  expect(plannedText(16643.27, weighed(16643, 1))).toBe('16643');
  expect(plannedText(0.0093, weighed(0.01, 0.01))).toBe('0.01');
  expect(plannedText(0.0033, weighed(0, 0.01))).toBe('< 0.01');
  expect(weighedText(weighed(0, 0.01))).toBe('nothing');
  expect(weighedCells(weighed(0, 0.01))).toEqual([0, '']);
});
