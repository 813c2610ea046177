import type { AnyRecord } from '../../records/kind/kinds';
import { overLines } from '../../workshop/drinkable/overNow';
import { facts } from './description';

/** The chip of a drink that is over a limit, in place of "fit for drinks". */
export const OVER = 'over a limit';
/** What is said in a word of a thing that may be over a limit (`over`): smell only before all else. */
export function standingWord(grade: string | undefined, over: boolean): string | undefined {
  return over && grade !== 'smell only' ? OVER : grade;
}

/** The head of the limits that it is over. */
export const NOT_FIT = 'Not fit for drinks';

/** Which limits it is over today, each with value and maximum, a sentence each. */
export function overNotices(record: AnyRecord): string[] {
  return overLines(record).map((line) => `${line.charAt(0).toUpperCase()}${line.slice(1)}.`);
}

/** Why someone went on with it although it was over a limit. */
export function goneOnWith(record: AnyRecord): (readonly [string, string])[] {
  return facts(['Continued over a limit', 'although' in record ? record.although : undefined]);
}
