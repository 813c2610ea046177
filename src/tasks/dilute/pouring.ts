import { formatGiven, formatMeasured, gramsText, formatPlain, measuredText, showsNothing } from '../../ui/format';
import { dropsText, ofTarget } from '../../workshop/dropWords';
import type { RunState } from '../engine/fold';
import { roomC } from '../../workshop/onHand';
import { answer, types } from '../engine/answers';
import type { Offer } from '../engine/task';
import { cautionsFor, smellOnlyReason } from './cautions';
import { fields, type DiluteStep, type Pour } from './fields';
import { madeOf } from './made';
import { inMl, type Order } from './making';
import { wayDown } from './wayDown';

/** Plan, solvent, material. */
export function makingSteps(run: RunState, order: Order): DiluteStep[] {
  return [
    planStep(run, order),
    pourStep(run, order, { pour: 'solvent', grams: order.plan.solventG, say: 'into the vial' }),
    order.byDrops ? dropStep(run, order) : massStep(order),
  ];
}

/** What the vial will be, and the better ways where there are any. */
function planStep(run: RunState, order: Order): DiluteStep {
  const { drops, tooLittle } = order.plan;
  const better = tooLittle ? wayDown(run, order) : null;
  const ml = formatPlain(inMl(order, order.plan.solventG), 3);
  const amount = drops ? dropsText(drops.drops) : sourceText(order);
  const off = drops && answer(run, fields.exact) !== 'yes' ? offWords(drops.error) : '';
  const exactly: Offer[] =
    drops && answer(run, fields.exact) !== 'yes' && Math.abs(drops.error) > 0.01
      ? [
          {
            words: `Take ${formatPlain(inMl(order, order.plan.exactG), 3)} mL, then ${amount} are exact`,
            type: types(fields.exact, 'yes'),
          },
        ]
      : [];
  const few = drops
    ? `It needs fewer than 3 drops, so one drop decides.`
    : `It needs less than this scale can weigh well.`;
  return {
    key: 'plan',
    say: `‹${amount}› of ${called(order)} in ‹${ml} mL› of ${order.solvent.name}.`,
    more: [
      ...(tooLittle ? [`${few}${better ? ' Better so:' : ''}`] : []),
      ...(better?.lines ?? []),
      `${drops ? `A drop weighs ${measuredText(order.drop.mgPerDrop, 'mg')}, ${order.drop.words}.` : ''}${off}`,
      smellOnlyReason(order.solvent, order.source) ?? 'Everything in it is fit for drinks.',
    ].filter(Boolean),
    ...(better ? { ask: [fields.within] } : {}),
    ...(isNothing(order) ? { problem: NOTHING } : {}),
    offers: [...(better ? [better.offer] : []), ...exactly],
    cautions: cautionsFor(order.solvent, order.source.drop.strength === 1, order.source.cautions),
    done: 'Begin',
  };
}

const NOTHING =
  'The scale would show nothing of it: make a stronger dilution first and dilute that, or take a finer scale.';

/** True where the material is weighed and the scale would not show it. */
function isNothing({ byDrops, plan, readabilityG }: Order): boolean {
  return !byDrops && showsNothing(plan.amounts.source, readabilityG);
}

/** The material to weigh in, as the scale can show it. */
function sourceText(order: Order): string {
  return gramsText(order.plan.amounts.source, order.readabilityG);
}

/** What whole drops are off by, a share; nothing below half a percent. */
function offWords(error: number): string {
  const percent = Math.round(Math.abs(error) * 100);
  if (percent === 0) return '';
  return ` That is ${percent} % ${error < 0 ? 'weaker' : 'stronger'} than asked, since drops are whole.`;
}

/** Putting solvent in: the first time, or after an overshoot. */
export function pourStep(
  run: RunState,
  order: Order,
  { pour, grams, say }: { pour: Pour; grams: number; say: string },
): DiluteStep {
  const weighed = answer(run, fields.measure) === 'scale';
  const other = answer(run, fields.otherAmount(pour)) === 'yes';
  const ml = inMl(order, grams);
  const g = gramsText(grams, order.readabilityG);
  const air = Math.max(0, order.sizeMl - ml);
  return {
    key: `pour.${pour}`,
    say: weighed
      ? `Put the vial on the scale, tare, and put ‹${g}› of ${order.solvent.name} ${say}.`
      : `Put ‹${formatPlain(ml, 3)} mL› of ${order.solvent.name} ${say}.`,
    more: [
      weighed ? `That is ${formatPlain(ml, 3)} mL at ${roomC()} °C.` : `${g} on a scale, at ${roomC()} °C.`,
      pour === 'solvent' && air > 0.2
        ? `Leaves ${formatPlain(air, 2)} mL below the mark of a ${formatGiven(order.sizeMl)} mL vial.`
        : '',
    ].filter(Boolean),
    ...(weighed ? { ask: [fields.solventG(pour)] } : other ? { ask: [fields.solventMl(pour)] } : {}),
    ...(weighed || other
      ? {}
      : { offers: [{ words: 'I put in another amount', type: types(fields.otherAmount(pour), 'yes') }] }),
    cautions: cautionsFor(order.solvent, false),
  };
}

/** What is taken: what is written on it, and its name. */
function called({ source: { name, tag } }: Order): string {
  return `‹${tag}› (${name})`;
}

function dropStep(run: RunState, order: Order): DiluteStep {
  const { drops } = order.plan;
  const live = (count: number) =>
    `${ofTarget(count, drops!.drops)}${count > 0 ? ` · ${strengthNow(run, order, count)} now` : ''}`;
  return {
    key: 'drops',
    say: `Add ‹${dropsText(drops!.drops)}› of ${called(order)}.`,
    pad: { counter: 'source', target: drops!.drops, live },
    ...((run.drops['source'] ?? 0) === 0 ? { problem: 'Tap once for each drop that falls; none is counted yet.' } : {}),
  };
}

function strengthNow(run: RunState, order: Order, count: number): string {
  const { shown } = madeOf({ ...run, drops: { ...run.drops, source: count } }, order);
  return `${formatMeasured(shown, { most: 3 }).value} ${order.basis}`;
}

function massStep(order: Order): DiluteStep {
  return {
    key: 'material',
    say: `Tare. Weigh in ‹${sourceText(order)}› of ${called(order)}.`,
    more: ['Type what the scale really shows.'],
    ask: [fields.materialG],
    cautions: cautionsFor(null, true, order.source.cautions),
  };
}
