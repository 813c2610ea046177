/** One of the answers that a choice offers. */
export interface Option<V extends string = string> {
  value: V;
  label: string;
  hint?: string;
  /** What it is called in the slot of a sentence, where that is shorter. */
  short?: string;
  /** Heading that it stands under in a sheet, with those of the same one; none: at the top. */
  group?: string;
  /** Said of it in red: what speaks against taking it. */
  against?: string;
  /** Stands there whatever is searched for among many. */
  always?: boolean;
}

/** One of two numbers that a typed text can mean: how it is shown, and the text that means it alone. */
export interface Reading {
  readonly words: string;
  readonly text: string;
}

/** What a question shows of itself. */
export interface FieldFacts {
  name: string;
  title: string;
  unit?: string;
  help?: string;
  input: 'decimal' | 'numeric' | 'text' | 'date' | 'choice';
  options?: readonly Option[];
  /** Text that stands in the field until something is typed. */
  preset?: string;
  /** A scale shows it: a line that a scale types is taken. */
  weighed?: boolean;
  /** How a typed text is read: where it has two readings, both; where it was read, what is worth saying of that. */
  read?(text: string): ReadText;
}

/** What is shown of how a text was read. */
export interface ReadText {
  readonly ok: boolean;
  readonly readings?: readonly Reading[];
  readonly readAs?: string;
  readonly why?: string;
}
