import type { Change } from '../store/change';
import type { State } from '../store/state';

/** What the page asks of the journal's worker; each is answered with its number. */
export type Ask =
  | { do: 'start' }
  /** One write into both copies. The worker does it, so that a busy page does not hold it up. */
  | { do: 'commit'; changes: readonly Change[] }
  | { do: 'rewrite' }
  | { do: 'look through' }
  | { do: 'erase' };

/** What the worker found and did at the start, or later. */
export interface Told {
  /** Why there is no second copy, or why it lacks something, in one sentence; '' when both copies hold everything. */
  why: string;
  /** What was mended, in the user's words. */
  mended: readonly string[];
  /** What the store had lost and got back from the journal, in the user's words; then what the page has read is out of date. */
  refilled: string;
  /** False where the origin private file system cannot be used at all. */
  possible: boolean;
}

export type Question = Ask & { ask: number };
/** Without a number: told on the worker's own account. */
export interface Answer {
  ask?: number;
  told: Told;
  /** Where the store stands after a commit. */
  state?: State;
  /** Why nothing was stored: an error's name and message. */
  failed?: { name: string; message: string };
}
