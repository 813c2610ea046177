import { calibrateDrops, dropOfDilution, SHARED_CALIBRATION_LIMIT, TYPICAL_DROP_SPREAD } from '../core/drop/drop';
import { combineCalibrations } from '../core/drop/dropHistory';
import { transferDrop, type HangingLiquid } from '../core/drop/dropTransfer';
import { measured, standardUncertainty, type Measured } from '../core/number/measured';
import { massFraction } from '../core/number/units';
import { attempt, Refused } from './attempt';
import type { Calibration } from '../records/kind/dropper';
import { find, list, newRecord } from '../records/shelf';
import type { LiquidClass } from '../tables/solvents';
import { surfaceTensions } from '../tables/surfaceTensions';
import { typicalDrops } from '../tables/typicalDrops';
import { formatDay } from '../ui/format';

/** What one drop weighs, mg, and where that is known from. */
export interface DropOnHand {
  readonly mgPerDrop: Measured;
  /** Standard deviation of one drop over the mean drop. */
  readonly spread: number;
  readonly calibrated: boolean;
  /** In a few words: weighed when, carried over, or typical. */
  readonly words: string;
  readonly source: string;
}

/** The liquid in a dropper: the id it was calibrated under (a solvent's or a material's), its class and strength (g/g; 1 for neat). */
export interface DropLiquid {
  readonly id: string;
  readonly liquid: LiquidClass | null;
  readonly strength: number;
}

/**
 * What one drop of a liquid from a dropper weighs: its own calibrations together; else, for a mobile liquid from a square-cut tip, carried
 * over from another liquid in the same dropper as a first guess; else a typical drop with its honest spread.
 */
export function dropOf(dropper: string, liquid: DropLiquid): DropOnHand {
  const own = calibrationsOf(dropper).filter((calibration) => calibration.liquid.id === liquid.id);
  const neat = find('material', liquid.id) !== undefined;
  // Traces of aroma change a drop of water at once, so a calibration with water serves water alone.
  const thin = liquid.strength === 0 || (liquid.strength <= SHARED_CALIBRATION_LIMIT && liquid.liquid !== 'water');
  if (own.length > 0 && (neat || thin)) return weighed(own, neat ? 0 : liquid.strength);
  const typical = typicalDrop(dropper, liquid);
  return (thin && carriedOver(dropper, liquid, typical)) || typical;
}

/** The dropper whose drops of a liquid are known, the newest of several; else the newest, else 'typical' for one that no one has weighed. */
export function dropperFor(liquid: DropLiquid): string {
  const droppers = list('dropper');
  return (droppers.find(({ id }) => dropOf(id, liquid).calibrated) ?? droppers[0])?.id ?? 'typical';
}

/** Calibrations of a dropper, oldest first. */
function calibrationsOf(dropper: string): Calibration[] {
  return list('calibration')
    .filter((calibration) => calibration.dropper === dropper)
    .reverse();
}

/** All calibrations of one dropper with one liquid as one; the newest alone where they disagree. */
export function combined(oldestFirst: readonly Calibration[]): {
  mgPerDrop: Measured;
  drifted: boolean;
  change: number | null;
} {
  const newest = oldestFirst.at(-1)!;
  const known = oldestFirst.every(({ mgPerDrop }) => standardUncertainty(mgPerDrop) > 0);
  if (!known || oldestFirst.length === 1) return { mgPerDrop: newest.mgPerDrop, drifted: false, change: null };
  const { mgPerDrop, drifted, change } = combineCalibrations(
    oldestFirst.map((one) => one.mgPerDrop),
    newest.id,
  );
  return { mgPerDrop: drifted ? newest.mgPerDrop : mgPerDrop, drifted, change };
}

function weighed(oldestFirst: readonly Calibration[], strength: number): DropOnHand {
  const newest = oldestFirst.at(-1)!;
  const { mgPerDrop, drifted } = combined(oldestFirst);
  const day = formatDay(newest.made);
  const times = oldestFirst.length === 1 || drifted ? '' : `, ${oldestFirst.length} calibrations together`;
  return {
    mgPerDrop: dropOfDilution(mgPerDrop, massFraction(strength), newest.id),
    spread: newest.spread,
    calibrated: true,
    words: `weighed ${day}${drifted ? '; it has changed since the one before' : times}`,
    source: `your calibration of ${day}, ${newest.readings.length === 1 ? '1 weighing' : `${newest.readings.length} weighings`}${times}`,
  };
}

/** A drop from another liquid in the same dropper; null where no calibration or no surface tension is there to start from. */
function carriedOver(dropper: string, liquid: DropLiquid, typical: DropOnHand): DropOnHand | null {
  const to = hanging(liquid.id);
  const start = calibrationsOf(dropper)
    .reverse()
    .find(({ liquid: other }) => hanging(other.id) !== null);
  const from = start && hanging(start.liquid.id);
  if (!to || !start || !from) return null;
  const outlet = find('dropper', dropper)?.outlet === 'lip or insert' ? 'lip or insert' : 'square tip';
  const job = {
    mgPerDrop: start.mgPerDrop,
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
  const words = `a first guess from ${start.liquid.name}: weigh 20 drops to be sure`;
  return { mgPerDrop, spread: TYPICAL_DROP_SPREAD, calibrated: false, words, source: why };
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** A liquid as it hangs from a tip, from the table; null where its surface tension is not known. */
function hanging(id: string): HangingLiquid | null {
  const row = surfaceTensions.find((one) => one.id === id);
  if (!row) return null;
  const { value, halfWidth } = row.surfaceTension;
  const source = { id: `surface tension:${id}`, words: `surface tension of ${row.name}` };
  return {
    density: row.density,
    viscous: row.viscous,
    surfaceTension: measured(value, halfWidth / Math.sqrt(3), source),
  };
}

function typicalDrop(dropper: string, { liquid }: DropLiquid): DropOnHand {
  const row = typicalDrops.find((typical) => typical.liquid === (liquid ?? 'neat oil'))!;
  const source = {
    id: `typical:${row.liquid}:${dropper}`,
    words: `a typical drop of ${row.liquid === 'unknown' ? 'any liquid' : row.liquid}: this dropper was not weighed with it`,
  };
  return {
    mgPerDrop: measured(row.meanMg, row.uMg, source),
    spread: TYPICAL_DROP_SPREAD,
    calibrated: false,
    words: 'typical, not weighed',
    source: `typical, not weighed: ${row.source}`,
  };
}

/** Drops that were counted onto a scale, in passing. */
interface Weighed {
  /** Id of the dropper; one that is not on the Shelf learns nothing. */
  readonly dropper: string | null;
  readonly liquid: DropLiquid;
  /** What the liquid is called. */
  readonly name: string;
  readonly drops: number;
  readonly massG: number;
  readonly readabilityG: number;
}

/**
 * What drops that were weighed in passing teach of their dropper and liquid, as a calibration of one weighing with its honest ±; null where
 * the dropper has no name, or the drop is that of neither a solvent nor a neat material.
 */
export function learnedDrop({ dropper: id, liquid, name, ...weighing }: Weighed): Calibration | null {
  const dropper = find('dropper', id);
  const { drops, massG, readabilityG } = weighing;
  if (!dropper || drops === 0 || !isShared(liquid)) return null;
  const words = `calibration of ${dropper.name} with ${name}`;
  const drop = (id: string) => {
    const { mgPerDrop, perDropSpread } = calibrateDrops([{ drops, massG }], { readabilityG }, { id, words });
    return { mgPerDrop, spread: perDropSpread };
  };
  const record = newRecord('calibration', {
    from: [dropper.id],
    dropper: dropper.id,
    liquid: { id: liquid.id, name },
    readings: [{ drops, massG }],
    readabilityG,
    ...drop('x'),
  });
  return { ...record, ...drop(`calibration:${record.id}`) };
}

/** Whether a drop of this liquid is that of the solvent or the material that its calibration goes by. Traces of aroma change one of water. */
function isShared({ strength, liquid }: DropLiquid): boolean {
  return strength === 1 || (strength <= SHARED_CALIBRATION_LIMIT && (liquid !== 'water' || strength === 0));
}
