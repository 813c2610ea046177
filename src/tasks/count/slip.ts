import { dropsText } from '../../workshop/dropWords';
import type { Option } from '../../ui/controls/field';
import { answer, ask } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { fields, type CountStep } from './fields';
import { waysOn } from './rescue';
import { countedDrops, slipOf, type Round } from './rounds';
import { stockOf } from './stock';

/** Words of what was decided, for the record, where the numbers are no longer at hand. */
export const DECIDED: Record<string, string> = {
  on: 'Counted on',
  accept: 'Left as it is',
  complete: 'Changed the remaining materials',
  scaleUp: 'Counted more than planned',
};

/** Asks how to go on when a vial has not given the drops it was to give. */
export function slipStep(run: RunState, round: Round): CountStep {
  const key = slipOf(round);
  const count = countedDrops(run, round.id);
  const off = `${Math.abs(count - round.drops)} too ${count > round.drops ? 'many' : 'few'}`;
  const options: Option[] = run.at === key ? waysOn(run, round) : []; // elsewhere it would be worked out for nothing
  const typed = answer(run, fields.slip(round.key));
  if (typed !== null && !options.some(({ value }) => value === typed))
    options.push({ value: typed, label: DECIDED[typed.split('|')[0]!] ?? typed });
  return {
    key,
    say: `‹${dropsText(count)}› of ${stockOf(round.id)?.tag ?? 'it'}, not ${round.drops}: ‹${off}›.`,
    more: [options.length > 1 ? 'Nothing is lost: the remaining drops can be adjusted.' : 'Nothing is lost.'],
    ask: [{ ...ask(fields.slip(round.key), { options }), input: 'choice' }],
    ...(typed === 'on' ? { next: round.key } : {}),
  };
}
