import { mostEvaporated } from '../core/liquid/dryOff';
import { MG_PER_G } from '../core/number/units';
import { formatPlain } from '../ui/format';
import { evaporationOf } from './evaporationOf';

const STEPS = 3; // our choice: what is lighter than three steps may be taken for drift at zero
const OPENING = Math.PI * 0.0075 ** 2; // m², a vial of 15 mm; our choice
const READING_S = 10; // our choice: until the scale has settled and is read; a drop falls each second
const WORTH = 0.005; // our choice: less than half a per cent is not worth a line

/** Drops that are to be counted on a scale: of which liquid, how many, mg each, and the step of the scale, g. */
interface Counting {
  readonly liquid: string | null;
  readonly drops: number;
  readonly mgPerDrop: number;
  readonly readabilityG: number;
}

/** What of a volatile liquid is gone by the film model when its drops are counted and read, as a share of them; 0 where nothing is known. */
export function lostWhileCounting({ liquid, drops, mgPerDrop }: Omit<Counting, 'readabilityG'>): number {
  const film = evaporationOf(liquid ?? undefined)?.film;
  return film ? (mostEvaporated(film) * OPENING * (drops + READING_S) * MG_PER_G) / (drops * mgPerDrop) : 0;
}

/** One line each on what a scale does to counted drops, where it matters. */
export function weighingAdvice(counting: Counting): string[] {
  const { drops, mgPerDrop, readabilityG } = counting;
  const lost = lostWhileCounting(counting);
  return [
    ...(mgPerDrop < STEPS * readabilityG * MG_PER_G
      ? ['Take the vial off, count into it, and put it back: a scale at zero may swallow drops as light as these.']
      : []),
    ...(lost >= WORTH
      ? [
          `Narrow vial, read at once: up to ${formatPlain(lost * 100, 1)} % of ${drops} drops may dry off meanwhile, always to the light side.`,
        ]
      : []),
  ];
}
