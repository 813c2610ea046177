import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvOf } from '../../../src/core/text/csv';
import { anySign } from './anySign';

/** A reader after RFC 4180, written apart from the writer. */
function read(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (quoted && sign === '"' && text[i + 1] === '"') ((cell += '"'), i++);
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === ',' || sign === '\r')) {
      rows.at(-1)!.push(cell);
      cell = '';
      if (sign === '\r') (rows.push([]), i++);
    } else cell += sign;
  }
  rows.pop();
  return rows;
}

describe('a table for a spreadsheet', () => {
  test('quotes what needs it and ends lines with CRLF (RFC 4180)', () => {
    expect(csvOf([['a', 1.5, null, 'say "hi", twice', 'two\nlines']])).toBe(
      'a,1.5,,"say ""hi"", twice","two\nlines"\r\n',
    );
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '  =1', '＝1', '=HYPERLINK("x")'])(
    'a text like %j is never run as a formula',
    (text) => {
      expect(read(csvOf([[text]]))[0]![0]).toBe(`'${text}`);
    },
  );

  test('a number below zero stays a number', () => {
    expect(csvOf([[-2.5]])).toBe('-2.5\r\n');
  });

  test('comes back as it went in, whatever is typed', () => {
    const harmless = fc.string({ unit: anySign, maxLength: 20 }).filter((s) => !/^\s*[=+\-@＝＋－＠\t\r\n]/.test(s));
    fc.assert(
      fc.property(
        fc.array(fc.array(harmless, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
        (rows) => {
          expect(read(csvOf(rows))).toEqual(rows);
        },
      ),
    );
  });
});
