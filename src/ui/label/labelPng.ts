import type { LabelLayout } from '../../core/label/label';
import type { PlacedText } from '../../core/label/labelContent';
import { dotsPerMm } from '../../core/label/labelBlocks';
import { BAR } from '../../core/label/labelText';
import { pngWithDensity } from '../../core/label/png';
import { flameField, flameFrame, flameShape } from '../flame';
import { fontOf } from './labelFonts';
import { darkRuns, type SquareCode } from './squareCode';

const INK = 140; // of 255: darker prints (our choice: a little heavier than the middle, thin strokes break first)

/** A label as a picture of exactly that many dots, each black or white, its density written in. The fonts must be loaded. */
export async function labelPng(layout: LabelLayout, code: SquareCode | null, dpi: number): Promise<Uint8Array> {
  const perMm = dotsPerMm(dpi);
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(layout.widthMm * perMm);
  canvas.height = Math.round(layout.heightMm * perMm);
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  layout.texts.forEach((text) => drawText(pen, text, perMm));
  pen.fillStyle = '#000';
  for (const { x, y, width, height } of layout.rings) pen.fillRect(x * perMm, y * perMm, width * perMm, height * perMm);
  drawFlame(pen, layout.flame, perMm);
  blackAndWhite(pen, canvas);
  drawCode(pen, layout.code, code);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('this phone could not make the picture');
  return pngWithDensity(new Uint8Array(await blob.arrayBuffer()), dpi);
}

function drawText(pen: CanvasRenderingContext2D, text: PlacedText, perMm: number): void {
  const { x, y, width, size, face, bar } = text;
  pen.fillStyle = '#000';
  if (bar) pen.fillRect(bar.x * perMm, (y - BAR.above * size) * perMm, bar.width * perMm, BAR.height * size * perMm);
  if (bar) pen.fillStyle = '#fff';
  pen.font = fontOf(face, size * perMm);
  pen.fillText(text.text, x * perMm, y * perMm, width * perMm);
}

function drawFlame(pen: CanvasRenderingContext2D, flame: LabelLayout['flame'], perMm: number): void {
  if (!flame) return;
  pen.save();
  pen.translate(flame.x * perMm, flame.y * perMm);
  pen.scale((flame.side / 100) * perMm, (flame.side / 100) * perMm);
  for (const [path, fill] of [
    [flameFrame, '#000'],
    [flameField, '#fff'],
    [flameShape, '#000'],
  ] as const) {
    pen.fillStyle = fill;
    pen.fill(new Path2D(path));
  }
  pen.restore();
}

/** A label printer knows black and white only; what it made of greys itself would be specks. */
function blackAndWhite(pen: CanvasRenderingContext2D, { width, height }: HTMLCanvasElement): void {
  const image = pen.getImageData(0, 0, width, height);
  for (let i = 0; i < image.data.length; i += 4) image.data.fill(image.data[i]! < INK ? 0 : 255, i, i + 3);
  pen.putImageData(image, 0, 0);
}

function drawCode(pen: CanvasRenderingContext2D, placed: LabelLayout['code'], code: SquareCode | null): void {
  if (!placed || !code) return;
  const [left, top] = [placed.x, placed.y].map((mm) => Math.round((mm * placed.dots) / placed.module));
  pen.fillStyle = '#000';
  for (const { x, y, length } of darkRuns(code))
    pen.fillRect(left! + x * placed.dots, top! + y * placed.dots, length * placed.dots, placed.dots);
}
