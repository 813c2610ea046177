import { intermediate } from '../../core/dilution/intermediate';
import { expanded } from '../../core/number/measured';
import {
  serialPlan,
  type ByDrops,
  type ByScale,
  type PlannedStep,
  type SerialPlan,
  type Stock,
} from '../../core/dilution/serialPlan';
import { mixtureDensity } from '../../core/liquid/strength';
import { gram, massFraction } from '../../core/number/units';
import { find, list } from '../../records/shelf';
import { leftOf } from '../../records/stock';
import { formatOnScale, formatPlain, formatShare, formatTyped } from '../../ui/format';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { inWater } from '../../workshop/inWater';
import { liquidOfVial, solventsOnHand } from '../../workshop/onHand';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import { fields, SIZES, type Rack } from './fields';
import { FEWEST_DROPS, MOST_DROPS, type Order } from './making';
import { madeName } from './rack';
import { totalStrength } from './source';
import { contentsNow } from '../../workshop/thing/ageing';
import { tagOfId } from '../../workshop/thing/labelled';

/** A better way than one step: what is done in it, in words, and what is typed to take it. */
export interface WayDown {
  /** On the button: 'Make 5 % w/w of CARD neat', or 'Take CARD 1 %' where that is in place of the source. */
  readonly button: string;
  readonly words: string;
  readonly types: Readonly<Record<string, string>>;
}

/** How well a way down may be known, best first (k = 2, a share): ± 10 % serves any nose; where there is no such way, the next. Our choice. */
const WITHIN = [0.1, 0.2, 0.5, 1];

/** The least that a vial between is made of, g: less wets the glass and is not drawn up again. Our choice. */
const LEAST_BETWEEN = gram(2);

/** The strongest dilution of a solid that is proposed where its solubility is not known, g/g. Common practice for alcohol and propylene glycol. */
const SOLID = massFraction(0.1);

/**
 * The way from what is on the Shelf (this source, and vials of the same material) to the strength, known as well as can be, when one step
 * would ask for too little at once; a single dilution between where no plan stays within it; null where there is none.
 */
export function wayDown(run: RunState, order: Order): WayDown | null {
  const { least, fill } = order.plan;
  const batch = gram(fill * mixtureDensity(order.target, order.liquid));
  const wanted = { target: order.target, batch, vial: gram(Math.max(batch, 30)), leastBetween: LEAST_BETWEEN };
  const [shelf, means] = [[ownStock(order), ...vialsOf(run, order)], meansOf(run, order, least)];
  const plan = WITHIN.reduce<SerialPlan | null>(
    (found, within) => found ?? serialPlan({ ...wanted, within }, shelf, means),
    null,
  );
  if (plan) return plan.steps.length === 1 ? instead(plan) : inSteps(order, plan);
  const one = intermediate({
    target: order.target,
    purity: order.liquid.purity!,
    batch,
    bridgeBatch: batch,
    leastSource: least,
    leastBridge: least,
  });
  if (!one) return null;
  const given = { ...types(fields.source, order.source.id), ...strengthGiven(one.first.strength) };
  const rack: Rack = [
    { name: '1', given },
    { name: '2', given: types(fields.source, madeName('1')) },
  ];
  const first = `${formatShare(one.first.strength)} of ${order.source.tag}`;
  return { button: `Make ${first}`, words: `Make ${first} first, and dilute that.`, types: types(fields.rack, rack) };
}

/** Another vial of the Shelf in place of this source. */
function instead({ stock }: SerialPlan): WayDown {
  const first = tagOfId(stock.id) ?? 'the vial';
  return { button: `Take ${first}`, words: `Dilute ${first} instead.`, types: types(fields.source, stock.id) };
}

/** The plan as a rack: each of its dilutions exactly as planned, the last one under the strength that was asked for. */
function inSteps(order: Order, plan: SerialPlan): WayDown {
  const [{ strength }] = plan.steps as [PlannedStep];
  const from = plan.stock.id === order.source.id ? order.source.tag : (tagOfId(plan.stock.id) ?? 'the vial');
  const known = formatPlain((expanded(plan.strength) / plan.strength.value) * 100, 2);
  const lines = plan.steps.map((step, i) => stepText(order, step, i === 0 ? from : 'it'));
  const rack = plan.steps.map((_, i) => ({ name: String(i + 1), given: givenTo(order, plan, i) }));
  return {
    button: `Make ${formatShare(strength)} of ${from}`,
    words: `Better: ${lines.join('; ')}. Known to ± ${known} %.`,
    types: types(fields.rack, rack),
  };
}

function givenTo(order: Order, { stock, steps }: SerialPlan, i: number): Record<string, string> {
  const { source, solvent, strength, drops } = steps[i]!;
  const ml = (source + solvent) / order.liquid.solventDensity;
  const isLast = i === steps.length - 1;
  return {
    ...types(fields.source, i === 0 ? stock.id : madeName(String(i))),
    ...(isLast ? {} : strengthGiven(strength)),
    [fields.size.name]: String(SIZES.find((size) => size >= ml) ?? Math.ceil(ml)),
    [fields.exactSource.name]: String(drops ?? source),
    [fields.exactSolvent.name]: String(solvent),
  };
}

function strengthGiven(strength: number): Record<string, string> {
  return { [fields.strength('% w/w').name]: formatTyped(strength * 100, 3), ...types(fields.basis, '% w/w') };
}

function stepText(order: Order, { source, solvent, strength, drops }: PlannedStep, from: string): string {
  const onScale = (grams: number) => `${formatOnScale(grams, order.readabilityG)} g`;
  const amount = drops === null ? onScale(source) : dropsText(drops);
  return `${amount} of ${from} and ${onScale(solvent)} of solvent make ${formatShare(strength)} w/w`;
}

/** How strong a dilution of the source may be: as water holds it where that is known, a solid in other solvents as is usual. */
function dissolvesIn({ source, solvent }: Order): Pick<Stock, 'dissolves'> {
  const material = source.contents.length === 1 ? find('material', source.contents[0]!.material) : undefined;
  const holds = solvent.id === 'water' ? inWater(material?.cas ?? '', material) : null;
  if (holds) return { dissolves: massFraction(Math.min(1, holds.high / 1e6)) };
  return source.solid ? { dissolves: SOLID } : {};
}

function ownStock(order: Order): Stock {
  const strength = totalStrength(order.source);
  return {
    id: order.source.id,
    strength,
    available: gram(leftNow(order.source.id) ?? 1000),
    ...dissolvesIn(order),
    ...(order.byDrops ? { mgPerDrop: order.drop.mgPerDrop } : {}),
  };
}

/** g left of a bottle or vial; null where no one knows. */
function leftNow(id: string): number | null {
  const record = find('bottle', id) ?? find('vial', id);
  return (record && leftOf(record)?.value) ?? null;
}

/** Vials of the same single material that may stand in as the start, neither empty nor past their date, fit for drinks where this source is. */
function vialsOf(run: RunState, order: Order): Stock[] {
  const material = order.source.contents.length === 1 ? order.source.contents[0]!.material : '';
  return list('vial')
    .filter(
      (vial) => vial.id !== order.source.id && vial.contents.length === 1 && vial.contents[0]!.material === material,
    )
    .filter((vial) => isSmellOnly(vial) === (order.source.refusal !== null) && whyNotByItself(vial) === null)
    .map((vial) => ({
      id: vial.id,
      strength: contentsNow(vial)[0]!.strength,
      available: gram(leftOf(vial)!.value),
      ...(order.byDrops ? { mgPerDrop: dropOf(dropperOf(run), liquidOfVial(vial)).mgPerDrop } : {}),
    }));
}

function meansOf(run: RunState, order: Order, least: number): ByScale | ByDrops {
  if (!order.byDrops)
    return {
      by: 'scale',
      uncertainty: gram(order.readabilityG / Math.sqrt(6)),
      least: gram(least),
      step: gram(order.readabilityG),
    };
  const solvent = solventsOnHand().find(({ id }) => id === order.solvent.id);
  const made = dropOf(dropperOf(run), {
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

function dropperOf(run: RunState): string {
  return answer(run, fields.dropper) ?? 'typical';
}
