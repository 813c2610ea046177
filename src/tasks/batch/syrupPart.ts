import { mayCrystallise } from '../../core/drink/batchPlan';
import { celsius, massFraction } from '../../core/number/units';
import { formatPlain } from '../../ui/format';
import { answer } from '../engine/answers';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { asked } from './plan/asked';
import { wrongIn, type Part } from './page';
import { massOf } from './plan/goods';
import type { Plan } from './plan/planParts';
import { intoSyrup } from './plan/stages';

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
      lines: plan && isThrown ? syrupWords(plan, intoSyrup(run)) : [],
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

/** The syrup as it is thrown: without the concentrate where that goes into the drink. */
function syrupWords({ batch: { syrup }, concentrate }: Plan, holdsAll: boolean): string[] {
  const mass = holdsAll ? syrup.mass : syrup.mass - massOf(concentrate);
  const brix = massFraction((syrup.brix * syrup.mass) / mass);
  return [
    `The syrup has ‹${formatPlain(brix * 100, 3)} °Brix› and weighs ‹${formatPlain(mass, 4)} g›.`,
    ...(mayCrystallise(brix, celsius(20)) ? ['At 20 °C it may hold more sugar than stays dissolved.'] : []),
  ];
}
