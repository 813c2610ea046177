import { netMass, type Weighing } from '../core/dilution/weighing';
import type { Measured } from '../core/number/measured';
import { studentFactor95 } from '../core/number/student';
import { typedText } from '../core/number/typed';
import type { Scale } from '../records/kind/scale';
import { list } from '../records/shelf';
import { formatGiven } from '../ui/format';

/** The scale on the Shelf that has this smallest step, g; the one that came last where several have. */
export function scaleOf(readabilityG: number): Scale | undefined {
  return list('scale').find((one) => one.readabilityG === readabilityG);
}

/** What a field for the smallest step of a scale begins with: the finest scale on the Shelf, else the usual pocket scale of 0.01 g. */
export function usualStep(): string {
  const steps = list('scale').map(({ readabilityG }) => readabilityG);
  return typedText(steps.length > 0 ? Math.min(...steps) : 0.01);
}

/**
 * How well a scale repeats, g, from weighings of one coin: their standard deviation, widened by Student's factor for so few of them
 * (GUM G.3); undefined where it was not tried.
 */
export function repeatabilityOf(scale: Scale | undefined): number | undefined {
  const { coinG = [] } = scale ?? {};
  if (coinG.length < 2) return undefined;
  const mean = coinG.reduce((sum, g) => sum + g, 0) / coinG.length;
  const variance = coinG.reduce((sum, g) => sum + (g - mean) ** 2, 0) / (coinG.length - 1);
  return (Math.sqrt(variance) * studentFactor95(coinG.length)) / 2;
}

/** A tared weighing (g) with what the scale of that step is known for; of one that is not, at least a step is in doubt. */
export function weighedNet(weighing: Weighing, source: { id: string; words: string }): Measured {
  const repeatabilityG = weighing.repeatabilityG ?? repeatabilityOf(scaleOf(weighing.readabilityG));
  return netMass({ ...weighing, ...(repeatabilityG === undefined ? {} : { repeatabilityG }) }, source);
}

/** The most that the scale of a step carries, g; without end where that is not known. */
export function capacityOf(readabilityG: number | null): number {
  return (readabilityG !== null && scaleOf(readabilityG)?.capacityG) || Infinity;
}

/** What to do where more is to be weighed than the scale of a step carries, g; '' where it carries it, or that is not known. */
export function overCapacity(grams: number, readabilityG: number): string {
  const most = capacityOf(readabilityG);
  if (grams <= most) return '';
  const coarser = list('scale').find(({ capacityG = 0 }) => capacityG >= grams);
  const parts = Math.ceil(grams / most);
  const split = `weigh it in ${parts} parts and add them up`;
  return `This scale carries ${formatGiven(most)} g: ${coarser ? `take ${coarser.name}, or ${split}` : split}.`;
}
