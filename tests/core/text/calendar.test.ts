import { expect, test } from 'vitest';
import { calendarText } from '../../../src/core/text/calendar';

const NOW = Date.UTC(2026, 11, 1, 2, 45);

test('a moment rings when it has come, a day at nine of it', () => {
  const entries = [
    { id: 'a', at: NOW + 600_000, words: 'Smell the strips' },
    { id: 'b', at: '2027-02-03', words: 'B2: cold, day 14' },
  ];
  const lines = calendarText(entries, NOW).split('\r\n');
  expect(lines.at(-1)).toBe('');
  expect(lines).toEqual(expect.arrayContaining(['DTSTAMP:20261201T024500Z', 'DTSTART:20261201T025500Z']));
  expect(lines).toEqual(expect.arrayContaining(['DTSTART;VALUE=DATE:20270203', 'SUMMARY:B2: cold\\, day 14']));
  expect(lines.filter((line) => line.startsWith('TRIGGER'))).toEqual(['TRIGGER:PT0S', 'TRIGGER:PT9H']);
  for (const part of ['VCALENDAR', 'VEVENT', 'VALARM']) {
    const begun = lines.filter((line) => line === `BEGIN:${part}`).length;
    expect(begun).toBeGreaterThan(0);
    expect(lines.filter((line) => line === `END:${part}`)).toHaveLength(begun);
  }
});

test('a calendar reads the words as they are, in lines of 75 octets at most', () => {
  const words = `back\\slash; comma, two\nlines, ${'µé漢🍋'.repeat(40)}`;
  const text = calendarText([{ id: 'a', at: NOW, words }], NOW);
  for (const line of text.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  const summary = /SUMMARY:(.*)/.exec(text.replaceAll('\r\n ', ''))![1]!;
  expect(summary.replace(/\\(.)/g, (_, letter: string) => (letter === 'n' ? '\n' : letter))).toBe(words);
});

test('no words begin a line of their own in the file', () => {
  const text = calendarText([{ id: 'a', at: NOW, words: 'x\r\nEND:VCALENDAR\rBEGIN:VEVENT' }], NOW);
  expect(text.match(/^(BEGIN|END):/gm)).toHaveLength(6);
});
