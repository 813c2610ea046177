/** Typeface of a span: text, its bold, the monospaced one of codes, and white on black. */
export type LabelFace = 'plain' | 'bold' | 'code' | 'badge';

/** A piece of a label's text. `rank` 0 is never left out; of the others the largest rank goes first, and is named by `what`. */
export interface LabelSpan {
  readonly text: string;
  readonly face: LabelFace;
  /** Size over the label's text size. */
  readonly scale: number;
  readonly rank: number;
  readonly what: string;
}

/** What a label says: paragraphs of spans; side of its square code in modules, null for none; with a flame or not. */
export interface LabelContent {
  readonly paragraphs: readonly (readonly LabelSpan[])[];
  readonly codeModules: number | null;
  readonly flame: boolean;
}

/** The label's size, the dots per inch of what prints it, and how wide a text is, in mm at a size of 1 mm. */
export interface LabelFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: number;
  readonly widthOf: (text: string, face: LabelFace) => number;
}

/** A stretch of text on its baseline (x, y), `width` wide, `size` its em; mm. */
export interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  readonly face: LabelFace;
  readonly text: string;
}
