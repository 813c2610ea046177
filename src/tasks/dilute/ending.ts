import { scaled } from '../../core/number/measured';
import { attempt, Refused } from '../../workshop/attempt';
import type { RunState } from '../engine/fold';
import { formatKnown, formatPlain, measuredText } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import type { Offer } from '../engine/task';
import { answer, supposing, types } from '../engine/answers';
import { fields, type DiluteStep } from './fields';
import { dropsWeighed, madeOf, type Made } from './made';
import { inMl, type Order } from './making';
import { pourStep } from './pouring';

const OVERSHOOT = 0.02; // our choice: 2 % over the target is worth a word, less is not
const WEIGHED_OVER = 0.1; // our choice: drops that weigh a tenth more than they were taken for are worth a rescue
const BRIM = 1.1; // our choice: what a vial holds up to its rim, over its size; common practice, no source

/** What to do about a vial that came out too strong; nothing where it did not: then it is made. */
export function endSteps(run: RunState, order: Order): DiluteStep[] {
  const made = attempt(() => madeOf(run, order));
  const asMixed = attempt(() => madeOf(supposing(run, types(fields.overshoot, 'keep')), order));
  if (made instanceof Refused || asMixed instanceof Refused || !isOver(run, order, asMixed)) return [];
  const rescued = answer(run, fields.overshoot) === 'rescue' && made.rescue !== null;
  const pour = () => pourStep(run, order, { pour: 'rescue', grams: made.rescue!.add, say: 'on top' });
  return [madeStep(order, asMixed, rescued), ...(rescued ? [pour()] : [])];
}

/**
 * Whether more went in than was planned: drops too many, or a weighing over by more than its scale shows. A strength that is only
 * uncertain is no overshoot.
 */
function isOver(run: RunState, { byDrops, plan, readabilityG, target }: Order, { rescue, strength }: Made): boolean {
  if (rescue === null || strength.value <= target * (1 + OVERSHOOT)) return false;
  const isWeighedOver = dropsWeighed(run) !== null && strength.value > target * (1 + WEIGHED_OVER);
  if (byDrops) return isWeighedOver || (run.drops['source'] ?? 0) > plan.drops!.drops;
  return (answer(run, fields.materialG) ?? 0) > plan.amounts.source + readabilityG;
}

function madeStep(order: Order, made: Made, rescued: boolean): DiluteStep {
  const strength = strengthText(order, made);
  const ml = formatPlain(inMl(order, made.rescue!.add), 2);
  const total = made.rescue!.total / order.liquid.solventDensity;
  const fits = total <= order.sizeMl * BRIM;
  const offer: Offer = rescued
    ? { words: `Keep it as ${strength}`, type: types(fields.overshoot, 'keep'), leave: true }
    : { words: `Rescue: add ${ml} mL of ${order.solvent.name}`, type: types(fields.overshoot, 'rescue'), leave: true };
  return {
    key: 'made',
    say: `It came out stronger: ‹${strength}›.`,
    more: [
      `With ${ml} mL more it is on target.`,
      ...(fits ? [] : [`That makes ${formatPlain(total, 2)} mL: pour it into a larger vial first.`]),
    ],
    results: [strengthResult(order, made)],
    done: rescued ? `Add ${ml} mL` : `Keep it as ${strength}`,
    offers: [offer],
  };
}

function strengthText(order: Order, made: Made): string {
  return `${formatKnown(made.shown, { most: 3 })} ${order.basis}`;
}

/** The true strength with its ±, and how it was worked out. */
export function strengthResult(order: Order, made: Made): Result {
  const { source, solvent, drop, byDrops } = order;
  const inputs = [
    {
      words: `${source.name} put in`,
      text: measuredText(scaled(made.material, 1000), 'mg'),
      source: byDrops ? `drops of ${measuredText(drop.mgPerDrop, 'mg')}: ${drop.source}` : 'weighed',
    },
    { words: 'All together', text: measuredText(made.mass, 'g'), source: 'material and solvent' },
    {
      words: `Density of ${source.name}`,
      text: `${formatPlain(source.density.value)} g/mL at 20 °C`,
      source: source.densitySource,
    },
    {
      words: `Density of ${solvent.name}`,
      text: `${formatPlain(solvent.density.gPerMl)} g/mL at ${solvent.density.atC} °C`,
      source: solvent.density.source,
    },
  ];
  const words = [
    'Mass of neat material over the mass of the dilution; volumes from the densities, added.',
    `Shown as ${order.basis}.`,
  ];
  return { label: 'True strength', amount: made.shown, unit: order.basis, how: { words, inputs } };
}
