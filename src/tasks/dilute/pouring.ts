import { formatFixed, formatPlain, measuredText } from '../../ui/format';
import type { RunState } from '../fold';
import type { Offer, Step } from '../task';
import { cautionsFor, smellOnlyReason } from './cautions';
import { fields } from './fields';
import { bridgeFor, exactSolvent, madeOf, plannedMl, planOf, shown, type Order } from './making';

/** Plan, solvent, material. */
export function makingSteps(run: RunState, order: Order): Step[] {
  return [
    planStep(run, order),
    pourStep(run, order, { pour: 'solvent', ml: plannedMl(run, order), say: 'into the vial' }),
    order.byDrops ? dropStep(run, order) : massStep(order),
  ];
}

/** What the vial will be, and the better ways where there are any. */
function planStep(run: RunState, order: Order): Step {
  const { drops, amounts, tooLittle } = planOf(order);
  const between = tooLittle ? bridgeFor(order) : null;
  const ml = formatPlain(plannedMl(run, order), 3);
  const amount = drops
    ? `${drops.drops} ${drops.drops === 1 ? 'drop' : 'drops'}`
    : `${formatPlain(amounts.source, 3)} g`;
  const off =
    drops && run.typed['exact'] !== 'yes'
      ? ` That is ${formatPlain(Math.abs(drops.error) * 100, 2)} % ${drops.error < 0 ? 'weaker' : 'stronger'} than asked, since drops are whole.`
      : '';
  const exactly: Offer[] =
    drops && run.typed['exact'] !== 'yes' && Math.abs(drops.error) > 0.01
      ? [
          {
            words: `Take ${formatPlain(exactSolvent(order, drops), 3)} mL, then ${amount} are exact`,
            type: { exact: 'yes' },
          },
        ]
      : [];
  const few = drops
    ? `It needs fewer than 3 drops, so one drop decides.`
    : `It needs less than this scale can weigh well.`;
  return {
    key: 'plan',
    say: `‹${amount}› of ${order.source.name} in ‹${ml} mL› of ${order.solvent.name}.`,
    more: [
      ...(tooLittle ? [`${few}${between ? ' Make a stronger dilution first, and thin that.' : ''}`] : []),
      `${drops ? `A drop weighs ${measuredText(order.drop.mgPerDrop, 'mg')}, ${order.drop.words}.` : ''}${off}`,
      smellOnlyReason(order.solvent, order.source.grade) ?? 'Everything in it is fit for drinks.',
    ].filter(Boolean),
    offers: [...(between ? [bridgeOffer(run, order, between.first.strength)] : []), ...exactly],
    cautions: cautionsFor(order.solvent, order.source.drop.strength === 1, order.source.cautions),
    done: 'Begin',
  };
}

function bridgeOffer(run: RunState, order: Order, strength: number): Offer {
  const percent = formatPlain(strength * 100, 3);
  const same = ['bottle', 'size', 'ownSize', 'solvent', 'food', 'measure', 'way', 'dropper', 'readability'];
  const typed = Object.fromEntries(
    same.flatMap((name) => (run.typed[name] === undefined ? [] : [[name, run.typed[name]!]])),
  );
  return {
    words: `First make ${percent} % w/w of ${order.source.name}`,
    start: { task: 'dilute', typed: { ...typed, strength: percent, basis: '% w/w' } },
  };
}

/** Putting solvent in: the first time, or after an overshoot. */
export function pourStep(
  run: RunState,
  order: Order,
  { pour, ml, say }: { pour: 'solvent' | 'rescue'; ml: number; say: string },
): Step {
  const weighed = run.typed['measure'] === 'scale';
  const other = run.typed[`${pour}.own`] === 'yes';
  const grams = `${formatFixed(ml * order.solvent.density.gPerMl, 2)} g`;
  const air = Math.max(0, order.sizeMl - ml);
  return {
    key: `pour.${pour}`,
    say: weighed
      ? `Put the vial on the scale, tare, and put ‹${grams}› of ${order.solvent.name} ${say}.`
      : `Put ‹${formatPlain(ml, 3)} mL› of ${order.solvent.name} ${say}.`,
    more: [
      weighed ? `That is ${formatPlain(ml, 3)} mL at 20 °C.` : `${grams} on a scale, at 20 °C.`,
      pour === 'solvent' && air > 0.2
        ? `Leaves ${formatPlain(air, 2)} mL below the mark of a ${order.sizeMl} mL vial.`
        : '',
    ].filter(Boolean),
    ...(weighed ? { ask: [fields.solventG(pour)] } : other ? { ask: [fields.solventMl(pour)] } : {}),
    ...(weighed || other ? {} : { offers: [{ words: 'I put in another amount', type: { [`${pour}.own`]: 'yes' } }] }),
    cautions: cautionsFor(order.solvent, false),
  };
}

function dropStep(run: RunState, order: Order): Step {
  const { drops } = planOf(order);
  const live = (count: number) =>
    count === 0 ? `of ${drops!.drops} drops` : `of ${drops!.drops} drops · ${strengthNow(run, order, count)} now`;
  return {
    key: 'drops',
    say: `Drop in ‹${drops!.drops}› of ${order.source.name}.`,
    pad: { counter: 'source', wish: drops!.drops, live },
    ...((run.drops['source'] ?? 0) === 0 ? { problem: 'Tap once for each drop that falls; none is counted yet.' } : {}),
  };
}

function strengthNow(run: RunState, order: Order, count: number): string {
  const { strength } = madeOf({ ...run, drops: { ...run.drops, source: count } }, order);
  return `${formatPlain(shown(order, strength).value, 3)} ${order.basis}`;
}

function massStep(order: Order): Step {
  const { amounts } = planOf(order);
  return {
    key: 'material',
    say: `Tare. Weigh in ‹${formatPlain(amounts.source, 3)} g› of ${order.source.name}.`,
    more: ['Type what the scale really shows.'],
    ask: [fields.materialG],
    cautions: cautionsFor(null, true, order.source.cautions),
  };
}
