import type { Measured } from '../../core/number/measured';

/** How a result was worked out, for the page of that name: the formula in words, and what went in with its source. */
export interface How {
  readonly words: readonly string[];
  readonly inputs: readonly { readonly words: string; readonly text: string; readonly source: string }[];
}

/** A number on the screen; `amount` is in `unit`. */
export interface Result {
  readonly label: string;
  readonly amount: Measured;
  readonly unit: string;
  readonly how: How;
}
