import { intermediate } from '../../core/dilution/intermediate';
import { expanded } from '../../core/number/measured';
import { serialPlan, type ByDrops, type ByScale, type PlannedStep, type Stock } from '../../core/dilution/serialPlan';
import { mixtureDensity } from '../../core/liquid/strength';
import { gram } from '../../core/number/units';
import { list } from '../../records/shelf';
import { leftOf } from '../../records/stock';
import { formatOnScale, formatPlain, formatShare, formatTyped, withLocalSign } from '../../ui/format';
import { answer, handedOn, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { liquidOfVial, solventsOnHand } from '../../workshop/onHand';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { isSmellOnly } from '../../workshop/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import type { Offer } from '../engine/task';
import { fields, setUp } from './fields';
import { FEWEST_DROPS, MOST_DROPS, type Order } from './making';
import { totalStrength } from './source';
import { tagOfId } from '../../workshop/labelled';

/** A better way than one step: in words, and the offer that begins it. */
export interface WayDown {
  readonly lines: readonly string[];
  readonly offer: Offer;
}

/**
 * The way from what is on the Shelf (this source, and vials of the same material) to the strength, within the wanted ±, when
 * one step would ask for too little at once; a single dilution between where no plan stays within it; null where there is none.
 */
export function wayDown(run: RunState, order: Order): WayDown | null {
  const { least, fill } = order.plan;
  const batch = gram(fill * mixtureDensity(order.target, order.liquid));
  const wanted = {
    target: order.target,
    batch,
    vial: gram(Math.max(batch, 30)),
    within: (answer(run, fields.within) ?? 10) / 100,
  };
  const plan = serialPlan(wanted, [ownStock(order), ...vialsOf(order)], meansOf(run, order, least));
  if (plan) {
    const known = formatPlain((expanded(plan.strength) / plan.strength.value) * 100, 2);
    const from = plan.stock.id === order.source.id ? order.source.tag : nameOf(plan.stock.id);
    const lines = plan.steps.map((step, i) => `${i + 1}. ${stepText(order, step, i === 0 ? from : 'it')}`);
    const first = plan.steps.length === 1 ? null : plan.steps[0]!.strength;
    return {
      lines: [...lines, `Known to ± ${known} % of it at the end.`],
      offer: offerOf(run, order, { stock: plan.stock.id, strength: first, from }),
    };
  }
  const one = intermediate({
    target: order.target,
    purity: order.liquid.purity!,
    batch,
    bridgeBatch: batch,
    leastSource: least,
    leastBridge: least,
  });
  if (!one) return null;
  const lines = ['Make a stronger dilution first, and thin that; no way down stays within the ± you want.'];
  return {
    lines,
    offer: offerOf(run, order, { stock: order.source.id, strength: one.first.strength, from: order.source.tag }),
  };
}

function stepText(order: Order, { source, solvent, strength, drops }: PlannedStep, from: string): string {
  const onScale = (grams: number) => `${formatOnScale(grams, order.readabilityG)} g`;
  const amount = drops === null ? onScale(source) : dropsText(drops);
  return `‹${amount}› of ${from} and ‹${onScale(solvent)}› of solvent make ${formatShare(strength)} w/w.`;
}

function ownStock(order: Order): Stock {
  const strength = totalStrength(order.source);
  return {
    id: order.source.id,
    strength,
    available: gram(1000),
    ...(order.byDrops ? { mgPerDrop: order.drop.mgPerDrop } : {}),
  };
}

/** Vials of the same single material that may stand in as the start, neither empty nor past their date, fit for drinks where this source is. */
function vialsOf(order: Order): Stock[] {
  const material = order.source.contents.length === 1 ? order.source.contents[0]!.material : '';
  return list('vial')
    .filter(
      (vial) => vial.id !== order.source.id && vial.contents.length === 1 && vial.contents[0]!.material === material,
    )
    .filter((vial) => isSmellOnly(vial) === (order.source.refusal !== null) && whyNotByItself(vial) === null)
    .map((vial) => ({
      id: vial.id,
      strength: vial.contents[0]!.strength,
      available: gram(leftOf(vial)!.value),
      ...(order.byDrops ? { mgPerDrop: dropOf('typical', liquidOfVial(vial)).mgPerDrop } : {}),
    }));
}

function nameOf(vial: string): string {
  return tagOfId(vial) ?? 'the vial';
}

function meansOf(run: RunState, order: Order, least: number): ByScale | ByDrops {
  if (!order.byDrops) return { by: 'scale', uncertainty: gram(order.readabilityG / Math.sqrt(6)), least: gram(least) };
  const solvent = solventsOnHand().find(({ id }) => id === order.solvent.id);
  const made = dropOf(answer(run, fields.dropper) ?? 'typical', {
    id: order.solvent.id,
    liquid: solvent?.liquid ?? null,
    strength: 0.01,
  });
  return {
    by: 'drops',
    mgPerDrop: made.mgPerDrop,
    perDropSpread: made.spread,
    leastDrops: FEWEST_DROPS,
    mostDrops: MOST_DROPS,
    solventUncertainty: gram(0.05),
  };
}

function offerOf(run: RunState, order: Order, to: { stock: string; strength: number | null; from: string }): Offer {
  const asked =
    to.strength === null
      ? { ...handedOn(run, [fields.strength(order.basis)]), ...types(fields.basis, order.basis) }
      : { strength: formatTyped(to.strength * 100, 3), ...types(fields.basis, '% w/w') };
  const words =
    to.strength === null
      ? `Thin ${to.from} instead`
      : `First make ${withLocalSign(formatTyped(to.strength * 100, 3))} % w/w of ${to.from}`;
  return {
    words,
    start: { task: 'dilute', typed: { ...handedOn(run, setUp), ...asked, ...types(fields.source, to.stock) } },
  };
}
