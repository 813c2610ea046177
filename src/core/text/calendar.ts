/** Source of this file: RFC 5545 (iCalendar): 3.1 lines, 3.3.11 text, 3.6.1 VEVENT, 3.6.6 VALARM. */

/** What a calendar is to remind of. */
export interface CalendarEntry {
  /** The same thing at the same time has the same id, so that a calendar takes it in once. */
  readonly id: string;
  /** A moment in ms since 1970, or a whole day, YYYY-MM-DD. */
  readonly at: number | string;
  readonly words: string;
}

const WIDEST = 75; // octets of a line (RFC 5545, 3.1)
const MORNING = 'PT9H'; // our choice: what is due on a day rings at nine

/**
 * A calendar file (.ics) in which each entry rings by itself: at its moment, or at nine of its day. `now`, when it is written, is in
 * thousandths of seconds (ms) since 1970. Source: RFC 5545.
 */
export function calendarText(entries: readonly CalendarEntry[], now: number): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Minim//Minim//EN',
    ...entries.flatMap((entry) => linesOf(entry, now)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function linesOf({ id, at, words }: CalendarEntry, now: number): string[] {
  const isDay = typeof at === 'string';
  return [
    'BEGIN:VEVENT',
    `UID:${id}@minim.invalid`,
    `DTSTAMP:${utc(now)}`,
    isDay ? `DTSTART;VALUE=DATE:${at.replaceAll('-', '')}` : `DTSTART:${utc(at)}`,
    isDay ? 'DURATION:P1D' : 'DURATION:PT5M',
    `SUMMARY:${escaped(words)}`,
    'TRANSP:TRANSPARENT',
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:${isDay ? MORNING : 'PT0S'}`,
    `DESCRIPTION:${escaped(words)}`,
    'END:VALARM',
    'END:VEVENT',
  ];
}

/** 20261201T024500Z */
function utc(ms: number): string {
  return new Date(ms).toISOString().replace(/[-:]|\.\d{3}/g, '');
}

function escaped(text: string): string {
  return text.replace(/[\\;,]/g, '\\$&').replace(/\r\n|\r|\n/g, '\\n');
}

/** Octets of a letter in UTF-8. */
function octetsOf(point: number): number {
  if (point < 0x80) return 1;
  return point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
}

/** No line is wider than 75 octets, and no letter is cut. */
function folded(line: string): string {
  let out = '';
  let width = 0;
  for (const letter of line) {
    const octets = octetsOf(letter.codePointAt(0)!);
    if (width + octets > WIDEST) {
      out += '\r\n ';
      width = 1;
    }
    out += letter;
    width += octets;
  }
  return out;
}
