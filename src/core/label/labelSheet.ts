import { Refusal } from '../text/refusal';

/** Labels in rows on a sheet of paper. Lengths in mm from its top left corner. */
export interface LabelSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  /** Left edge of the first column and top of the first row; null lays the rows in the middle. */
  readonly marginMm: { readonly left: number; readonly top: number } | null;
  readonly gapMm: { readonly across: number; readonly down: number };
  /** Labels of the first sheet that are used up already. */
  readonly skip: number;
}

/** Where a label of a sheet lies, mm. */
export interface SheetPlace {
  readonly x: number;
  readonly y: number;
}

const EDGE = 5; // mm that printers leave white at the edges; common practice, no source

/**
 * Columns and rows that a sheet holds, and where the first label lies, mm. Arithmetic.
 * @throws Refusal when not one label fits, or a margin or gap is below zero
 */
export function gridOf(sheet: LabelSheet): { columns: number; rows: number; left: number; top: number } {
  const { widthMm, heightMm, labelWidthMm, labelHeightMm, marginMm, gapMm } = sheet;
  const lengths = [marginMm?.left ?? 0, marginMm?.top ?? 0, gapMm.across, gapMm.down];
  if (!lengths.every((length) => length >= 0)) throw new Refusal('margins and gaps are 0 mm or more');
  const across = along(widthMm, labelWidthMm, { gap: gapMm.across, margin: marginMm?.left });
  const down = along(heightMm, labelHeightMm, { gap: gapMm.down, margin: marginMm?.top });
  if (across.count < 1 || down.count < 1)
    throw new Refusal(
      'a label of {labelWidthMm} × {labelHeightMm} mm does not fit on {widthMm} × {heightMm} mm with these margins',
      { labelWidthMm, labelHeightMm, widthMm, heightMm },
    );
  return { columns: across.count, rows: down.count, left: across.start, top: down.start };
}

/** How many lie in a row of a length, and where the first begins, mm. A margin given is the maker's: then the far edge may be as narrow as it comes. */
function along(length: number, label: number, { gap, margin }: { gap: number; margin: number | undefined }) {
  const free = margin === undefined ? length - 2 * EDGE : length - margin;
  const count = Math.floor((free + gap) / (label + gap) + 1e-9);
  return { count, start: margin ?? (length - count * label - (count - 1) * gap) / 2 };
}

/**
 * Places of `count` labels in mm, sheet by sheet, row by row; those skipped on the first sheet stay empty. Arithmetic.
 * @throws Refusal as `gridOf`, and when more labels are skipped than a sheet holds
 */
export function sheetPlaces(sheet: LabelSheet, count: number): SheetPlace[][] {
  const { columns, rows, left, top } = gridOf(sheet);
  const perSheet = columns * rows;
  if (!(Number.isInteger(sheet.skip) && sheet.skip >= 0 && sheet.skip < perSheet))
    throw new Refusal('a sheet holds {perSheet} labels: begin at 1 to {perSheet}, not at {first}', {
      perSheet,
      first: sheet.skip + 1,
    });
  const sheets: SheetPlace[][] = Array.from({ length: Math.ceil((sheet.skip + count) / perSheet) }, () => []);
  for (let i = 0; i < count; i++) {
    const place = (sheet.skip + i) % perSheet;
    const x = left + (place % columns) * (sheet.labelWidthMm + sheet.gapMm.across);
    const y = top + Math.floor(place / columns) * (sheet.labelHeightMm + sheet.gapMm.down);
    sheets[Math.floor((sheet.skip + i) / perSheet)]!.push({ x, y });
  }
  return sheets;
}
