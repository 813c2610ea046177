import type { Done } from '../../records/kind/record';
import type { RunEvent } from '../../records/kind/run';
import { fold, freshRun, type RunState } from '../engine/fold';
import { answer } from '../engine/answers';
import { fields } from './fields';
import { wanted } from './picked';
import { countedDrops, roundsOf, slipOf, wayAfter } from './rounds';
import { DECIDED } from './slip';
import { stockOf } from './stock';

/** The plan that was counted by, and each count that was left with too few drops or too many, as it was then. */
export function happenedIn(run: RunState, events: readonly RunEvent[]): Pick<Done, 'plan' | 'slips'> {
  const lines = wanted(run).map(({ id, drops }) => ({ id, code: codeOf(id), drops }));
  const error = Number(answer(run, fields.planError) ?? NaN);
  const slips = slipsIn(events);
  return {
    plan: Number.isFinite(error) ? { lines, error } : { lines },
    ...(slips.length > 0 ? { slips } : {}),
  };
}

type Slip = NonNullable<Done['slips']>[number];

function slipsIn(events: readonly RunEvent[]): Slip[] {
  const slips: Slip[] = [];
  let state = freshRun;
  for (const event of events) {
    if (event.type === 'go' && event.text?.startsWith('slip.')) slips.push(...slipAt(state, event.text));
    state = fold([event], state);
  }
  return [...slips, ...slipAt(state, state.at)]; // the run may end with one
}

/** What was decided at the step of a slip; nothing at any other. */
function slipAt(state: RunState, key: string): Slip[] {
  const round = roundsOf(state, wanted(state)).find((one) => slipOf(one) === key);
  const way = round && wayAfter(state, round);
  if (!way) return [];
  const { id, drops } = round;
  const counted = countedDrops(state, id);
  return [{ id, what: codeOf(id), planned: drops, counted, unit: 'drops', way: DECIDED[way] ?? '' }];
}

function codeOf(id: string): string {
  return stockOf(id)?.tag ?? '?';
}
