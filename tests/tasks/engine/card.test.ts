import { afterEach, describe, expect, test, vi } from 'vitest';
import { ask } from '../../../src/tasks/engine/answers';
import { chips, firstOpen, piecesOf, sentenceText, slotOf, slotsOf } from '../../../src/tasks/engine/card';
import { amount, choice, day, pick } from '../../../src/tasks/engine/fields';
import { freshRun, type RunState } from '../../../src/tasks/engine/fold';

const strength = amount({ name: 'strength', title: 'Strength', unit: '% w/v', above: 0, max: 100, preset: '1' });
const solvent = pick({ name: 'solvent', title: 'Solvent' });
const grade = choice({
  name: 'grade',
  title: 'Grade',
  options: [{ value: 'food', label: 'Fit for drinks', short: 'fit' }],
});
const typed = (answers: Record<string, string>): RunState => ({ ...freshRun, typed: answers });

describe('a sentence with slots', () => {
  test('is words and slots, in order', () => {
    expect(piecesOf('Dilute {bottle} to {strength}.')).toEqual([
      { words: 'Dilute ' },
      { slot: 'bottle', sign: '' },
      { words: ' to ' },
      { slot: 'strength', sign: '.' },
    ]);
    expect(piecesOf('{strength}')).toEqual([{ slot: 'strength', sign: '' }]);
  });

  test('reads as what is in the slots; an empty one says what is missing', () => {
    const step = {
      ask: [strength, ask(solvent, { options: [{ value: 'e', label: 'ethanol 96 % vol' }] })],
      card: { sentence: 'To {strength} in {solvent}', slots: { solvent: { missing: 'the solvent' } } },
    };
    expect(sentenceText(freshRun, step)).toBe('To 1 % w/v in the solvent');
    expect(sentenceText(typed({ solvent: 'e', strength: '0.1' }), step)).toBe('To 0.1 % w/v in ethanol 96 % vol');
  });
});

describe('a slot', () => {
  test('that the card works out is dashed and keeps nothing from going on', () => {
    const sought = slotOf(typed({ strength: 'much' }), strength, { sought: true, shows: '0.9 % w/v' });
    expect([sought.state, sought.text]).toEqual(['sought', '0.9 % w/v']);
    expect(firstOpen([sought])).toBeUndefined();
  });

  test.each([
    ['filled by what is usual', slotOf(freshRun, strength), 'filled', '1 % w/v'],
    ['filled by what was typed', slotOf(typed({ strength: '0.5' }), strength), 'filled', '0.5 % w/v'],
    ['filled by the short words of an option', slotOf(typed({ grade: 'food' }), grade), 'filled', 'fit'],
    ['empty while nothing is chosen', slotOf(freshRun, grade), 'empty', 'grade'],
    ['empty when what was chosen is no choice any more', slotOf(typed({ grade: 'gone' }), grade), 'empty', 'grade'],
    ['empty after the text was taken out', slotOf(typed({ strength: '' }), strength), 'empty', 'strength'],
    ['impossible, with the sentence', slotOf(typed({ strength: '120' }), strength), 'impossible', '120 % w/v'],
    ['fixed', slotOf(freshRun, strength, { fixed: true }), 'fixed', '1 % w/v'],
    ['in words of its own', slotOf(freshRun, strength, { shows: 'as last time' }), 'filled', 'as last time'],
    ['a day', slotOf(typed({ on: '2026-11-30' }), day({ name: 'on', title: 'On' })), 'filled', 'Nov 30, 2026'],
  ] as const)('%s', (_, slot, state, text) => expect([slot.state, slot.text]).toEqual([state, text]));

  test('that cannot be says why, with what mends it', () => {
    expect(slotOf(typed({ strength: '120' }), strength).wrong).toContain('100');
    const mend = { words: 'Take 1 %', type: { strength: '1' } };
    expect(slotOf(freshRun, strength, { wrong: 'too strong', mend })).toMatchObject({
      state: 'impossible',
      wrong: 'too strong',
      mend,
    });
  });

  test('keeps its card from being left: first what is empty, then what cannot be', () => {
    const run = typed({ strength: '120' });
    expect(firstOpen(slotsOf(run, { ask: [strength, grade] }))!.field.name).toBe('grade');
    expect(firstOpen(slotsOf(run, { ask: [strength] }))!.field.name).toBe('strength');
    expect(firstOpen(slotsOf(freshRun, { ask: [strength] }))).toBeUndefined();
  });
});

describe('usual values', () => {
  afterEach(() => vi.unstubAllGlobals());

  test('have their unit, or none', () => {
    expect(chips(['0.5', '20'], '%').map(({ label }) => label)).toEqual(['0.5 %', '20 %']);
    expect(chips(['20'], '')).toEqual([{ value: '20', label: '20' }]);
  });

  test('are written as the phone writes numbers, and typed with a point', async () => {
    vi.stubGlobal('document', {});
    vi.stubGlobal('navigator', { language: 'de' });
    vi.resetModules();
    const german = await import('../../../src/tasks/engine/card');
    expect(german.chips(['0.5'], 'g')).toEqual([{ value: '0.5', label: '0,5 g' }]);
  });
});
