import { calibrateDrops, type DropCalibration } from '../../core/drop/drop';
import { outliers, readingsStillWorth, type Outlier } from '../../core/drop/dropAdvice';
import { scaled } from '../../core/number/measured';
import { gram, gramPerMl } from '../../core/number/units';
import { volumeWeighed } from '../../core/dilution/weighing';
import type { Calibration } from '../../records/kind/dropper';
import { find, list } from '../../records/shelf';
import type { Result } from '../../ui/controls/result';
import { formatGiven, formatPlain } from '../../ui/format';
import { dropsText } from '../../workshop/dropWords';
import { solventsOnHand } from '../../workshop/onHand';
import { answer, isBegun } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { asked, fields, liquids, WANTED } from './fields';

/** A weighing as typed: its number in the list, from 1, and whether it was left out. */
export interface Weighing {
  readonly i: number;
  readonly drops: number;
  readonly massG: number;
  readonly out?: true;
}

/** Weighings that are complete, in order. */
export function weighingsOf(run: RunState): Weighing[] {
  const all: Weighing[] = [];
  for (let i = 1; isBegun(run, fields.mass(i)); i++) {
    const [drops, massG] = [answer(run, fields.drops(i)) ?? answer(run, asked(run).each), answer(run, fields.mass(i))];
    if (drops === null || massG === null) continue;
    all.push({ i, drops, massG, ...(answer(run, fields.out(i)) === 'yes' ? { out: true } : {}) });
  }
  return all;
}

/** The weighings that count. */
export function counted(run: RunState): Weighing[] {
  return weighingsOf(run).filter(({ out }) => !out);
}

/** Those far from the others, with their numbers in the list. */
export function oddOnes(run: RunState): (Outlier & { readonly i: number })[] {
  const all = counted(run);
  const readabilityG = answer(run, asked(run).readability);
  return readabilityG === null ? [] : outliers(all, { readabilityG }).map((odd) => ({ ...odd, i: all[odd.index]!.i }));
}

/**
 * What was let fall each time, g, where the weighings grow like those of a scale that was not zeroed between: each by about the first (within
 * 15 %, our choice). Null where they do not, or where drops differ or one was left out.
 */
export function unzeroed(run: RunState): number[] | null {
  const all = weighingsOf(run);
  const [first] = all;
  if (!first || all.length < 2 || all.some(({ out, drops }) => out || drops !== first.drops)) return null;
  const steps = all.map(({ massG }, at) => massG - (all[at - 1]?.massG ?? 0));
  return steps.every((step) => Math.abs(step / first.massG - 1) < 0.15) ? steps : null;
}

/** Dropper and liquid by name, as far as they are chosen. */
export function nameOf(run: RunState): { dropper: string; liquid: string } {
  const { dropper, newName, liquid } = asked(run);
  const known = find('dropper', answer(run, dropper))?.name;
  const found = liquids().find((option) => option.value === answer(run, liquid))?.label;
  return { dropper: known ?? answer(run, newName) ?? 'the dropper', liquid: found ?? 'the liquid' };
}

/** The calibration from the weighings that count; null without any, or without a scale. */
export function calibrated(run: RunState, id: string): DropCalibration | null {
  const readabilityG = answer(run, asked(run).readability);
  const readings = counted(run);
  if (readings.length === 0 || readabilityG === null) return null;
  const { dropper, liquid } = nameOf(run);
  return calibrateDrops(readings, { readabilityG }, { id, words: `calibration of ${dropper} with ${liquid}` });
}

/** Calibrations of the chosen dropper with the chosen liquid from before, oldest first. */
export function earlier(run: RunState): Calibration[] {
  const [dropper, liquid] = [answer(run, asked(run).dropper), answer(run, asked(run).liquid)];
  return list('calibration')
    .filter((one) => one.dropper === dropper && one.liquid.id === liquid && one.liquid.strength === undefined)
    .reverse();
}

/** What another weighing would bring, in one sentence; null when enough is known, or no scatter is seen yet. */
export function moreWords(run: RunState, calibration: DropCalibration): string | null {
  if (calibration.n < 3) return null;
  const readabilityG = answer(run, asked(run).readability)!;
  const drops = calibration.drops / calibration.n;
  const { enough, moreReadings, dropsPerReading } = readingsStillWorth(calibration, { readabilityG }, WANTED);
  if (enough) return null;
  if (dropsPerReading > drops)
    return `This scale needs ${dropsPerReading} drops each time to know the drop to ± ${WANTED * 100} %.`;
  if (moreReadings === null)
    return `The weighings scatter too much for ± ${WANTED * 100} %: hold the dropper upright, one drop a second.`;
  return `About ${moreReadings === 1 ? 'one more weighing' : `${moreReadings} more weighings`} would bring it to ± ${WANTED * 100} %.`;
}

/** The volume of a drop of a solvent of known density, from its mass in air; null for other liquids. */
export function volumeResult(run: RunState, calibration: DropCalibration): Result | null {
  const solvent = solventsOnHand().find(({ id }) => id === answer(run, asked(run).liquid));
  if (!solvent) return null;
  const grams = scaled(calibration.mgPerDrop, 1 / 1000);
  const perGram = volumeWeighed(gram(1), gramPerMl(solvent.density.gPerMl)); // mL for each gram shown, air buoyancy counted in
  return {
    label: 'Volume of one drop',
    amount: scaled(grams, perGram * 1000),
    unit: 'µL',
    how: {
      words: ['Mass over density, with the buoyancy of the air counted in (the Z factor of ISO 8655-6).'],
      inputs: [
        {
          words: 'Density',
          text: `${formatGiven(solvent.density.gPerMl)} g/mL at ${solvent.density.atC} °C`,
          source: solvent.density.source,
        },
        {
          words: 'Volume for each gram shown',
          text: `${formatPlain(perGram, 6)} mL`,
          source: 'ISO 8655-6, air of 1.2 kg/m³',
        },
      ],
    },
  };
}

/** The drop as a number with its ±, and how it was worked out. */
export function resultOf(run: RunState, calibration: DropCalibration): Result {
  const inputs = counted(run).map(({ i, drops, massG }) => ({
    words: `Weighing ${i}`,
    text: `${dropsText(drops)}, ${formatGiven(massG)} g`,
    source: 'your scale',
  }));
  return {
    label: `One drop, from ${inputs.length === 1 ? 'one weighing' : `${inputs.length} weighings`}`,
    amount: calibration.mgPerDrop,
    unit: 'mg',
    how: {
      words: [
        'Mass of all drops over their number.',
        calibration.scatterSeen
          ? 'Its ± is the scatter of your weighings, widened by Student’s t for their small number, and the readability of the scale.'
          : 'One weighing shows no scatter: that of typical droppers is taken until you weigh again.',
      ],
      inputs,
    },
  };
}
