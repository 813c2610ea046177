import { pngWithDensity } from '../../core/label/png';
import type { Batch } from '../../records/kind/batch';

import { fontOf, textMeasure } from '../../ui/label/labelFonts';
import { layoutSheet, SHEET, type SheetText } from './sheetLayout';
import { sheetRows, sheetTitle } from './sheetRows';

const DPI = 150; // dots per inch: small letters are still read on paper
const PER_MM = DPI / 25.4; // mm per inch

/** The sheet of a batch as pictures, one for each A5 page, black on white whatever the screen is. */
export async function sheetPictures(batch: Batch): Promise<File[]> {
  const pages = layoutSheet(sheetRows(batch), await textMeasure());
  return Promise.all(
    pages.map(async (texts, i) => {
      const page = pages.length === 1 ? '' : ` ${i + 1} of ${pages.length}`;
      const name = `${batch.madeOn} ${sheetTitle(batch)}${page}`.replace(/[^\p{L}\p{N} ._-]/gu, '');
      return new File([(await pagePng(texts)) as BlobPart], `${name}.png`, { type: 'image/png' });
    }),
  );
}

async function pagePng(texts: readonly SheetText[]): Promise<Uint8Array> {
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(SHEET.widthMm * PER_MM);
  canvas.height = Math.round(SHEET.heightMm * PER_MM);
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.fillStyle = '#000';
  for (const { text, x, y, size, face } of texts) {
    pen.font = fontOf(face, size * PER_MM);
    pen.fillText(text, x * PER_MM, y * PER_MM);
  }
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('this phone could not make the picture');
  return pngWithDensity(new Uint8Array(await blob.arrayBuffer()), DPI);
}
