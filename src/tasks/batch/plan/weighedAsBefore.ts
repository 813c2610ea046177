import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { moreFields } from './moreFields';

/** A run of an older version that is past its recipe: what it weighs, and on which scale, stays as it was planned. */
export function isWeighedAsBefore(run: RunState): boolean {
  return ('recipe' in run.done || 'what' in run.done) && answer(run, moreFields.byCapacity) === null;
}
