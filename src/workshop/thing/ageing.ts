import { aged, mostLost, strongerBy } from '../../core/dilution/ageing';
import { netMass } from '../../core/dilution/weighing';
import { minus, times, type Measured } from '../../core/number/measured';
import { leftOf, takingsOf } from '../../records/stock';
import type { Vial } from '../../records/kind/vial';
import { closings } from '../../tables/closings';

const YEAR = 365.25 * 86_400_000; // ms

/** Grams of a vial that are missing beyond what was taken, and what follows if they evaporated. */
export interface Missing {
  readonly missingG: number;
  readonly stronger: Measured;
}

/** Whether the solvent of a vial leaves it by evaporation: what dries off a strip within minutes. */
export function isVolatile({ solvent }: Vial): boolean {
  return solvent?.dryOff === 'minutes';
}

/**
 * What a vial holds as it is now, g/g: as made; stronger by what evaporated as far as the person said so; and with what may have
 * evaporated since in its ±. What the record says of its making stays as it is.
 */
export function contentsNow(vial: Vial): Vial['contents'] {
  const grown = (vial.weighed ?? []).flatMap(({ stronger }) => stronger ?? []);
  const most = isVolatile(vial) ? lossSince(vial) : 0;
  if (grown.length === 0 && most === 0) return vial.contents;
  const now = (strength: Measured) => aged(grown.reduce(times, strength), most, vial.id);
  return vial.contents.map((part) => ({ ...part, strength: now(part.strength) }));
}

/** Most that may have evaporated since it was made, or since it was last weighed, g/g. */
export function lossSince(vial: Vial): number {
  const last = (vial.weighed ?? []).map(({ at }) => at).reduce((late, at) => (at > late ? at : late), vial.madeOn);
  const openings = takingsOf(vial).filter(({ at }) => at > last).length;
  const day = new Date().toISOString().slice(0, 10);
  const years = (Date.parse(day) - Date.parse(last.slice(0, 10))) / YEAR; // in whole days: none on the day itself
  const massG = leftOf(vial)?.value ?? vial.massG.value;
  return mostLost({ closing: closings[vial.cap ?? 'dropper cap'], years, openings, massG });
}

/** What is missing of a vial beyond what was taken out of it, where the weighing tells that and its solvent evaporates; else null. */
export function missingIn(vial: Vial, found: Measured): Missing | null {
  const expected = leftOf(vial);
  const stronger = expected && isVolatile(vial) ? strongerBy(expected, found) : null;
  return stronger && { missingG: expected!.value - found.value, stronger };
}

/**
 * Grams left of a vial by its whole weight (glass, cap and all, g) against that of the last time; null where it was never weighed whole.
 * No empty glass is needed: what is missing is what was taken, and what evaporated.
 */
export function leftByWhole(vial: Vial, wholeG: number, { stepG, id }: { stepG: number; id: string }): Measured | null {
  const last = (vial.weighed ?? []).filter((one) => one.wholeG !== undefined).at(-1);
  if (!last) return null;
  const lighter = netMass(
    { grossG: Math.max(last.wholeG!, wholeG), tareG: wholeG, readabilityG: stepG },
    { id, words: 'weighing the whole vial' },
  );
  const left = minus(last.left, lighter);
  return left.value >= 0 ? left : { ...left, value: 0 };
}
