import { describe, expect, test, vi } from 'vitest';
import { amount, choice, code, day, optionalAmount, whole, words } from '../../../src/tasks/engine/fields';

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
    ['1.000,5', 'is not a number'],
    ['1e3', 'is not a number'],
    ['Infinity', 'is not a number'],
  ])('“%s” is refused', (text, sentence) => expect(why(ml.read(text))).toContain(sentence));

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
