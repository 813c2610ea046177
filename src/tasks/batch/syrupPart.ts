import { mayCrystallise } from '../../core/drink/batchPlan';
import { celsius } from '../../core/number/units';
import { formatPlain } from '../../ui/format';
import { answer } from '../engine/answers';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { asked } from './plan/asked';
import { wrongIn, type Part } from './page';
import type { Plan } from './plan/planParts';

/** How the syrup is thrown. */
export function syrupPart(run: RunState, plan: Plan | null, problem: string | null): Part {
  const { parts, by } = asked(run);
  const isThrown = answer(run, parts) !== 0;
  return {
    ask: [parts, ...(isThrown ? [by] : [])],
    slots: slotsOf(run, problem),
    section: {
      title: 'Syrup',
      sentence: isThrown ? '{throw.n}, {throw.by}' : '{throw.n}',
      lines: plan && isThrown ? syrupWords(plan) : [],
    },
  };
}

function slotsOf(run: RunState, problem: string | null): Record<string, SlotFacts> {
  const thrown = answer(run, asked(run).parts);
  return {
    'throw.n': {
      usual: chips(['0', '4', '5', '6'], 'parts'),
      ...(thrown === null ? {} : { shows: thrown === 0 ? 'No syrup' : `1 part to ${formatPlain(thrown)} of water` }),
      ...wrongIn(problem),
    },
  };
}

function syrupWords({ batch: { syrup } }: Plan): string[] {
  return [
    `The syrup has ‹${formatPlain(syrup.brix * 100, 3)} °Brix› and weighs ‹${formatPlain(syrup.mass, 4)} g›.`,
    ...(mayCrystallise(syrup.brix, celsius(20)) ? ['At 20 °C it may hold more sugar than stays dissolved.'] : []),
  ];
}
