import type { Done } from '../../records/kind/record';
import type { RunEvent } from '../../records/kind/run';
import { fold, freshRun, type RunState } from '../engine/fold';
import { asked } from './fields';
import { countedDrops, roundsOf, slipOf, wayAfter } from './rounds';
import { DECIDED } from './slip';
import { stockOf } from './stock';

/** The plan that was counted by, and each count that was left with too few drops or too many, as it was then. */
export function happenedIn(run: RunState, events: readonly RunEvent[]): Pick<Done, 'plan' | 'slips'> {
  const lines = asked(run).map(({ id, drops }) => ({ id, code: codeOf(id), drops }));
  const error = Number(run.typed['plan-error'] ?? NaN);
  const slips = slipsIn(events);
  return {
    plan: Number.isFinite(error) ? { lines, error } : { lines },
    ...(slips.length > 0 ? { slips } : {}),
  };
}

function slipsIn(events: readonly RunEvent[]): NonNullable<Done['slips']> {
  const slips: NonNullable<Done['slips']> = [];
  let state = freshRun;
  for (const event of events) {
    const left = event.type === 'go' && event.text?.startsWith('slip.') ? event.text : null;
    const round = left && roundsOf(state, asked(state)).find((one) => slipOf(one) === left);
    if (round)
      slips.push({
        id: round.id,
        what: codeOf(round.id),
        planned: round.drops,
        counted: countedDrops(state, round.id),
        unit: 'drops',
        way: DECIDED[wayAfter(state, round)] ?? '',
      });
    state = fold([event], state);
  }
  return slips;
}

function codeOf(id: string): string {
  return stockOf(id)?.tag ?? '?';
}
