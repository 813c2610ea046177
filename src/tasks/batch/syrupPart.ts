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
import { stageSlots } from './stageWords';

/** How the syrup is thrown, its acid and what keeps it. */
export function syrupPart(run: RunState, plan: Plan | null, problem: string | null): Part {
  const { parts, by, acid, acidity, benzoate, sorbate } = asked(run);
  const isThrown = answer(run, parts) !== 0;
  const hasAcid = answer(run, acid) !== 'none';
  const thrown = isThrown ? '{throw.n}, {throw.by}' : '{throw.n}';
  const benzoic = answer(run, benzoate) === 0 ? '{benzoate}' : '{benzoate} of benzoic acid';
  const sorbic = answer(run, sorbate) === 0 ? '{sorbate}' : '{sorbate} of sorbic acid';
  const sour = hasAcid ? '{acidity} of {acid}' : '{acid}';
  return {
    ask: [parts, ...(isThrown ? [by] : []), ...(hasAcid ? [acidity] : []), acid, benzoate, sorbate],
    slots: withStages(run, slotsOf(run, problem)),
    section: {
      title: 'Syrup',
      sentence: `${thrown}, ${sour}, ${benzoic}, ${sorbic}`,
      lines: plan && isThrown ? syrupWords(plan) : [],
    },
  };
}

/** A preservative whose free acid crystallises says so in its own slot. */
function withStages(run: RunState, slots: Record<string, SlotFacts>): Record<string, SlotFacts> {
  const wrong = stageSlots(run);
  const own = Object.entries(slots).map(([name, facts]) => [name, { ...facts, ...wrong[name] }] as const);
  return Object.fromEntries(own);
}

function slotsOf(run: RunState, problem: string | null): Record<string, SlotFacts> {
  const { parts, benzoate, sorbate } = asked(run);
  const thrown = answer(run, parts);
  const usual = chips(['0', '100', '150', '200'], 'mg/L');
  return {
    'throw.n': {
      usual: chips(['0', '4', '5', '6'], 'parts'),
      ...(thrown === null ? {} : { shows: thrown === 0 ? 'No syrup' : `1 part to ${formatPlain(thrown)} of water` }),
      ...wrongIn(problem),
    },
    acidity: { usual: chips(['1', '1.5', '2', '2.5'], 'g/L') },
    benzoate: { usual, ...(answer(run, benzoate) === 0 ? { shows: 'no benzoic acid' } : {}) },
    sorbate: { usual, ...(answer(run, sorbate) === 0 ? { shows: 'no sorbic acid' } : {}) },
  };
}

function syrupWords({ batch: { syrup } }: Plan): string[] {
  return [
    `The syrup has ‹${formatPlain(syrup.brix * 100, 3)} °Brix› and weighs ‹${formatPlain(syrup.mass, 4)} g›.`,
    ...(mayCrystallise(syrup.brix, celsius(20)) ? ['At 20 °C it may hold more sugar than stays dissolved.'] : []),
  ];
}
