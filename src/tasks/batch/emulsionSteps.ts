import { formatPlain } from '../../ui/format';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { ringWords } from './emulsionWords';
import { asked } from './plan/asked';
import { fields } from './plan/fields';
import { EMULSION_WATER } from './plan/goods';
import { emulsifierOf, isOfOil, isOfOneVessel } from './plan/phases';
import type { Plan } from './plan/planParts';
import type { Pour } from './vessel/pour';

/** Where an emulsion is made in two vessels; a run of an older version goes on in one. */
export function hasTwoVessels(run: RunState, { emulsion }: Plan): boolean {
  return emulsion !== null && !isOfOneVessel(run);
}

/** Which vessel a weighing of the emulsion goes into. */
export function vesselOf({ goods }: Pick<Pour, 'goods'>, plan: Plan): 'oil' | 'water' {
  if (goods.id === EMULSION_WATER) return 'water';
  const isLine = plan.concentrate.some((one) => one.goods.id === goods.id && one.goods.source !== null);
  return (isLine ? isOfOil(goods.id) : goods.id.startsWith('agent-')) ? 'oil' : 'water';
}

/** What follows on a weighing of the emulsion: the agent dissolved once the oils are in; after the last one gum, coarse, fine. */
export function stepsAfter(run: RunState, plan: Plan, so: { pours: readonly Pour[]; i: number }): Step[] {
  if (!hasTwoVessels(run, plan)) return [];
  const { pours, i } = so;
  const next = pours[i + 1];
  const isLastOil = vesselOf(pours[i]!, plan) === 'oil' && (!next || vesselOf(next, plan) === 'water');
  const hasAgent = pours.some(({ goods }) => goods.id.startsWith('agent-'));
  return [
    ...(isLastOil && hasAgent ? [agentStep] : []),
    ...(next ? [] : [gumStep(run), coarseStep, fineStep(run, plan)]),
  ];
}

const agentStep: Step = {
  key: 'e.oil',
  say: 'Dissolve the weighting agent in the ‹oil vessel›.',
  more: [
    'Stir until it is clear. Warm and covered it is quicker (50 to 60 °C: common practice, no source); let it cool again.',
    'What stays undissolved ends up as grains in the drink.',
  ],
  done: 'It is clear',
};

function gumStep(run: RunState): Step {
  const { name, hydrate } = emulsifierOf(run);
  return {
    key: 'e.water',
    say: `Let the ‹water vessel› take up the ${name}.`,
    more: [hydrate, 'Nothing keeps it from spoiling: cover it, keep it cold, and continue within a day.'],
    done: 'It is smooth',
  };
}

const coarseStep: Step = {
  key: 'e.coarse',
  say: 'Pour the ‹oil vessel› into the ‹water vessel›, slowly, under a fast mixer.',
  more: [
    'Never the water into the oil. Scrape the oil vessel out with a little of what it became.',
    'Mix until no drop of oil can be seen on a glass rod.',
  ],
  done: 'It is even',
};

function fineStep(run: RunState, plan: Plan): Step {
  const [measured, planned] = [answer(run, fields.d90), answer(run, asked(run).droplet)];
  const isLarge = measured !== null && planned !== null && measured > planned;
  return {
    key: 'e.fine',
    say: `Homogenise it until 90 % of the oil is in droplets under ‹${formatPlain(planned ?? 0)} µm›.`,
    more: [
      ...(isLarge ? [`Larger than planned: pass it again, then measure again.`] : []),
      ...ringWords(run, plan),
      'Two passes and more. Published emulsions have a mean of 0.3 to 0.4 µm; a mixer alone leaves droplets of some µm.',
    ],
    ask: [fields.d90],
    done: 'Next',
  };
}
