import { formatGiven, formatMeasured, gramsText, formatPlain, showsNothing } from '../../ui/format';
import { dropsText, HOW_TO_DROP, ofTarget } from '../../workshop/dropWords';
import { overCapacity } from '../../workshop/scales';
import type { RunState } from '../engine/fold';
import { roomC } from '../../workshop/onHand';
import { answer, clears, types } from '../engine/answers';
import type { Offer } from '../engine/task';
import { cautionsFor } from './cautions';
import { fields, type DiluteStep, type Pour } from './fields';
import { madeOf } from './made';
import { inMl, type Order } from './making';
import { wholeOffers } from './whole';

/** Solvent where it is weighed or was another amount, then the material. */
export function makingSteps(run: RunState, order: Order): DiluteStep[] {
  const pours = answer(run, fields.measure) === 'scale' || answer(run, fields.otherAmount('solvent')) === 'yes';
  const poured = pours || 'pour.solvent' in run.done; // the first version had a step for it
  const weighs = answer(run, fields.weighs) === 'yes';
  return [
    ...(pours ? [pourStep(run, order, { pour: 'solvent', grams: order.plan.solventG, say: 'into the vial' })] : []),
    ...(order.byDrops
      ? [dropStep(run, order, poured), ...(weighs ? [weighedStep(run)] : [])]
      : [massStep(run, order, poured)]),
  ];
}

/** What is poured, as the hand does it: '14.8 mL of ethanol', 'ethanol up to the shoulder'. */
function pouredText(run: RunState, order: Order): string {
  if (answer(run, fields.measure) === 'shoulder') return `${order.solvent.name} up to the shoulder`;
  return `‹${pourAmount(run, order)}› of ${order.solvent.name}`;
}

/** The amount of solvent as it is measured. */
export function pourAmount(run: RunState, order: Order): string {
  const grams = order.plan.solventG;
  return answer(run, fields.measure) === 'scale'
    ? gramsText(grams, order.readabilityG)
    : `${formatPlain(inMl(order, grams), 3)} mL`;
}

/** The material to take: '6 drops', '0.15 g'. */
export function takenText({ plan, readabilityG }: Order): string {
  return plan.drops ? dropsText(plan.drops.drops) : gramsText(plan.amounts.source, readabilityG);
}

export const NOTHING =
  'The scale would show nothing of it: make a stronger dilution first and dilute that, or take a finer scale.';

/** True where the material is weighed and the scale would not show it. */
export function isNothing({ byDrops, plan, readabilityG }: Order): boolean {
  return !byDrops && showsNothing(plan.amounts.source, readabilityG);
}

/** What whole drops are off by, a share; nothing below half a percent. */
export function offWords(error: number): string {
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
      weighed ? overCapacity(grams, order.readabilityG) : '',
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

/** The pad. What was poured before is said there; where it was another amount, that can be told. */
function dropStep(run: RunState, order: Order, poured: boolean): DiluteStep {
  const { drops } = order.plan;
  const count = run.drops['source'] ?? 0;
  const live = (now: number) =>
    `${ofTarget(now, drops!.drops)}${now > 0 ? ` · ${strengthNow(run, order, now)} now` : ''}`;
  const other: Offer<'pour.solvent'> = {
    words: 'I poured another amount',
    place: 'more',
    type: types(fields.otherAmount('solvent'), 'yes'),
    go: 'pour.solvent',
  };
  const weigh: Offer<'weighed'> = {
    words: 'Weigh it',
    place: 'row',
    type: types(fields.weighs, 'yes'),
    go: 'weighed',
  };
  return {
    key: 'drops',
    say: poured
      ? `Add ‹${dropsText(drops!.drops)}› of ${called(order)}.`
      : `Pour ${pouredText(run, order)}. Add ‹${dropsText(drops!.drops)}› of ${called(order)}.`,
    more: [HOW_TO_DROP],
    pad: { counter: 'source', target: drops!.drops, live },
    offers: [weigh, ...(poured ? [] : [other]), ...wholeOffers(run, order)],
    ...(count === 0 ? { problem: 'Tap once for each drop; none is counted yet.' } : {}),
  };
}

/** One figure after the drops: it is used for the strength, and kept as a calibration of this dropper and liquid. */
function weighedStep(run: RunState): DiluteStep {
  return {
    key: 'weighed',
    say: `What do the ‹${dropsText(run.drops['source'] ?? 0)}› weigh?`,
    more: ['What the scale shows more than before the first drop.'],
    ask: [fields.dropsG],
    ...implausible(run),
    offers: [{ words: 'They were not weighed', type: clears(fields.weighs), go: 'drops' }],
  };
}

const LIGHTEST = 2; // mg a drop; our choice: below any dropper of the bench
const HEAVIEST = 120; // mg a drop; our choice: glycerol from a wide lip weighs less

/** A weight that no drops can have: most likely a slip of the point. */
function implausible(run: RunState): { problem?: string } {
  const grams = answer(run, fields.dropsG);
  const each = grams === null ? null : (grams * 1000) / Math.max(1, run.drops['source'] ?? 0);
  if (each === null || (each >= LIGHTEST && each <= HEAVIEST)) return {};
  return { problem: `That is ${formatPlain(each, 2)} mg a drop, which no drop weighs: look at the point, in g.` };
}

function strengthNow(run: RunState, order: Order, count: number): string {
  const { shown } = madeOf({ ...run, drops: { ...run.drops, source: count } }, order);
  return `${formatMeasured(shown, { most: 3 }).value} ${order.basis}`;
}

function massStep(run: RunState, order: Order, poured: boolean): DiluteStep {
  return {
    key: 'material',
    say: poured
      ? `Tare. Weigh in ‹${takenText(order)}› of ${called(order)}.`
      : `Pour ${pouredText(run, order)}. Tare. Weigh in ‹${takenText(order)}› of ${called(order)}.`,
    more: ['Type what the scale really shows.', overCapacity(order.plan.amounts.source, order.readabilityG)].filter(
      Boolean,
    ),
    ask: [fields.materialG],
    offers: wholeOffers(run, order),
    cautions: cautionsFor(null, true, order.source.cautions),
  };
}
