import type { Result } from '../../ui/controls/result';

/** A record in words, for lists and for its own page. */
export interface Description {
  title: string;
  line: string;
  code?: string;
  /** Whether it may go into a drink now. */
  grade?: string;
  /** Label, text, and where it was read, if that is said apart. */
  facts?: readonly (readonly [label: string, text: string, source?: string])[];
  results?: readonly Result[];
  /** What was done, in one line for the Book: '3 GING 1 % w/v, 12 SWOR 1 % w/v'. */
  did?: string;
  /** Why it could not be put into words; title and line then tell only which record it is. */
  fault?: { readonly error: unknown };
}

/** Pairs of label and text, without the empty ones. */
export function facts(...pairs: (readonly [string, string | number | undefined])[]): (readonly [string, string])[] {
  return pairs.flatMap(([label, text]) => (text === undefined || text === '' ? [] : [[label, String(text)] as const]));
}
