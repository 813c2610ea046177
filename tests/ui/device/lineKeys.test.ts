import { describe, expect, test } from 'vitest';
import { readScaleLine, type LineShape } from '../../../src/core/text/scaleLine';
import { lineKeys, ownOf } from '../../../src/ui/device/lineKeys';
import published from '../../reference/scaleLines.json';

const lines = published.lines.map(([line]) => line as string);

/** Which keys count when no line is open: those of the focused pad, those that were taught. */
type Counting = (key: string) => boolean;
const none: Counting = () => false;
const focused: Counting = (key) => key === ' ' || key === 'Enter';

/** A pad that counts what is free, and takes back what turns out to be a line's. */
function pad(counts: Counting, known: readonly LineShape[] = []) {
  const keys = lineKeys<number>();
  const at = { drops: 0, lines: [] as string[] };
  let presses = 0;
  const press = (key: string) => {
    const would = counts(key) ? { press: presses++ } : undefined;
    const meaning = keys.key(key, would);
    if (meaning.is === 'free' && would) at.drops++;
    if (meaning.is !== 'end') return;
    const own = ownOf(meaning.before.length, meaning.text, known);
    at.drops -= own;
    at.lines.push(' '.repeat(own) + meaning.text);
  };
  return { at, press, type: (line: string, end = 'Enter') => [...line, end].forEach(press), touched: keys.touched };
}

const shapes = lines.flatMap((line) => {
  const read = readScaleLine(line);
  return read.kind === 'weight' ? [read.shape] : [];
});

describe('a thousand lines typed at a pad', () => {
  const taught: Counting = (key) => focused(key) || key === 'F9';
  test.each([
    ['that has no focus', none],
    ['that has the focus', focused],
    ['with a switch that was taught', taught],
  ])('%s count no drop', (_, counts) => {
    const { at, type } = pad(counts);
    for (let i = 0; i < 1000; i++) {
      type(lines[i % lines.length]!, i % 3 === 0 ? 'Tab' : 'Enter');
      expect([lines[i % lines.length], at.drops]).toEqual([lines[i % lines.length], 0]);
    }
    expect(at.lines).toHaveLength(1000);
  });

  test('between presses count those presses alone, once the scale is known', () => {
    for (const line of lines) {
      const read = readScaleLine(line);
      if (read.kind !== 'weight') continue;
      const { at, press, type } = pad(focused, [read.shape]);
      for (let i = 1; i <= 25; i++) {
        for (const key of [' ', 'Enter', ' ', ' ', ' ', ' ', ' ', ' ']) press(key);
        type(line);
        expect([line, at.drops, at.lines.at(-1)]).toEqual([line, 8 * i, line]);
      }
    }
    expect(shapes.length).toBeGreaterThan(10);
  });
});

describe('presses', () => {
  test.each([
    ['Space', ' '],
    ['Enter', 'Enter'],
    ['a switch that was taught', 'F9'],
    ['a letter that was taught', 'q'],
  ])('200 of 200 of %s count', (_, key) => {
    const { at, press } = pad((name) => name === key);
    for (let i = 0; i < 200; i++) press(key);
    expect(at.drops).toBe(200);
  });

  test('of page keys and arrows are no line’s, and end none', () => {
    const keys = lineKeys<number>();
    expect(keys.key('3').is).toBe('line');
    for (const key of ['PageDown', 'ArrowLeft', 'MediaPlayPause', 'AudioVolumeUp', 'Shift'])
      expect(keys.key(key, { press: 0 }).is).toBe('free');
    expect(keys.key('Enter', { press: 0 }).is).toBe('end');
  });

  test('after a line count again, and Escape ends one that has no end', () => {
    const { at, press } = pad(focused);
    for (const key of ['q', ' ', 'Enter', 'Enter', 'q', ' ', 'Escape', ' ']) press(key);
    expect(at.drops).toBe(2);
  });

  test('before a touch begin no line', () => {
    const { at, press, touched, type } = pad(focused);
    for (let i = 0; i < 5; i++) press(' ');
    touched();
    type('0.3124 g');
    expect(at.drops).toBe(5);
  });

  test('of a modifier between blanks and a sign change nothing', () => {
    const { at, press } = pad(focused);
    for (const key of [' ', ' ', 'Shift', '+', '1', 'Enter']) press(key);
    expect([at.drops, at.lines]).toEqual([0, ['  +1']]);
  });
});

test('of a scale that is known to fill no line up, no press is its own', () => {
  expect(ownOf(5, '0.3124 g', [{ length: 8, decimals: 4, unit: 'g', filled: false }])).toBe(0);
  expect(ownOf(5, '0.3124 g', [{ length: 13, decimals: 4, unit: 'g', filled: true }])).toBe(5);
  expect(ownOf(9, '0.3124 g', [{ length: 13, decimals: 4, unit: 'g', filled: true }])).toBe(5);
  expect(ownOf(40, '0.3124 g', [])).toBe(12);
});
