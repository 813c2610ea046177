import { formatPlain, formatTyped } from '../../ui/format';
import { textOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { judgeFields } from '../shared/judgeRun';
import type { Step } from '../engine/task';
import { asksCarrierFood, carrierBottleField, carrierFoodField, carrierRefusal } from './carrierBottle';
import { dissolving, dissolvingText } from './dissolving';
import { agentOptions, agentsLeftOut, creaming, isEmulsion, usualMake, usualOil } from './emulsion';
import { fields } from './fields';
import { basisOf, concentrateOf, planOf as planOf } from './plan';
import type { Plan } from './planParts';
import { outcome } from '../../workshop/attempt';
import { carrierOf, isWeighedIn } from './drinkAsked';

/** How strong the concentrate is, and in what. */
export function concentrateSteps(run: RunState): Step[] {
  const { value: basis, problem } = outcome(() => basisOf(run));
  const share = basis && (basis.drink.mgPerKg * basis.drink.densityGPerMl) / (basis.gramsPerL * 1000);
  const dosage: Step = {
    key: 'dosage',
    say: 'How strong is the concentrate?',
    more: share === null ? [] : [`‹${formatPlain(share * 100, 3)} % w/w› of it is formula.`],
    ask: [fields.dosage, fields.spare],
    ...(problem ? { problem } : {}),
  };
  const solving = dissolving(run);
  const dissolve: Step = {
    key: 'dissolve',
    say: solving ? dissolveSays[solving.verdict] : 'Will it dissolve?',
    more: [
      ...(solving?.lines.map(dissolvingText) ?? []),
      'Good to an order of magnitude, each material as if alone: mix a glass and leave it for a day.',
    ],
    ask: [fields.make(usualMake(run))],
  };
  return [dosage, dissolve, ...(isEmulsion(run) ? emulsionSteps(run) : carrierSteps(run))];
}

const dissolveSays = {
  dissolves: 'It should stay dissolved in the drink.',
  'try it': 'It may stay dissolved: nobody can tell without trying.',
  'stays cloudy': 'It will not stay dissolved in the drink.',
} as const;

function carrierSteps(run: RunState): Step[] {
  const name = carrierOf(run)?.name ?? 'the carrier';
  const which: Step = {
    key: 'carrier',
    say: 'What is it dissolved in?',
    more: ['Try a little first: whether the carrier holds the formula is not computed.'],
    ask: [fields.carrier()],
  };
  const bottle = isWeighedIn(run, carrierOf(run)?.id ?? '') ? null : carrierBottleField(run);
  const asked: Step[] = bottle
    ? [
        {
          key: 'carrier-bottle',
          say: `Which bottle of ${name}?`,
          ask: [bottle],
        },
      ]
    : [];
  if (asksCarrierFood(run))
    asked.push({ key: 'carrier-food', say: `Is this bottle of ${name} food grade?`, ask: [carrierFoodField(run)] });
  const problem = carrierRefusal(run) ?? outcome(() => concentrateOf(run)).problem;
  return [which, ...asked.map((step, i) => (problem && i === asked.length - 1 ? { ...step, problem } : step))];
}

function emulsionSteps(run: RunState): Step[] {
  const { value: basis } = outcome(() => basisOf(run));
  const { problem } = outcome(() => concentrateOf(run));
  const { value: plan } = outcome(() => planOf(run));
  if (!basis) return [{ key: 'oil', say: 'The emulsion.', problem: 'The drink is not known yet: go back.' }];
  const usual = usualOil(basis.lines);
  const guess =
    usual.unknown.length > 0 ? `0.9 was taken for ${usual.unknown.join(', ')}: typical, not confirmed.` : '';
  return [
    {
      key: 'oil',
      say: 'What is in the emulsion?',
      more: agentsLeftOut(run),
      ask: [
        fields.oilDensity(formatTyped(usual.gPerMl, 3), guess),
        fields.agent(agentOptions(run)),
        fields.gum,
        ...(textOf(run, judgeFields.jurisdiction) === 'US' ? [fields.citrus] : []),
      ],
      ...(problem ? { problem } : {}),
    },
    {
      key: 'droplets',
      say: 'How fine are the droplets?',
      more: plan ? ringWords(run, plan) : [],
      ask: [fields.droplet],
    },
  ];
}

function ringWords(run: RunState, plan: Plan): string[] {
  const { emulsion, drink } = plan;
  const rise = outcome(() => creaming(run, plan)).value;
  if (!emulsion || !rise) return [];
  const days = Number.isFinite(rise.days) ? `‹${formatPlain(rise.days, 2)} days›` : 'no time';
  return [
    `The oil phase has ‹${formatPlain(emulsion.oilPhase, 4)} g/mL›, the drink ‹${formatPlain(drink.densityGPerMl, 4)}›: ${emulsion.matched ? 'matched' : 'not matched'}.`,
    ...(emulsion.agent > 0 ? [`Weighting agent in the drink: ‹${formatPlain(emulsion.agentMgPerL, 3)} mg/L›.`] : []),
    `Such droplets ${rise.mmPerDay < 0 ? 'sink' : 'rise'} ‹${formatPlain(Math.abs(rise.mmPerDay), 2)} mm a day› (Stokes): a ring after about ${days}, an estimate.`,
    'Below 1 mm a day is called stable, yet that is 180 mm in half a year.',
  ];
}
