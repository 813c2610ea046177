import type { LineShape } from '../../core/text/scaleLine';
import { MODIFIERS } from './keyNames';

/**
 * Tells the keys of a typed line (a scale, a hand-held reader of codes) from presses that count. How fast they come plays no part: a keyboard
 * and a busy phone blur it. Whatever a line can hold opens one, and all up to the Enter or Tab that ends it belongs to it.
 * Only blanks, and keys that were taught, can be both: they count at once, and are handed back when they turn out to be how a line began.
 */
export interface LineKeys<P> {
  /** Takes a key by its name; `counts` where it would count if no line were open, and then `press` to tell it by. */
  key(name: string, counts?: { press: P }): KeyMeaning<P>;
  /** Something else was done: the presses before it began no line. */
  touched(): void;
}

/** `free`: no line's. `line`: it belongs to a line. `end`: it ends one. */
export type KeyMeaning<P> =
  | { readonly is: 'free' | 'line' }
  /** `text`: the line, without the presses that counted before it; `before`: those, the last one nearest to the line. */
  | { readonly is: 'end'; readonly text: string; readonly before: readonly P[] };

/** Keys that end a line. */
export const LINE_ENDS: readonly string[] = ['Enter', 'Tab'];

/** Reads keys of one screen. */
export function lineKeys<P>(): LineKeys<P> {
  let line: string | null = null;
  let before: P[] = [];
  return {
    key(name, counts) {
      if (MODIFIERS.includes(name)) return { is: 'free' };
      const holds = [...name].length === 1;
      if (line !== null && LINE_ENDS.includes(name)) {
        const ended = { is: 'end', text: line, before } as const;
        [line, before] = [null, []];
        return ended;
      }
      if (name === 'Escape') [line, before] = [null, []];
      if (line !== null) return holds ? ((line += name), { is: 'line' }) : { is: 'free' };
      if (holds && !counts && name !== ' ') {
        line = name;
        return { is: 'line' };
      }
      if (holds && counts) before.push(counts.press);
      else before = [];
      return { is: 'free' };
    },
    touched: () => void (line === null && (before = [])),
  };
}

/** How many of so many presses before a line of so many signs were its own: as a known scale fills its lines up, else all that a line can begin with. */
export function ownOf(before: number, text: string, known: readonly LineShape[]): number {
  const filled = known.filter((shape) => shape.filled && shape.length >= text.length).map(({ length }) => length);
  if (known.length > 0) return Math.min(before, filled.length > 0 ? Math.min(...filled) - text.length : 0);
  return Math.min(before, MOST_BLANKS);
}

const MOST_BLANKS = 12; // our choice: no line begins with more

/** Presses of keys that counted as a drop. */
export const countedPresses = new WeakSet<Event>();
