import { correction, generate } from 'lean-qr';

/** A QR code: `side` modules, and which of them are dark. */
export interface SquareCode {
  readonly side: number;
  readonly dark: (x: number, y: number) => boolean;
}

/** The smallest QR code that says a text, at the best correction that its size allows, and at least at M (15 %). */
export function squareCodeOf(text: string): SquareCode {
  const bitmap = generate(text, { minCorrectionLevel: correction.M });
  return { side: bitmap.size, dark: (x, y) => bitmap.get(x, y) };
}

/** The runs of dark modules of each row: x, y and length, in modules. */
export function darkRuns({ side, dark }: SquareCode): { x: number; y: number; length: number }[] {
  const runs: { x: number; y: number; length: number }[] = [];
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      let length = 0;
      while (x + length < side && dark(x + length, y)) length++;
      if (length > 0) runs.push({ x, y, length });
      x += length;
    }
  return runs;
}
