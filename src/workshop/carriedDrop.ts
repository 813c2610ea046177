import { dropOfDilution, onAnotherDay, TYPICAL_DROP_SPREAD } from '../core/drop/drop';
import { transferDrop, type HangingLiquid } from '../core/drop/dropTransfer';
import { measured, standardUncertainty } from '../core/number/measured';
import { massFraction } from '../core/number/units';
import type { Calibration } from '../records/kind/dropper';
import type { Material } from '../records/kind/material';
import { find } from '../records/shelf';
import { aromaTensions, surfaceTensions } from '../tables/surfaceTensions';
import { attempt, Refused } from './attempt';
import { calibrationsOf, inThisRoom, type DropLiquid, type DropOnHand } from './calibrations';

/** Materials of the catalogue whose liquid is in the table of surface tensions under another id. */
const SAME: Readonly<Record<string, string>> = {
  'd-limonene': 'limonene',
  'l-carvone': 'carvone',
  'd-carvone': 'carvone',
};

/**
 * A drop from another liquid in the same dropper, from the calibration that tells it best; null where no calibration or no surface tension is
 * there to start from, or the solvent is water with something in it.
 */
export function carriedOver(dropper: string, liquid: DropLiquid, typical: DropOnHand): DropOnHand | null {
  const to = hanging(liquid.id);
  if (!to || (to.water && liquid.strength > 0)) return null;
  const guesses = calibrationsOf(dropper)
    .reverse()
    .flatMap((one) => carriedFrom(one, to, { dropper, liquid, typical }) ?? []);
  const [best] = guesses.sort((a, b) => width(a) - width(b)); // the newest of several alike
  return best ?? null;
}

/** Relative standard uncertainty of a guess; of a drop that could not be carried over, above all others. */
function width({ mgPerDrop, source, words }: DropOnHand): number {
  return words.includes(lower(source)) ? Infinity : standardUncertainty(mgPerDrop) / mgPerDrop.value;
}

function carriedFrom(
  one: Calibration,
  to: HangingLiquid,
  { dropper, liquid, typical }: { dropper: string; liquid: DropLiquid; typical: DropOnHand },
): DropOnHand | null {
  const from = (one.liquid.strength ?? 0) > 0 ? null : hanging(one.liquid.id);
  if (!from) return null;
  const outlet = find('dropper', dropper)?.outlet === 'lip or insert' ? 'lip or insert' : 'square tip';
  const job = {
    mgPerDrop: onAnotherDay(inThisRoom(one), dropper),
    from,
    to,
    outlet,
    typical: typical.mgPerDrop,
    id: `${dropper}:${liquid.id}`,
  } as const;
  const guess = attempt(() => transferDrop(job)); // refused where the weighed drop is none that can hang from a tip
  if (guess instanceof Refused) return null;
  const { basis, mgPerDrop, why } = guess;
  if (basis === 'typical') return { ...typical, words: `typical: ${lower(why)}`, source: why };
  const apart = find('material', liquid.id) ? 0 : liquid.strength;
  return {
    mgPerDrop: dropOfDilution(mgPerDrop, massFraction(apart), job.id),
    spread: TYPICAL_DROP_SPREAD,
    calibrated: false,
    words: `a first guess from ${one.liquid.name}: weigh 20 drops to be sure`,
    source: why,
  };
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** A liquid as it hangs from a tip: of the table, or a neat material of its kind; null of a solid, and where nothing is known. */
function hanging(id: string): HangingLiquid | null {
  const material = find('material', id);
  const known = material ? (SAME[material.catalogue ?? ''] ?? material.catalogue) : id;
  const row = surfaceTensions.find((one) => one.id === known);
  if (!row) return material ? ofItsKind(material) : null;
  const { value, halfWidth } = row.surfaceTension;
  const source = { id: `surface tension:${row.id}`, words: `surface tension of ${row.name}` };
  return {
    density: row.density,
    viscous: row.viscous,
    water: row.id === 'water',
    surfaceTension: measured(value, halfWidth / Math.sqrt(3), source),
  };
}

/** A neat aroma liquid that no table has. */
function ofItsKind({ id, name, family, form, density }: Material): HangingLiquid | null {
  if (form === 'solid') return null;
  const row = aromaTensions[family === 'citrus oil' || family === 'terpene' ? 'terpene' : 'other'];
  const source = { id: `surface tension:${id}`, words: `surface tension of ${name}, not looked up` };
  return {
    density: density?.gPerMl ?? row.density,
    viscous: form === 'viscous',
    water: false,
    surfaceTension: measured(row.value, row.halfWidth / Math.sqrt(3), source),
  };
}
