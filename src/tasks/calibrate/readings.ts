import { calibrateDrops, type DropCalibration, type Reading } from '../../core/drop';
import { find, list } from '../../records/shelf';
import type { Result } from '../../ui/result';
import { amount, choice, optionalAmount, valueOf, whole, words, type Option } from '../fields';
import type { RunState } from '../fold';
import { solventsOnHand } from '../onHand';

export const DROPS = 20; // our choice, as the pharmacopoeial test does (Ph. Eur. 2.1.1)

/** Droppers on the shelf, and a new one. */
export function droppers(): Option[] {
  const own = list('dropper').map(({ id, name, tip }) => ({ value: id, words: name, more: tip }));
  return [...own, { value: 'new', words: 'A new dropper' }];
}

function liquids(): Option[] {
  const neat = list('material').filter(({ form }) => form !== 'solid');
  return [
    ...solventsOnHand().map(({ id, name }) => ({
      value: id,
      words: name,
      more: 'serves its dilutions up to about 1 %',
    })),
    ...neat.map(({ id, name }) => ({ value: id, words: name, more: 'neat, serves itself only' })),
  ];
}

/** The questions of a calibration. */
export const fields = {
  dropper: () => choice({ name: 'dropper', title: 'Dropper', options: droppers() }),
  newName: words({ name: 'newName', title: 'Name on the dropper', max: 30 }),
  newTip: words({
    name: 'newTip',
    title: 'Its tip',
    optional: true,
    help: 'Glass or plastic, fine or wide, maker’s words.',
    max: 60,
  }),
  liquid: () => choice({ name: 'liquid', title: 'Liquid', options: liquids() }),
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
};

/** Readings that are complete, in order. */
export function readingsOf(run: RunState): Reading[] {
  const readings: Reading[] = [];
  for (let i = 1; ; i++) {
    const drops = valueOf(run, fields.drops(i));
    const massG = valueOf(run, fields.mass(i));
    if (drops === null || massG === null) return readings;
    readings.push({ drops, massG });
  }
}

/** Dropper and liquid by name, as far as they are chosen. */
export function nameOf(run: RunState): { dropper: string; liquid: string } {
  const known = find('dropper', run.typed['dropper'])?.name;
  const liquid = liquids().find((option) => option.value === run.typed['liquid'])?.words;
  return { dropper: known ?? (run.typed['newName'] || 'the dropper'), liquid: liquid ?? 'the liquid' };
}

/** The calibration from some readings; null without readings or scale. */
export function calibrated(run: RunState, readings: readonly Reading[], id: string): DropCalibration | null {
  const readabilityG = valueOf(run, fields.readability);
  if (readings.length === 0 || readabilityG === null) return null;
  const { dropper, liquid } = nameOf(run);
  return calibrateDrops(readings, { readabilityG }, { id, words: `calibration of ${dropper} with ${liquid}` });
}

/** The drop as a number with its ±, and how it was worked out. */
export function resultOf(calibration: DropCalibration, readings: readonly Reading[]): Result {
  const inputs = readings.map(({ drops, massG }, i) => ({
    words: `Reading ${i + 1}`,
    text: `${drops} drops, ${massG} g`,
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
