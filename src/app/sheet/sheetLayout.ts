import type { LabelFace } from '../../core/label/labelContent';
import type { SheetRow } from './sheetRows';

/** A5, mm: as large as a phone's screen shows in one piece, and as two pages print on A4. */
export const SHEET = { widthMm: 148, heightMm: 210, marginMm: 10 } as const;

/** A text on a page: x and y (of its base line) in mm from the upper left corner, size in mm. */
export interface SheetText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly face: LabelFace;
}

/** Width of a text at a size of 1. */
export type WidthOf = (text: string, face: LabelFace) => number;

const BESIDE = 4; // mm between words and numbers
const LINE = 1.35; // of the size, from line to line
const LOOKS: Readonly<Record<SheetRow['kind'], { size: number; above: number; face: LabelFace }>> = {
  title: { size: 6, above: 0, face: 'bold' },
  head: { size: 4.2, above: 3, face: 'bold' },
  line: { size: 3.6, above: 0.8, face: 'plain' },
  note: { size: 2.9, above: 0, face: 'plain' },
};

/** The rows on as many A5 pages as they need: nothing is cut off, and a head never stands alone at the foot. */
export function layoutSheet(rows: readonly SheetRow[], widthOf: WidthOf): SheetText[][] {
  const { heightMm, marginMm } = SHEET;
  const pages: SheetText[][] = [[]];
  const columns = columnsOf(rows, widthOf);
  let top: number = marginMm;
  for (const row of rows) {
    const { size, above } = LOOKS[row.kind];
    const lines = linesOf(row, columns, widthOf);
    const tall = above + lines.length * size * LINE;
    const company = row.kind === 'head' ? 3 * LOOKS.line.size * LINE : 0;
    if (top + tall + company > heightMm - marginMm && top > marginMm) {
      pages.push([]);
      top = marginMm;
    }
    pages.at(-1)!.push(...placed(row, lines, { top: top + above, columns, widthOf }));
    top += tall;
  }
  return pages;
}

/** Width of each column of numbers, mm, the last column first: as wide as the widest in it. */
function columnsOf(rows: readonly SheetRow[], widthOf: WidthOf): number[] {
  const widths: number[] = [];
  for (const { kind, numbers } of rows)
    [...numbers].reverse().forEach((text, i) => {
      const { size, face } = numberLook(kind);
      widths[i] = Math.max(widths[i] ?? 0, widthOf(text, face) * size + BESIDE);
    });
  return widths;
}

function numberLook(kind: SheetRow['kind']): Pick<SheetText, 'size' | 'face'> {
  return kind === 'head' ? { size: LOOKS.note.size, face: 'plain' } : { size: LOOKS[kind].size, face: 'bold' };
}

/** Room that that many numbers take, mm. */
function roomOf(numbers: readonly string[], columns: readonly number[]): number {
  return numbers.reduce((sum, _, i) => sum + columns[i]!, 0);
}

interface At {
  readonly top: number;
  readonly columns: readonly number[];
  readonly widthOf: WidthOf;
}

function placed(row: SheetRow, lines: readonly string[], at: At): SheetText[] {
  const { widthMm, marginMm } = SHEET;
  const { size, face } = LOOKS[row.kind];
  const y = (line: number) => at.top + size * (1 + line * LINE);
  const ends = row.numbers.map((_, i) => widthMm - marginMm - roomOf(row.numbers.slice(i + 1), at.columns));
  const look = numberLook(row.kind);
  return [
    ...lines.map((text, i) => ({ text, x: marginMm, y: y(i), size, face })),
    ...row.numbers.map((text, i) => ({
      text,
      y: y(0),
      ...look,
      x: ends[i]! - at.widthOf(text, look.face) * look.size,
    })),
  ];
}

/** The words of a row, broken where its numbers begin; a word that is wider than that is broken too. */
function linesOf({ kind, words, numbers }: SheetRow, columns: readonly number[], widthOf: WidthOf): string[] {
  const { size, face } = LOOKS[kind];
  const room = (SHEET.widthMm - 2 * SHEET.marginMm - roomOf(numbers, columns)) / size;
  const lines: string[] = [''];
  for (const word of words.split(/\s+/).flatMap((one) => pieces(one, (text) => widthOf(text, face) <= room))) {
    const longer = lines.at(-1) === '' ? word : `${lines.at(-1)} ${word}`;
    if (widthOf(longer, face) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function pieces(word: string, fits: (text: string) => boolean): string[] {
  const letters = [...word];
  let kept = letters.length;
  while (kept > 1 && !fits(letters.slice(0, kept).join(''))) kept--;
  if (kept === letters.length) return [word];
  return [letters.slice(0, kept).join(''), ...pieces(letters.slice(kept).join(''), fits)];
}
