import { readNumber, typedText } from '../../core/number/typed';
import type { Reading } from '../../ui/controls/field';
import { formatFixed, formatGiven, formatPlain } from '../../ui/format';

/**
 * What a text means to a question. `readAs` is what it was read as, where that is worth saying. A number that can be read in two
 * ways is no answer yet: `readings` are both.
 */
export type Answer<T> =
  { ok: true; value: T; readAs?: string } | { ok: false; why: string; readings?: readonly Reading[] };

/** 'decimal': one comma or point is the decimal sign, as in every text that the program wrote, and in runs told afterwards. */
export type OneSign = 'decimal' | undefined;

/** An answer. */
export const good = <T>(value: T): Answer<T> => ({ ok: true, value });
/** One sentence why a text is no answer. */
export const bad = (why: string): Answer<never> => ({ ok: false, why });

/** Of an amount: its title, its unit, and its bounds in that unit. `above` excludes its bound, `min` and `max` include theirs. */
export interface AskedAmount {
  title: string;
  unit: string;
  above?: number;
  min?: number;
  max?: number;
  /** Told without its unit: "at least 1, not 0". */
  counts?: true;
}

/** What a typed text is as an amount. With two readings that both can be meant it is no answer, on a phone of any language. */
export function readAmount(asked: AskedAmount, text: string, oneSign?: OneSign): Answer<number> {
  const typed = readNumber(text);
  if (typed.kind === 'empty') return bad(`“${asked.title}” is still empty: type a number, in ${asked.unit}.`);
  if (typed.kind === 'none') return bad(noNumber(text.trim(), typed.why));
  if (typed.kind === 'number') return inBounds(asked, typed.value, typed.grouped);
  const [grouped, decimal] = typed.readings;
  const possible = typed.readings.filter((one) => isPossible(asked, one));
  if (oneSign === 'decimal' || possible.length === 0) return inBounds(asked, decimal, false);
  return possible.length === 1 ? inBounds(asked, possible[0]!, true) : twoReadings(asked, text, [grouped, decimal]);
}

/** One sentence for what is no number, as it was typed. */
function noNumber(text: string, why: 'characters' | 'signs' | 'endless'): string {
  if (why === 'endless') return 'That is more than any amount: type fewer digits.';
  return why === 'signs'
    ? `“${text}” is not a number: its commas, points or blanks are in places where no number has them.`
    : `“${text}” is not a number: type digits, with a comma or a point.`;
}

function outside({ title, unit, above, min, max, counts }: AskedAmount, number: number): string | null {
  const told = (n: number) => (counts ? formatPlain(n) : `${formatPlain(n)} ${unit}`);
  if (above !== undefined && number <= above) return `${title}: more than ${told(above)}, not ${told(number)}.`;
  if (min !== undefined && number < min) return `${title}: at least ${told(min)}, not ${told(number)}.`;
  if (max !== undefined && number > max) return `${title}: at most ${told(max)}, not ${told(number)}.`;
  return null;
}

/** Whether a reading can be meant. Of things that are counted it is whole; 1000 of them may be too many, yet not one. */
function isPossible(asked: AskedAmount, number: number): boolean {
  return asked.counts ? Number.isInteger(number) : outside(asked, number) === null;
}

function inBounds(asked: AskedAmount, number: number, isTold: boolean): Answer<number> {
  const why = outside(asked, number);
  if (why !== null) return bad(why);
  return isTold ? { ok: true, value: number, readAs: `${formatGiven(number)} ${asked.unit}` } : good(number);
}

function twoReadings(
  { unit, counts }: AskedAmount,
  text: string,
  [grouped, decimal]: readonly number[],
): Answer<never> {
  const told = (number: string) => (counts ? number : `${number} ${unit}`);
  const readings = [
    { words: told(formatGiven(grouped!)), text: typedText(grouped!) },
    { words: told(formatFixed(decimal!, counts ? 0 : 3)), text: typedText(decimal!) }, // three decimals, as typed
  ];
  const [one, other] = readings;
  return { ok: false, why: `“${text.trim()}” is ${one!.words} or ${other!.words}: choose one.`, readings };
}
