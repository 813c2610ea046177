import {
  calibrateDrops,
  dropOfDilution,
  onAnotherDay,
  SHARED_CALIBRATION_LIMIT,
  TYPICAL_DROP_SPREAD,
} from '../core/drop/drop';
import { combineCalibrations } from '../core/drop/dropHistory';
import { measured, standardUncertainty, type Measured } from '../core/number/measured';
import { massFraction } from '../core/number/units';
import type { Calibration } from '../records/kind/dropper';
import { find, list, newRecord } from '../records/shelf';
import { typicalDrops } from '../tables/typicalDrops';
import { formatDay, formatPlain } from '../ui/format';
import { carriedOver } from './carriedDrop';
import { calibrationsOf, inThisRoom, warmth, type DropLiquid, type DropOnHand } from './calibrations';

export type { DropLiquid, DropOnHand } from './calibrations';

/**
 * What one drop of a liquid from a dropper weighs: its own calibrations together, the nearest in strength; else, for a mobile liquid from a
 * square-cut tip, carried over from another liquid in the same dropper; else a typical drop with its honest spread, also where that is surer.
 * `asBefore`: as for runs that were planned when only weighed and mobile liquids had a drop of their own.
 */
export function dropOf(dropper: string, liquid: DropLiquid, { asBefore = false } = {}): DropOnHand {
  const typical = typicalDrop(dropper, liquid);
  if (asBefore && liquid.strength > SHARED_CALIBRATION_LIMIT && !isWeighed(dropper, liquid)) return typical;
  const known = weighedDrop(dropper, liquid) ?? carriedOver(dropper, liquid, typical);
  return known && relative(known) <= relative(typical) ? known : typical;
}

/** Whether the neat material itself was weighed from this dropper. */
function isWeighed(dropper: string, { id }: DropLiquid): boolean {
  return find('material', id) !== undefined && calibrationsOf(dropper).some(({ liquid }) => liquid.id === id);
}

function relative({ mgPerDrop }: DropOnHand): number {
  return standardUncertainty(mgPerDrop) / mgPerDrop.value;
}

/** From calibrations with this liquid, or with its solvent; null without any. Traces of aroma change a drop of water, which serves water alone. */
function weighedDrop(dropper: string, { id, strength, liquid }: DropLiquid): DropOnHand | null {
  const neat = find('material', id) !== undefined;
  const apart = (one: Calibration) => (neat ? 0 : Math.abs(strength - (one.liquid.strength ?? 0)));
  const serves = (one: Calibration) => one.liquid.id === id && (liquid !== 'water' || apart(one) === 0);
  const own = calibrationsOf(dropper).filter(serves);
  const least = Math.min(...own.map(apart));
  const nearest = own.filter((one) => apart(one) === least);
  return nearest.length > 0 ? weighed(nearest, least) : null;
}

/** The dropper whose drops of a liquid are known, the newest of several; else the newest, else 'typical' for one that no one has weighed. */
export function dropperFor(liquid: DropLiquid): string {
  const droppers = list('dropper');
  return (droppers.find(({ id }) => dropOf(id, liquid).calibrated) ?? droppers[0])?.id ?? 'typical';
}

/** A calibration as drops are counted with it now: in this room, on another day. */
function asCounted(one: Calibration): Calibration {
  return { ...one, mgPerDrop: onAnotherDay(inThisRoom(one), one.dropper) };
}

/** All calibrations of one dropper with one liquid as one, as drops are counted with it now; the newest alone where they disagree. */
export function combined(calibrations: readonly Calibration[]): {
  mgPerDrop: Measured;
  drifted: boolean;
  change: number | null;
} {
  const oldestFirst = calibrations.map(asCounted);
  const newest = oldestFirst.at(-1)!;
  const known = oldestFirst.every(({ mgPerDrop }) => standardUncertainty(mgPerDrop) > 0);
  if (!known || oldestFirst.length === 1) return { mgPerDrop: newest.mgPerDrop, drifted: false, change: null };
  const { mgPerDrop, drifted, change } = combineCalibrations(
    oldestFirst.map((one) => one.mgPerDrop),
    newest.id,
  );
  return { mgPerDrop: drifted ? newest.mgPerDrop : mgPerDrop, drifted, change };
}

function weighed(oldestFirst: readonly Calibration[], apart: number): DropOnHand {
  const newest = oldestFirst.at(-1)!;
  const { mgPerDrop, drifted } = combined(oldestFirst);
  const day = formatDay(newest.made);
  const times = oldestFirst.length === 1 || drifted ? '' : `, ${oldestFirst.length} calibrations together`;
  const near = apart <= SHARED_CALIBRATION_LIMIT;
  const as = near ? '' : ` with ${newest.liquid.name}`;
  return {
    mgPerDrop: dropOfDilution(mgPerDrop, massFraction(apart), newest.id),
    spread: newest.spread,
    calibrated: near,
    words: `weighed${as} ${day}${drifted ? '; it has changed since the one before' : times}`,
    source: `your calibration of ${day}, ${newest.readings.length === 1 ? '1 weighing' : `${newest.readings.length} weighings`}${times}`,
  };
}

function typicalDrop(dropper: string, { id, liquid }: DropLiquid): DropOnHand {
  const row = typicalDrops.find((typical) => typical.liquid === (liquid ?? 'neat oil'))!;
  const thick = find('material', id)?.form === 'viscous';
  const source = {
    id: `typical:${row.liquid}:${dropper}`,
    words: `a typical drop of ${row.liquid === 'unknown' ? 'any liquid' : row.liquid}: this dropper was not weighed with it`,
  };
  return {
    mgPerDrop: measured(row.meanMg, row.uMg, source),
    spread: TYPICAL_DROP_SPREAD,
    calibrated: false,
    words: thick ? 'thick: it may be anything in this range, so weigh it' : 'typical, not weighed',
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
  if (!dropper || drops === 0) return null;
  const { strength, id: liquidId } = liquid;
  const own = strength > SHARED_CALIBRATION_LIMIT && strength < 1 && !find('material', liquidId);
  if (liquid.liquid === 'water' && strength > 0 && !own) return null; // traces of aroma change its drop at once
  const words = `calibration of ${dropper.name} with ${name}`;
  const drop = (id: string) => {
    const { mgPerDrop, perDropSpread } = calibrateDrops([{ drops, massG }], { readabilityG }, { id, words });
    return { mgPerDrop, spread: perDropSpread };
  };
  const record = newRecord('calibration', {
    from: [dropper.id],
    dropper: dropper.id,
    liquid: own
      ? { id: liquidId, name: `${formatPlain(strength * 100, 2)} % in ${name}`, strength }
      : { id: liquidId, name },
    ...warmth(),
    readings: [{ drops, massG }],
    readabilityG,
    ...drop('x'),
  });
  return { ...record, ...drop(`calibration:${record.id}`) };
}

/** Whether two liquids have one drop: the same one, or thin dilutions in one solvent. */
export function dropsAlike(one: DropLiquid, other: DropLiquid): boolean {
  const thin = Math.max(one.strength, other.strength) <= SHARED_CALIBRATION_LIMIT;
  return one.id === other.id && (thin || one.strength === other.strength);
}
