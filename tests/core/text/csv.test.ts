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

/** What a program reads that splits at a sign of its own and takes quotes only where a cell begins, as many for a decimal comma do. */
function readSplitAt(sign: string, text: string): string[] {
  const cells: string[] = [];
  for (let i = 0; i <= text.length; i++) {
    let cell = '';
    const isQuoted = text[i] === '"';
    if (isQuoted) {
      for (i++; i < text.length && !(text[i] === '"' && text[i + 1] !== '"'); i++)
        cell += text[i] === '"' ? text[i++] : text[i];
      i++;
    }
    for (; i < text.length && text[i] !== sign && text[i] !== '\r' && text[i] !== '\n'; i++) cell += text[i];
    cells.push(cell);
  }
  return cells;
}

const FORMULA = /^\s*[=+\-@＝＋－＠]/;

describe('a table for a spreadsheet', () => {
  test('quotes what needs it and ends lines with CRLF (RFC 4180)', () => {
    expect(csvOf([['a', 1.5, null, 'say "hi", twice', 'two\nlines']])).toBe(
      'a,1.5,,"say ""hi"", twice","two\nlines"\r\n',
    );
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '  =1', '＝1', '=HYPERLINK("x")'])(
    'a text like %j is never run as a formula',
    (text) => {
      expect(read(csvOf([[text]]))[0]![0]).toBe(`'${text}`);
    },
  );

  test.each(['a;=1+1', '\t=1', '\r=1', 'a\t=1+1', 'a; "=1+1', 'a\n=1', 'a;;\t+1', "a;'=1"])(
    'a text like %j is no formula either where a program splits at semicolons or tabs',
    (text) => {
      const table = csvOf([['x', text, 'y']]);
      for (const sign of [';', '\t']) expect(readSplitAt(sign, table).filter((cell) => FORMULA.test(cell))).toEqual([]);
    },
  );

  test('nothing that is typed is a formula, wherever a program splits', () => {
    const sign = fc.constantFrom(...'=+-@;\t\n\r",\' aß'.split(''));
    fc.assert(
      fc.property(fc.array(fc.string({ unit: sign, maxLength: 12 }), { minLength: 1, maxLength: 3 }), (row) => {
        const table = csvOf([row]);
        for (const split of [',', ';', '\t']) {
          const cells = split === ',' ? read(table)[0]! : readSplitAt(split, table);
          expect(cells.filter((cell) => FORMULA.test(cell))).toEqual([]);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('a number below zero stays a number', () => {
    expect(csvOf([[-2.5]])).toBe('-2.5\r\n');
  });

  test('comes back as it went in, whatever is typed', () => {
    const harmless = fc
      .string({ unit: anySign, maxLength: 20 })
      .filter((s) => !/(^|[;\t\r\n])[\s"]*[=+\-@＝＋－＠]|^[\t\r\n]/.test(s));
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
