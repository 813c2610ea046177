import { describe, expect, test, vi } from 'vitest';
import {
  amount,
  choice,
  code,
  day,
  inRun,
  optionalAmount,
  valueOf,
  whole,
  words,
} from '../../../src/tasks/engine/fields';
import { freshRun } from '../../../src/tasks/engine/fold';

const why = (answer: { ok: boolean; why?: string }) => (answer.ok ? '' : answer.why);
const ml = amount({ name: 'v', title: 'Volume', unit: 'mL', above: 0, max: 100 });

describe('typed text becomes a number with a unit, or one clear sentence', () => {
  test.each([
    ['0,7', 0.7],
    ['0.7', 0.7],
    [' 12 ', 12],
    ['1,', 1],
    ['.5', 0.5],
  ])('“%s” is %s mL', (text, value) => expect(ml.read(text)).toEqual({ ok: true, value }));

  test.each([
    ['', 'Volume” is still empty'],
    ['0', 'more than 0 mL, not 0 mL'],
    ['-3', 'more than 0 mL, not −3 mL'],
    ['1000', 'at most 100 mL, not 1000 mL'],
    ['ten', '“ten” is not a number'],
    ['1.000,5', 'at most 100 mL, not 1001 mL'],
    ['1.00,5', 'commas, points or blanks are in places where no number has them'],
    ['9'.repeat(400), 'more than any amount'],
    ['7 mL', '“7 mL” is not a number'],
    ['1e3', 'is not a number'],
    ['Infinity', 'is not a number'],
  ])('“%s” is refused', (text, sentence) => expect(why(ml.read(text))).toContain(sentence));

  test('a comma or point that may group thousands is asked about, with both readings', () => {
    const litre = amount({ name: 'v', title: 'Volume', unit: 'mL', above: 0, max: 100_000 });
    for (const text of ['1,000', '1.000'])
      expect(litre.read(text)).toEqual({
        ok: false,
        why: `“${text}” is 1000 mL or 1.000 mL: choose one.`,
        readings: [
          { words: '1000 mL', text: '1000' },
          { words: '1.000 mL', text: '1' },
        ],
      });
    const asked = litre.read('12,345');
    expect(!asked.ok && asked.readings?.map(({ text }) => text)).toEqual(['12345', '012.345']);
    expect(litre.read('012.345')).toEqual({ ok: true, value: 12.345 });
    expect(litre.read('1,000', 'decimal')).toEqual({ ok: true, value: 1 });
  });

  test('only a reading that can be meant counts, and it is said what was read', () => {
    expect(ml.read('12,345')).toEqual({ ok: true, value: 12.345, readAs: '12.345 mL' });
    const litre = amount({ name: 'v', title: 'Volume', unit: 'mL', max: 100_000 });
    expect(litre.read('12 500,5')).toEqual({ ok: true, value: 12500.5, readAs: '12500.5 mL' });
    expect(why(amount({ name: 'd', title: 'Density', unit: 'g/mL', max: 2 }).read('3,000'))).toBe(
      'Density: at most 2 g/mL, not 3 g/mL.',
    );
    const drops = whole({ name: 'n', title: 'Drops', unit: 'drops', max: 500 });
    const asked = drops.read('1,000');
    expect(!asked.ok && asked.readings?.map(({ words }) => words)).toEqual(['1000', '1']);
    expect(why(drops.read('1,234'))).toBe('Drops: at most 500, not 1234.');
  });

  test('what the program wrote into a field has the point as decimal sign; what was typed is asked about', () => {
    const field = amount({ name: 'v', title: 'Volume', unit: 'mL', max: 100_000, preset: '1.234' });
    expect(valueOf(freshRun, field)).toBe(1.234);
    expect(valueOf({ ...freshRun, typed: { v: '1.234' } }, field)).toBeNull();
    expect(valueOf({ ...freshRun, typed: { v: '1.234' }, told: true }, field)).toBe(1.234);
  });

  test('a scale that shows three decimals shows a decimal sign; one that does not is asked about', () => {
    const scale = amount({ name: 'step', title: 'Step', unit: 'g', preset: '0.01' });
    const shows = amount({ name: 'g', title: 'The scale shows', unit: 'g', max: 100_000, scale });
    const typed = { g: '39.999' };
    expect(valueOf({ ...freshRun, typed }, shows)).toBeNull();
    expect(valueOf({ ...freshRun, typed: { ...typed, step: '1' } }, shows)).toBeNull();
    expect(valueOf({ ...freshRun, typed: { ...typed, step: '0,001' } }, shows)).toBe(39.999);
    expect(inRun({ ...freshRun, typed: { ...typed, step: '0.001' } }, shows).read('40.000').ok).toBe(true);
  });

  test('a name has more than signs of zero width; a day is one of the calendar', () => {
    for (const text of ['\u200b', '\u2060 \ufeff', '\u3164'])
      expect(words({ name: 'w', title: 'Name' }).read(text).ok).toBe(false);
    const received = day({ name: 'd', title: 'Received' });
    for (const text of ['2026-02-30', '2026-04-31', '0001-01-01', '2201-01-01', '26-01-01'])
      expect(why(received.read(text))).toBe(`“${text}” is not a day.`);
    for (const text of ['2028-02-29', '1900-01-01', '2200-12-31']) expect(received.read(text).ok).toBe(true);
  });

  test('drops are whole', () => {
    const drops = whole({ name: 'n', title: 'Drops', unit: 'drops' });
    expect(drops.read('4')).toEqual({ ok: true, value: 4 });
    expect(why(drops.read('4,5'))).toBe('Drops: whole drops only, not 4,5.');
    expect(why(drops.read('-4'))).toBe('Drops: at least 0, not −4.');
  });

  test('an emptied field is a question unanswered, not a zero', () => {
    expect(optionalAmount({ name: 't', title: 'Room', unit: '°C' }).read('')).toEqual({ ok: true, value: null });
    expect(words({ name: 'w', title: 'Name' }).read('  ').ok).toBe(false);
  });

  test('a day to come is refused where it must be past', () => {
    vi.useFakeTimers({ now: new Date('2026-11-25T12:00:00') });
    const received = day({ name: 'd', title: 'Received', past: true });
    expect(why(received.read('2026-11-26'))).toBe('Received: Nov 26, 2026 is still to come; today is Nov 25, 2026.');
    expect(received.read('2026-11-25').ok).toBe(true);
    vi.useRealTimers();
  });

  test('a code is short, in capitals, and its own', () => {
    const short = code({ name: 'c', title: 'Code', taken: ['CARD'] });
    expect(short.read('hex3')).toEqual({ ok: true, value: 'HEX3' });
    expect(why(short.read('card'))).toContain('already the code of another');
    expect(why(short.read('much too long'))).toContain('2 to 6 letters or digits');
  });

  test('only what is offered can be chosen', () => {
    const one = choice({ name: 'o', title: 'Vial', options: [{ value: '5', label: '5 mL' }] });
    expect(one.read('6')).toEqual({ ok: false, why: '“Vial”: choose one.' });
  });
});
