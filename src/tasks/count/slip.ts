import { choice, type Option } from '../fields';
import type { RunState } from '../fold';
import type { Step } from '../task';
import { countedDrops, slipOf, targetsText, type Round } from './rounds';
import { stockOf } from './stock';

/** Words of what was decided, for the record, where the numbers are no longer at hand. */
const DECIDED: Record<string, string> = { accept: 'Left as it is', on: 'Counted on' };

/** What can be done after a drop too few or too many. */
function ways(run: RunState, round: Round): Option[] {
  const count = countedDrops(run, round.id);
  const { drops, rest } = round;
  const on = {
    value: 'on',
    words: `Count on to ${drops}`,
    more: `${drops - count} more of this vial`,
  };
  const accept = {
    value: `accept|${targetsText(rest)}`,
    words: 'Leave it as it is',
    more: 'what is really in the vial goes into the record',
  };
  return [...(count < drops ? [on] : []), accept];
}

/** Asks how to go on when a line has not the drops it was to have. */
export function slipStep(run: RunState, round: Round): Step {
  const name = slipOf(round);
  const count = countedDrops(run, round.id);
  const off = Math.abs(count - round.drops);
  const options = run.at === name ? ways(run, round) : [];
  const typed = run.typed[name];
  if (typed !== undefined && !options.some(({ value }) => value === typed))
    options.push({ value: typed, words: DECIDED[typed.split('|')[0]!] ?? typed });
  return {
    key: name,
    say: `‹${count}› of ${round.drops} drops of ${stockOf(round.id)?.code ?? 'it'}: ‹${off} too ${count > round.drops ? 'many' : 'few'}›.`,
    more: ['Nothing is lost.'],
    ask: [choice({ name, title: 'How do you go on?', options })],
    ...(typed === 'on' ? { next: round.key } : {}),
  };
}
