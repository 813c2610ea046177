import { forFile, formatMeasured, formatPlain, measuredCells, measuredText, type DigitLimits } from '../format';
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
  /** Where it is only known to lie on one side of the amount, or near it: then there is no ±. */
  readonly bound?: '>' | '<' | '≈';
  /** What is said instead of the number: 'empty'. */
  readonly words?: string;
  /** At most so many significant digits, where fewer say enough. */
  readonly digits?: number;
}

type Figures = Pick<Result, 'amount' | 'bound' | 'digits' | 'words'>;

/** A result in figures: the number, with its sign where it is a bound, and the ±; '' where there is none. */
export function resultFigures({ amount, bound, digits, words }: Figures): ReturnType<typeof formatMeasured> {
  if (words !== undefined) return { value: words, uncertainty: '' };
  if (bound === undefined) return formatMeasured(amount, limitsOf(digits));
  return { value: `${bound} ${formatPlain(amount.value, 2)}`, uncertainty: '' };
}

/** '1.04 ± 0.11 mg', '> 2 mg/kg'. */
export function resultText(one: Figures & Pick<Result, 'unit'>): string {
  const { amount, unit, bound, digits, words } = one;
  if (words !== undefined) return words;
  return bound === undefined ? measuredText(amount, unit, limitsOf(digits)) : `${resultFigures(one).value} ${unit}`;
}

/** For a table: value and ± in cells of their own; a bound has its sign and no ±. */
export function resultCells(one: Figures): ReturnType<typeof measuredCells> {
  if (one.words === 'not known') return [one.words, ''];
  return one.bound === undefined
    ? measuredCells(one.amount, limitsOf(one.digits))
    : [forFile(() => resultFigures(one).value), ''];
}

function limitsOf(digits: number | undefined): DigitLimits {
  return digits === undefined ? {} : { most: digits };
}
