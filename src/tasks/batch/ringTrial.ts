import type { Batch } from '../../records/kind/batch';
import { withFact } from '../../workshop/made/since';
import { duesOf, rowOf } from '../../workshop/made/trials';
import { answer } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { hasTwoVessels } from './emulsionSteps';
import { fields } from './plan/fields';
import type { Making } from './progress';

const SORT = 'ring';

/** Whether bottles of an emulsion are put aside for a ring, asked with its name; nothing of a solution, or of a run of an older version. */
export function ringFields(run: RunState, { plan }: Making): Field[] {
  return hasTwoVessels(run, plan) ? [fields.ring] : [];
}

/** What is done for it. */
export function ringTrialWords(run: RunState, making: Making): string[] {
  const row = rowOf(SORT);
  if (ringFields(run, making).length === 0 || answer(run, fields.ring) !== 'yes' || !row) return [];
  return [`Ring trial: put full bottles aside, ${row.under}. The Bench says when to look: day ${row.days.join(', ')}.`];
}

/** The batch with its ring trial begun, whose days are due on the Bench. */
export function withRingTrial(run: RunState, making: Making, batch: Batch): Batch {
  const row = rowOf(SORT);
  if (ringFields(run, making).length === 0 || answer(run, fields.ring) !== 'yes' || !row) return batch;
  const { madeOn: begun } = batch;
  return withFact(batch, { fact: 'trial', sort: SORT, under: row.under, begun, dues: duesOf(row, begun) });
}
