import { outliers } from '../core/drop/dropAdvice';
import { expanded, type Measured } from '../core/number/measured';
import { MG_PER_G } from '../core/number/units';
import type { Calibration } from '../records/kind/dropper';
import { isOf, type AnyRecord } from '../records/kind/kinds';
import { list } from '../records/shelf';
import { formatDay, measuredText } from '../ui/format';
import type { ScatterNumbers } from '../ui/plot/scatterScale';
import { combined } from './dropMass';

/** A picture of drops in numbers and words. */
export interface DropPicture extends ScatterNumbers {
  readonly title: string;
  readonly words: string;
}

type WeighedDrops = Pick<Calibration, 'readings' | 'readabilityG' | 'mgPerDrop'>;

const bandOf = (drop: Measured) => ({ value: drop.value, uncertainty: expanded(drop) });

/** The readings of one calibration, mg a drop each, and their mean with its ±. */
export function readingsPicture({ readings, readabilityG, mgPerDrop }: WeighedDrops): DropPicture {
  const odd = new Set(outliers(readings, { readabilityG }).map(({ index }) => index));
  const points = readings.map(({ drops, massG, out }, i) => ({
    name: String(i + 1),
    value: (MG_PER_G * massG) / drops,
    ...(out || odd.has(i) ? { odd: true } : {}),
  }));
  const left = readings.some(({ out }) => out);
  const hollow = left ? ' A hollow dot was left out.' : odd.size > 0 ? ' A hollow dot lies far from the others.' : '';
  return {
    title: 'One drop, mg, weighing by weighing',
    words: `Line and band: the mean, ${measuredText(mgPerDrop, 'mg')}.${hollow}`,
    points,
    band: bandOf(mgPerDrop),
  };
}

/** Calibrations of one dropper with one liquid, oldest first, each with its ±, and what counts now. */
export function driftPicture(oldestFirst: readonly Calibration[]): DropPicture {
  const { mgPerDrop, drifted } = combined(oldestFirst);
  return {
    title: `One drop of ${oldestFirst[0]!.liquid.name}, mg, over time`,
    words: drifted
      ? `It has changed more than chance allows: the newest counts, ${measuredText(mgPerDrop, 'mg')} (line and band).`
      : `Alike as chance allows: they count together, ${measuredText(mgPerDrop, 'mg')} (line and band).`,
    points: oldestFirst.map((one) => ({ name: formatDay(one.made), ...bandOf(one.mgPerDrop) })),
    band: bandOf(mgPerDrop),
  };
}

/** What there is to see of a dropper: for each liquid its drift, or the readings of its only calibration. */
function dropPictures(newestFirst: readonly Calibration[]): DropPicture[] {
  const liquids = newestFirst.filter((one, i) => newestFirst.findIndex((other) => isAlike(one, other)) === i);
  return liquids.map((liquid) => {
    const all = newestFirst.filter((one) => isAlike(one, liquid)).reverse();
    return all.length > 1 ? driftPicture(all) : onlyPicture(all[0]!);
  });
}

/** The pictures on the page of a record: of a calibration its readings, and the drift where there are others like it. */
export function dropPicturesOf(record: AnyRecord): DropPicture[] {
  const all = list('calibration');
  if (isOf('dropper', record)) return dropPictures(all.filter(({ dropper }) => dropper === record.id));
  if (!isOf('calibration', record)) return [];
  const like = all.filter((one) => one.dropper === record.dropper && isAlike(one, record));
  const drift = like.length > 1 ? [driftPicture(like.reverse())] : [];
  return [readingsPicture(record), ...drift];
}

function onlyPicture(calibration: Calibration): DropPicture {
  return { ...readingsPicture(calibration), title: `One drop of ${calibration.liquid.name}, mg, weighing by weighing` };
}

/** Whether both are of one liquid: of one strength too, where one was no solvent and no neat material. */
function isAlike({ liquid: one }: Calibration, { liquid: other }: Calibration): boolean {
  return one.id === other.id && one.strength === other.strength;
}
