import { WATER } from '../../core/drink/batchPlan';
import { waterDensity } from '../../core/liquid/water';
import { REFERENCE_TEMPERATURE } from '../../core/number/units';
import { capacityOf, overCapacity } from '../../workshop/scales';
import { formatPlain, gramsText } from '../../ui/format';
import type { RunState } from '../engine/fold';
import { loadsOf, stepOf, type Pour } from './vessel/pour';

const LITRES_FROM = 1000; // g of water, from which on it is measured rather than weighed: our choice

/** How the scale is used for a weighing: the tare, what it shows without one, what it cannot carry, and water by volume. */
export function tareWords(run: RunState, pours: readonly Pour[], pour: Pour): string[] {
  const before = pours.slice(0, pours.indexOf(pour)).filter(({ into }) => into === pour.into);
  const step = stepOf(run, pour.scale);
  const inIt = before.reduce((sum, { mass, target }) => sum + (mass?.value ?? target), 0);
  return [...tare(run, before, { pour, inIt, step }), overCapacity(pour.target, step), ...byVolume(pour)].filter(
    Boolean,
  );
}

function tare(
  run: RunState,
  before: readonly Pour[],
  { pour, inIt, step }: { pour: Pour; inIt: number; step: number },
): string[] {
  if (loadsOf(run, pour.target, pour.scale) > 1) return ['Tare the scale before each part.'];
  if (before.length === 0) return ['Put the empty vessel on the scale and tare it.'];
  if (inIt + pour.target > capacityOf(step))
    return ['In a cup of its own, tared: together with what is in the vessel the scale does not carry it.'];
  const on = `the scale of ${formatPlain(step)} g`;
  if (before.every(({ scale }) => scale === pour.scale))
    return [`Tare the scale; without that it shows ‹${gramsText(inIt + pour.target, step)}›.`];
  return [
    pour.scale === 'fine'
      ? `In a dish of its own on ${on}, tared. Tip it in, and rinse the dish with what follows.`
      : `Put the vessel on ${on} and tare it.`,
  ];
}

function byVolume({ goods, target }: Pour): string[] {
  if (goods.id !== WATER || target < LITRES_FROM) return [];
  return [`By volume: ‹${formatPlain(target / waterDensity(REFERENCE_TEMPERATURE) / 1000, 4)} L› at 20 °C.`]; // mL per L
}
