import { computed } from '@preact/signals';
import { dryOff, wetness, type DryOff, type EvaporatingSolvent, type OwnTime } from '../../core/liquid/dryOff';
import { celsius, type Celsius } from '../../core/number/units';
import { find, list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { evaporationOf } from '../../workshop/evaporationOf';

/** Room temperatures for which every drying curve of the table is known, °C. */
export const ROOM = { min: 9, max: 40 };

const NEAT = 0.99; // g/g; our choice: above it there is no solvent to wait for

function figuresOf(vial: Vial): EvaporatingSolvent | undefined {
  return evaporationOf(vial.solvent?.id);
}

/** Which drying time a strip of this vial gets, in a room of `room` °C if that is known. */
export function clockOf(vial: Vial, room: number | null): DryOff {
  const figures = figuresOf(vial);
  if (figures) {
    const own = ownTime.value;
    const temperature = room === null ? {} : { temperature: celsius(room) };
    return dryOff(figures, { ...temperature, ...(own ? { own } : {}) });
  }
  if (vial.solvent?.dryOff === 'stays wet')
    return { seconds: null, basis: 'stays wet', words: 'does not dry within a session: smell it wet' };
  const strength = vial.contents.reduce((sum, part) => sum + part.strength.value, 0);
  if (!vial.solvent && strength >= NEAT) return { seconds: 0, basis: 'common practice', words: 'neat, nothing to dry' };
  const name = vial.solvent?.name ?? 'its solvent';
  return { seconds: null, basis: 'not known', words: `no drying figure is known for ${name}` };
}

/** The person's newest own drying time: a strip of a known solvent that they called dry. Looked up once for all rows of a list. */
const ownTime = computed(newestOwnTime);

function newestOwnTime(): OwnTime | null {
  for (const layering of list('layering'))
    for (const { vial: id, dippedAt, driedAt } of layering.strips) {
      const vial = find('vial', id);
      const solvent = vial && figuresOf(vial);
      if (!solvent || solvent.evaporationRate === null || !dippedAt || !driedAt) continue;
      const temperature: { temperature?: Celsius } =
        layering.roomC === undefined ? {} : { temperature: celsius(layering.roomC) };
      return { solvent, seconds: (Date.parse(driedAt) - Date.parse(dippedAt)) / 1000, ...temperature };
    }
  return null;
}

/** How a dipped strip stands. All times in ms since 1970. */
export interface Drying {
  /** Ready to smell: dry, or never going to be. */
  readonly ready: boolean;
  /** 1 just dipped, 0 dry. */
  readonly wet: number;
  /** Ready to be shown beside its code. */
  readonly words: string;
  /** The same at a strip that is drawn: a line, or two. */
  readonly short: readonly string[];
}

interface Dip {
  readonly clock: DryOff;
  readonly dippedAt: number;
  /** When the person called it dry. */
  readonly driedAt: number | null;
  /** The clock ran out, and the person found it wet. */
  readonly stillWet: boolean;
}

const DRY: Drying = { ready: true, wet: 0, words: 'dry', short: ['✓ Dry'] };

/** How a strip stands at `now`. */
export function dryingAt({ clock, dippedAt, driedAt, stillWet }: Dip, now: number): Drying {
  if (driedAt !== null) return DRY;
  if (stillWet) return { ready: false, wet: 0.3, words: 'still wet', short: ['Wet'] };
  if (clock.basis === 'stays wet') return { ready: true, wet: 1, words: 'stays wet', short: ['Stays wet'] };
  if (clock.seconds === null) return { ready: true, wet: 0.5, words: 'time not known', short: ['Dry?'] };
  const left = clock.seconds - (now - dippedAt) / 1000;
  const wet = wetness(clock, Math.max(0, (now - dippedAt) / 1000));
  if (left <= 0) return DRY;
  return { ready: false, wet, words: `wet, about ${leftText(left)}`, short: ['Wet', leftText(left)] };
}

/** When a strip is ready by the clock or by the person, ms since 1970; at once where no time is known. */
export function readyAt({ clock, dippedAt, driedAt }: Omit<Dip, 'stillWet'>): number {
  return driedAt ?? dippedAt + 1000 * (clock.seconds ?? 0);
}

/** To 10 s up to a minute and a half, then to the minute: the clock knows no better. */
function leftText(seconds: number): string {
  if (seconds <= 90) return `${Math.max(10, Math.ceil(seconds / 10) * 10)} s`;
  if (seconds < 5400) return `${Math.ceil(seconds / 60)} min`;
  return `${Math.ceil(seconds / 3600)} h`;
}
