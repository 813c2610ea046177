import { dropAt } from '../core/drop/drop';
import { measured, type Measured } from '../core/number/measured';
import { celsius } from '../core/number/units';
import type { Calibration } from '../records/kind/dropper';
import { list, shelf } from '../records/shelf';
import type { LiquidClass } from '../tables/solvents';
import { lighterPerK } from '../tables/surfaceTensions';

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

/** Calibrations of a dropper, oldest first. */
export function calibrationsOf(dropper: string): Calibration[] {
  return list('calibration')
    .filter((calibration) => calibration.dropper === dropper)
    .reverse();
}

/** The drop of a calibration in this room; as it was weighed where either temperature was never said. */
export function inThisRoom({ mgPerDrop, liquid, temperatureC }: Calibration): Measured {
  const { roomC } = shelf.settings.value;
  if (roomC === undefined || temperatureC === undefined || roomC === temperatureC) return mgPerDrop;
  const kind = liquid.id === 'water' ? 'water' : 'other';
  const { value, halfWidth } = lighterPerK[kind];
  const source = { id: `drop warmth:${kind}`, words: 'how much lighter a drop gets in a warmer room' };
  const at = { weighedAt: celsius(temperatureC), t: celsius(roomC) };
  return dropAt(mgPerDrop, measured(value, halfWidth / Math.sqrt(3), source), at);
}

/** The temperature that a calibration made now keeps: that of the room, where the settings say it. */
export function warmth(): Pick<Calibration, 'temperatureC'> {
  const { roomC } = shelf.settings.value;
  return roomC === undefined ? {} : { temperatureC: roomC };
}
