import { calibrateDrops, type DropCalibration, type Reading } from '../../core/drop/drop';
import { planReadings } from '../../core/drop/dropAdvice';
import { scaled } from '../../core/number/measured';
import { gram, gramPerMl } from '../../core/number/units';
import { volumeWeighed } from '../../core/dilution/weighing';
import type { Calibration } from '../../records/kind/dropper';
import { find, list } from '../../records/shelf';
import { formatGiven, formatPlain } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import type { Option } from '../../ui/controls/field';
import { answer } from '../engine/answers';
import { amount, choice, given, optionalAmount, pick, whole, words } from '../engine/fields';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import type { RunState } from '../engine/fold';
import { solventsOnHand } from '../../workshop/onHand';

/** A drop known to ± 5 % (95 %), as closely as the drops themselves scatter; our choice. */
export const WANTED = 0.05;
export const DROPS = 20; // our choice, as the pharmacopoeial test does (Ph. Eur. 2.1.1)

/** Droppers on the shelf, and a new one. */
export function droppers(): Option[] {
  const own = list('dropper').map(({ id, name, tip }) => ({ value: id, label: name, hint: tip }));
  return [...own, { value: 'new', label: 'A new dropper' }];
}

/** What a drop can be weighed of: solvents, and materials that are liquid. */
export function liquids(): Option[] {
  const neat = list('material').filter(({ form }) => form !== 'solid');
  return [
    ...solventsOnHand().map(({ id, name }) => ({
      value: id,
      label: name,
      hint: 'serves its dilutions up to about 1 %',
    })),
    ...neat.map(({ id, name }) => ({ value: id, label: name, hint: 'neat, serves itself only' })),
  ];
}

/** The questions of a calibration. */
export const fields = {
  dropper: pick({ name: 'dropper', title: 'Dropper' }),
  newName: words({ name: 'newName', title: 'Name on the dropper', max: 30 }),
  newTip: words({
    name: 'newTip',
    title: 'Its tip',
    optional: true,
    help: 'Glass or plastic, fine or wide, maker’s words.',
    max: 60,
  }),
  outlet: choice({
    name: 'newOutlet',
    title: 'Drops fall from',
    options: [
      { value: 'square tip', label: 'A tube cut square', hint: 'glass dropper, pipette' },
      { value: 'lip or insert', label: 'A bottle lip or drop insert' },
    ],
  }),
  liquid: pick({ name: 'liquid', title: 'Liquid' }),
  readability: amount({
    name: 'readability',
    title: 'Smallest step of the scale',
    unit: 'g',
    above: 0,
    max: 1,
    preset: '0.01',
  }),
  temperature: optionalAmount({
    name: 'temperature',
    title: 'Room',
    unit: '°C',
    min: 0,
    max: 40,
    help: 'May stay empty.',
  }),
  drops: (i: number) =>
    whole({ name: `drops.${i}`, title: 'Drops let fall', unit: 'drops', min: 1, max: 1000, preset: String(DROPS) }),
  mass: (i: number) => amount({ name: `mass.${i}`, title: 'The scale shows', unit: 'g', above: 0, max: 100 }),
  /** Whether another reading follows. */
  more: (i: number) => given(`more.${i}`, ['yes', 'no']),
};

/** Readings that are complete, in order. */
export function readingsOf(run: RunState): Reading[] {
  const readings: Reading[] = [];
  for (let i = 1; ; i++) {
    const drops = answer(run, fields.drops(i));
    const massG = answer(run, fields.mass(i));
    if (drops === null || massG === null) return readings;
    readings.push({ drops, massG });
  }
}

/** Dropper and liquid by name, as far as they are chosen. */
export function nameOf(run: RunState): { dropper: string; liquid: string } {
  const known = find('dropper', answer(run, fields.dropper))?.name;
  const liquid = liquids().find((option) => option.value === answer(run, fields.liquid))?.label;
  return { dropper: known ?? answer(run, fields.newName) ?? 'the dropper', liquid: liquid ?? 'the liquid' };
}

/** The calibration from some readings; null without readings or scale. */
export function calibrated(run: RunState, readings: readonly Reading[], id: string): DropCalibration | null {
  const readabilityG = answer(run, fields.readability);
  if (readings.length === 0 || readabilityG === null) return null;
  const { dropper, liquid } = nameOf(run);
  return calibrateDrops(readings, { readabilityG }, { id, words: `calibration of ${dropper} with ${liquid}` });
}

/** Calibrations of the chosen dropper with the chosen liquid from before, oldest first. */
export function earlier(run: RunState): Calibration[] {
  const same = ({ dropper, liquid }: Calibration) =>
    dropper === answer(run, fields.dropper) && liquid.id === answer(run, fields.liquid);
  return list('calibration').filter(same).reverse();
}

/** What to weigh with this scale to know the drop well enough, in one sentence; a first guess at the drop is enough for it. */
export function weighingAdvice(run: RunState): { words: string; drops: number } {
  const readabilityG = answer(run, fields.readability) ?? 0.01;
  const id = answer(run, fields.liquid) ?? '';
  const liquid = solventsOnHand().find((solvent) => solvent.id === id)?.liquid ?? null;
  const { mgPerDrop, spread } = dropOf('', { id, liquid, strength: 1 });
  const plan = planReadings({
    mgPerDrop: mgPerDrop.value,
    perDropSpread: spread,
    scale: { readabilityG },
    wanted: WANTED,
  });
  if (!plan)
    return {
      words: `A scale of ${formatGiven(readabilityG)} g is too coarse for ± ${WANTED * 100} %: weigh as many drops as you can.`,
      drops: 100,
    };
  const drops = Math.max(DROPS, plan.drops);
  return {
    words: `With this scale ${plan.readings} readings of ${drops} drops should do for ± ${WANTED * 100} %.`,
    drops,
  };
}

/** The volume of a drop of a solvent of known density, from its mass in air; null for other liquids. */
export function volumeResult(run: RunState, calibration: DropCalibration): Result | null {
  const solvent = solventsOnHand().find(({ id }) => id === answer(run, fields.liquid));
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
export function resultOf(calibration: DropCalibration, readings: readonly Reading[]): Result {
  const inputs = readings.map(({ drops, massG }, i) => ({
    words: `Reading ${i + 1}`,
    text: `${dropsText(drops)}, ${formatGiven(massG)} g`,
    source: 'your scale',
  }));
  return {
    label: `One drop, from ${readings.length === 1 ? 'one reading' : `${readings.length} readings`}`,
    amount: calibration.mgPerDrop,
    unit: 'mg',
    how: {
      words: [
        'Mass of all drops over their number.',
        calibration.scatterSeen
          ? 'Its ± is the scatter of your readings, widened by Student’s t for their small number, and the step of the scale.'
          : 'One reading shows no scatter: that of typical droppers stands in until you weigh again.',
      ],
      inputs,
    },
  };
}
