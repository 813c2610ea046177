import { formatTyped } from '../../ui/format';
import { chips } from '../engine/card';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore } from '../engine/lastTime';
import { asked, settled } from './asked';
import { dropperOf, fields } from './fields';
import type { Target } from './rounds';
import { dropOfStock, stockOf } from './stock';

const USUAL = [5, 10, 15, 20, 30]; // mL, the vials of the bench
const FULL = 0.9; // our choice: above that no air is left to turn it over

/** Usual vials as chips. */
export const SIZES = chips(USUAL.map(String), 'mL');

/** The smallest usual vial that this much, mL, fits into with some air. */
export function usualSize(fillMl: number): string {
  return formatTyped(USUAL.find((size) => fillMl <= FULL * size) ?? Math.ceil(fillMl / FULL));
}

/** The vial of the trial: as last time, where these drops fit into it; else the smallest usual one. */
export function sizeAsked(run: RunState, targets: readonly Target[]): Field<number> {
  const now = settled(run);
  const fillMl = targets.reduce((sum, { id, drops }) => {
    const stock = stockOf(id);
    return stock
      ? sum + (drops * dropOfStock(stock, dropperOf(now)).mgPerDrop.value) / 1000 / stock.densityGPerMl
      : sum;
  }, 0);
  const fits = asked(run).before.filter((answers) => {
    const size = fields.size.read(answers[fields.size.name] ?? '', 'decimal');
    return size.ok && fillMl <= FULL * size.value;
  });
  return asBefore(run, fields.size, fits, usualSize(fillMl));
}

/** Which vials give drops that no one has weighed from this dropper. */
export function typicalText(run: RunState, targets: readonly Target[]): string[] {
  const tags = targets.flatMap(({ id }) => {
    const stock = stockOf(id);
    return stock && !dropOfStock(stock, dropperOf(run)).calibrated ? [stock.tag] : [];
  });
  if (tags.length === 0) return [];
  return [
    `Not calibrated with this dropper: ${tags.join(', ')}. A typical drop mass is used and the amount may be far off.`,
  ];
}
