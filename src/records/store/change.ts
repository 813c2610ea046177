import { GONE, type Stored } from '../kind/record';
import type { RunEvent } from '../kind/run';

/** One thing to be stored: a record (new, or in place of the one with its id), one more event of a run, or a record (and, of a run, its events) to be gone. */
export type Change = { record: Stored } | { event: RunEvent } | { gone: string };

/** The record that a change erases, and with it the steps of a run; null where it erases none. */
export function erasedBy(change: Change): string | null {
  if ('gone' in change) return change.gone;
  return 'record' in change && change.record.kind === GONE ? change.record.id : null;
}

/** How heavy a change is, counted in ordinary records of about 1 kB; a picture has 250 kB at most. */
export function weightOf(change: Change): number {
  return 'record' in change && change.record.kind === 'picture' ? 250 : 1;
}

/** Changes in their order, as many at a time as weigh that much together. */
export function* portions(changes: readonly Change[], weight: number): Generator<Change[]> {
  let [portion, heavy]: [Change[], number] = [[], 0];
  for (const change of changes) {
    portion.push(change);
    heavy += weightOf(change);
    if (heavy < weight) continue;
    yield portion;
    [portion, heavy] = [[], 0];
  }
  if (portion.length > 0) yield portion;
}
