/** Typeface of a span: text, its bold, the monospaced one of codes, and white on a black bar. */
export type LabelFace = 'plain' | 'bold' | 'code' | 'badge';

/** A piece of a label's text. `rank` 0 is never left out; of the others the largest rank goes first, and is named by `what`. */
export interface LabelSpan {
  readonly text: string;
  readonly face: LabelFace;
  /** Code and strength: larger than all else. */
  readonly large: boolean;
  readonly rank: number;
  readonly what: string;
  /** Its end may go, and its words may be broken, before it goes as a whole: a name. */
  readonly mayShorten?: boolean;
}

/** What a label says: paragraphs of spans; side of its square code in modules, null for none; with a flame or not; rings, one for each tenfold step. */
export interface LabelContent {
  readonly paragraphs: readonly (readonly LabelSpan[])[];
  readonly codeModules: number | null;
  readonly flame: boolean;
  readonly rings: number;
}

/** The label's size, the dots per inch of what prints it, and how wide a text is, in mm at a size of 1 mm. */
export interface LabelFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: number;
  readonly widthOf: (text: string, face: LabelFace) => number;
}

/** A stretch of text on its baseline (x, y), `width` wide, `size` its em; `bar` is how far the black behind white text reaches; mm. */
export interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  readonly face: LabelFace;
  readonly text: string;
  readonly bar?: { readonly x: number; readonly width: number };
}
