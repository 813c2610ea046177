/**
 * Rows as comma-separated text (CRLF, quotes doubled). Numbers are written with a point, in the unit of their column. A text
 * that a spreadsheet would run as a formula (it begins, after blanks, with = + - @ or their full-width forms, or with a tab or
 * return) gets an apostrophe in front; so has what would become the beginning of a cell where a program splits at semicolons or
 * tabs, or at the lines within a cell, as many set up for a decimal comma do. Rows of any length; null is an empty cell.
 * Source: RFC 4180; for the signs OWASP, CSV injection (from memory).
 */
export function csvOf(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const within = value.replace(/([;\t\r\n])(?=[\s"]*[=+\-@＝＋－＠])/g, "$1'");
  const harmless = /^(?:[\t\r\n]|\s*[=+\-@＝＋－＠])/.test(within) ? `'${within}` : within;
  return /[",;\t\r\n]/.test(harmless) ? `"${harmless.replace(/"/g, '""')}"` : harmless;
}
