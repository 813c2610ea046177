import type { Head } from './journalLines';
import type { State, Touched } from '../store/state';

/** What one journal file says at its head and at its end. */
export interface FileFacts {
  readonly head: Head | null;
  /** Number of the last write in it, -1 when there is none. */
  readonly last: number;
  readonly damaged: boolean;
}

/** What brings the two copies together again. */
export type Mending =
  | { do: 'nothing' }
  /** The store lacks what the journal holds after write number `after`; -1: all of it. */
  | { do: 'fill the database'; after: number }
  /** The journal lacks the last few writes, and the store knows what they touched. */
  | { do: 'top up the second copy'; writes: readonly Touched[] }
  /** The journal is not to be trusted or lacks too much: write it again from the store. */
  | { do: 'rewrite the second copy' }
  /** The journal belongs to a store that is lost; what the store of today has not comes back from it. */
  | { do: 'join' };

/** Compares the store with the journal by their counters alone; this is done at every start, before anything is written. */
export function compareCopies(state: State | undefined, files: readonly FileFacts[]): Mending {
  const last = Math.max(-1, ...files.map((file) => file.last));
  if (!state)
    return last > 0 || files.some((file) => file.damaged) ? { do: 'fill the database', after: -1 } : { do: 'nothing' };
  if (files.some(({ head }) => head && head.store !== state.store)) return { do: 'join' };
  if (last > state.n) return { do: 'fill the database', after: state.n };
  const partial = files.length > 0 && files.every(({ head }) => !head || head.base < 0);
  if (partial || files.some((file) => file.damaged)) return { do: 'rewrite the second copy' };
  if (last === state.n) return { do: 'nothing' };
  const lacking = state.recent.filter((write) => write.n > last);
  const known = last >= 0 && lacking.length === state.n - last && lacking.every((write) => write.keys !== null);
  return known ? { do: 'top up the second copy', writes: lacking } : { do: 'rewrite the second copy' };
}
