import type { Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';

/** One thing to be stored: a record (new, or in place of the one with its id), one more event of a run, or a record (and, of a run, its events) to be gone. */
export type Change = { record: Stored } | { event: RunEvent } | { gone: string };
