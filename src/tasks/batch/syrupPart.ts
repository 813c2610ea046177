import { mayCrystallise } from '../../core/drink/batchPlan';
import { celsius } from '../../core/number/units';
import { formatPlain, formatTypedText } from '../../ui/format';
import { answer } from '../engine/answers';
import { textOf } from '../engine/fields';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { asked } from './plan/asked';
import { wrongIn, type Part } from './page';
import type { Plan } from './plan/planParts';

/** How the syrup is thrown, its acid and what keeps it. */
export function syrupPart(run: RunState, plan: Plan | null, problem: string | null): Part {
  const { parts, by, acid, acidity, benzoate, sorbate } = asked(run);
  const isThrown = answer(run, parts) !== 0;
  const hasAcid = answer(run, acid) !== 'none';
  const thrown = isThrown ? '{throw.n} by {throw.by}' : '{throw.n}';
  const sour = hasAcid ? '{acidity} of {acid}' : '{acid}';
  return {
    ask: [parts, ...(isThrown ? [by] : []), ...(hasAcid ? [acidity] : []), acid, benzoate, sorbate],
    slots: slotsOf(run, problem),
    section: {
      title: 'Syrup',
      sentence: `${thrown}, ${sour}, {benzoate}, {sorbate}`,
      lines: plan && isThrown ? syrupWords(plan) : [],
    },
  };
}

function slotsOf(run: RunState, problem: string | null): Record<string, SlotFacts> {
  const { parts, benzoate, sorbate } = asked(run);
  const thrown = answer(run, parts);
  const none = (field: typeof benzoate, words: string): SlotFacts => ({
    usual: chips(['0', '100', '150', '200'], 'mg/L'),
    shows: answer(run, field) === 0 ? `no ${words}` : `${formatTypedText(textOf(run, field))} mg/L ${words}`,
  });
  return {
    'throw.n': {
      usual: chips(['0', '4', '5', '6'], 'parts'),
      ...(thrown === null ? {} : { shows: thrown === 0 ? 'No syrup' : `1 part to ${formatPlain(thrown)} of water` }),
      ...wrongIn(problem),
    },
    acidity: { usual: chips(['1', '1.5', '2', '2.5'], 'g/L') },
    benzoate: none(benzoate, 'benzoic acid'),
    sorbate: none(sorbate, 'sorbic acid'),
  };
}

function syrupWords({ batch: { syrup } }: Plan): string[] {
  return [
    `The syrup has ‹${formatPlain(syrup.brix * 100, 3)} °Brix› and weighs ‹${formatPlain(syrup.mass, 4)} g›.`,
    ...(mayCrystallise(syrup.brix, celsius(20)) ? ['At 20 °C it holds more sugar than stays dissolved.'] : []),
  ];
}
