import { dropsText } from '../../workshop/dropWords';
import type { Option } from '../../ui/controls/field';
import { choice } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { waysOn } from './rescue';
import { countedDrops, slipOf, type Round } from './rounds';
import { stockOf } from './stock';

/** Words of what was decided, for the record, where the numbers are no longer at hand. */
export const DECIDED: Record<string, string> = {
  on: 'Counted on',
  accept: 'Left as it is',
  complete: 'Changed the lines still to come',
  scaleUp: 'Counted more than planned',
};

/** Asks how to go on when a line has not the drops it was to have. */
export function slipStep(run: RunState, round: Round): Step {
  const name = slipOf(round);
  const count = countedDrops(run, round.id);
  const off = `${Math.abs(count - round.drops)} too ${count > round.drops ? 'many' : 'few'}`;
  const options: Option[] = run.at === name ? waysOn(run, round) : []; // elsewhere it would be worked out for nothing
  const typed = run.typed[name];
  if (typed !== undefined && !options.some(({ value }) => value === typed))
    options.push({ value: typed, label: DECIDED[typed.split('|')[0]!] ?? typed });
  return {
    key: name,
    say: `‹${dropsText(count)}› of ${stockOf(round.id)?.tag ?? 'it'}, not ${round.drops}: ‹${off}›.`,
    more: [options.length > 1 ? 'Nothing is lost: it can be made up for.' : 'Nothing is lost.'],
    ask: [choice({ name, title: 'How do you go on?', options })],
    ...(typed === 'on' ? { next: round.key } : {}),
  };
}
