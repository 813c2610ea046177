import { roundEveryLine } from '../../core/plan/byHand';
import { list } from '../../records/shelf';
import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { drinkG, notByThemselves, pickedMaterials, smellOnlyOf } from './planInstance';
import { dropperOf, fields, wayOf } from './fields';
import { adviceOf, diluteOffer } from './nextVial';
import { Picking } from './Picking';
import { PlanChoice } from './PlanChoice';
import { percent, plansOf, targetsOf, worstLine, type NoPlan, type Plans } from './plans';
import { PlanTable } from './PlanTable';
import { targetsIn, targetsText } from './rounds';
import { dropOfStock, stockOf } from './stock';
import { formatPlain } from '../../ui/format';
import { dropsText } from '../../workshop/dropWords';

/** The steps from a formula to a plan of whole drops. */
export function planningSteps(run: RunState, dropper: Step): Step[] {
  return [
    ...(wayOf(run) === 'materials' ? materialSteps(run) : []),
    { key: 'purpose', say: 'What is the trial for?', ask: [fields.purpose] },
    ...(run.typed['purpose'] === 'drink' ? [drinkStep(run)] : []),
    dropper,
    {
      key: 'limits',
      say: 'How many drops would you count?',
      more: ['The next screen shows what fewer drops would cost.'],
      ask: [fields.most, fields.mix],
    },
    plansStep(run),
    planStep(run),
  ];
}

function materialSteps(run: RunState): Step[] {
  const picked = pickedMaterials(run);
  const items = list('material').map(({ id, code, name, form }) => ({ id, code, name, what: form }));
  return [
    {
      key: 'materials',
      say: 'Which materials?',
      draw: (walk) => <Picking walk={walk} items={items} label="Materials" />,
      told: [['Picked', picked.map(({ code }) => code).join(', ') || '–']],
      ...(picked.length === 0 ? { problem: 'Pick at least one material.' } : {}),
    },
    {
      key: 'parts',
      say: 'How many parts of each?',
      more: ['By mass of the neat material. Only their proportions count.'],
      ask: picked.map(fields.parts),
    },
  ];
}

function drinkStep(run: RunState): Step {
  const [ppm, grams] = [valueOf(run, fields.ppm), drinkG(run)];
  const sum =
    ppm !== null && grams !== null
      ? [`That is ‹${formatPlain((ppm * grams) / 1000, 3)} mg› of neat material in all.`]
      : [];
  return {
    key: 'drink',
    say: 'Which drink, and how much in it?',
    more: ['All drops go into the glass, which is then filled up.', ...sum],
    ask: [fields.ppm, fields.drinkMl, ...(list('base').length > 0 ? [fields.base()] : [])],
  };
}

/** Whether the curve is asked for now; at other steps it would be worked out for nothing. */
function plansAt(run: RunState, key: string) {
  return run.at === key ? plansOf(run) : null;
}

function plansStep(run: RunState): Step {
  const plans = plansAt(run, 'plans');
  const step: Step = {
    key: 'plans',
    say: 'How many drops will you count?',
    draw: (walk) => <PlanChoice walk={walk} />,
    done: 'Look at the plan',
  };
  if (!plans) return step;
  if (!plans.ok) return refusedStep(run, plans);
  return {
    ...step,
    more: ['Worst line, by rounding to whole drops and by chance in counting them:'],
    done: `Look at ${dropsText(plans.chosen.drops)}`,
  };
}

/** Which line cannot be counted, and what would make it possible. */
function refusedStep(run: RunState, { componentId, why, remedy }: NoPlan): Step {
  const barred = componentId === null ? [] : smellOnlyOf(run, componentId);
  const nose = barred.length > 0 ? [`${barred.join(', ')}: smell only, so not for a trial that is tasted.`] : [];
  return {
    key: 'plans',
    say: 'This cannot be counted yet.',
    more: [why, ...nose, remedy],
    problem: why,
    ...(componentId === null ? {} : { offers: [diluteOffer(run, componentId)] }),
  };
}

function planStep(run: RunState): Step {
  const plans = plansAt(run, 'plan');
  if (!plans?.ok) return { key: 'plan', say: plannedText(run) };
  const { chosen, instance } = plans;
  const advice = run.typed['advice'] === 'yes' ? adviceOf(run) : null;
  return {
    key: 'plan',
    say: `‹${dropsText(chosen.drops)}›, worst line ‹${percent(chosen.objective)}› off.`,
    more: [
      ...(advice ? [advice.words] : []),
      ...notByThemselves(targetsOf(chosen).map(({ id }) => id)),
      worstText(plans),
      naiveText(plans),
      ...typicalText(run, chosen.plan),
    ],
    offers: advice?.offers ?? [{ words: 'Which new dilution would help?', type: { advice: 'yes' } }],
    draw: () => <PlanTable instance={instance} answer={chosen} />,
    types: { plan: targetsText(targetsOf(chosen)), 'plan-error': String(chosen.objective) },
    done: `Count ${dropsText(chosen.drops)}`,
  };
}

/** The plan that was taken, for the record. */
function plannedText(run: RunState): string {
  const targets = targetsIn(run.typed['plan'] ?? '').map(
    ({ id, drops }) => `‹${dropsText(drops)}› ${stockOf(id)?.tag ?? '?'}`,
  );
  return targets.length === 0 ? 'The plan.' : `The plan: ${targets.join(', ')}.`;
}

function worstText({ chosen, instance }: Plans): string {
  const worst = worstLine(chosen);
  const name = instance.components.find(({ id }) => id === worst.componentId)!.name;
  return `Worst is ${name}: ${percent(Math.abs(worst.rounding))} by rounding, ${percent(worst.counting)} by chance in counting.`;
}

/** What rounding every line on its own would have given in as many drops: the gain of the plan. */
function naiveText({ chosen, instance }: Plans): string {
  const naive = roundEveryLine({ ...instance, limits: { ...instance.limits, maxDrops: chosen.drops } });
  return naive
    ? `Rounded line by line, in at most as many drops: worst line ‹${percent(naive.objective)}› off.`
    : 'Rounding line by line finds no way with so few drops.';
}

/** Which vials give drops that no one has weighed. */
function typicalText(run: RunState, plan: Readonly<Record<string, number>>): string[] {
  const tags = Object.keys(plan).flatMap((id) => {
    const stock = stockOf(id);
    return stock && !dropOfStock(stock, dropperOf(run)).calibrated ? [stock.tag] : [];
  });
  if (tags.length === 0) return [];
  return [`Not weighed with this dropper: ${tags.join(', ')}. A typical drop stands in, and the line may be far off.`];
}
