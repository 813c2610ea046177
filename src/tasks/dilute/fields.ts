import * as z from 'zod/mini';
import type { Basis } from '../../core/liquid/strength';
import { amount, choice, code, day, given, optionalAmount, pick, shaped, words, type Field } from '../engine/fields';
import { answer, askAbout } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { casNumber } from '../shared/bottleFields';
import type { NewBottleStep } from '../shared/newBottle';
import { vesselChoices } from '../../workshop/vessels';
import { readability } from '../shared/readabilityField';

const bases: readonly Basis[] = ['% w/v', '% w/w', '% v/v', 'mg/kg', 'mg/L'];
const meaning: Record<Basis, string> = {
  '% w/v': 'g in 100 mL of dilution',
  '% w/w': 'g in 100 g',
  '% v/v': 'mL in 100 mL',
  'mg/kg': 'ppm by mass',
  'mg/L': 'mg in a litre',
};

/** The dropper of a vial whose material goes in by weight. */
export const ON_SCALE = 'scale';

/** Usual vials, mL. */
export const SIZES = [5, 10, 15, 20, 30];

/** Half the width of what a filling to the shoulder may be off, as a share of the volume: our guess, vials have no tolerance. */
export const SHOULDER = 0.08;

/** How a solvent can be measured: by weight, in a vessel, or by eye. */
export const measures = () => [
  { value: 'scale', label: 'On a scale', short: 'a scale', hint: 'the surest: type the grams' },
  ...vesselChoices(),
  {
    value: 'shoulder',
    label: 'Up to the shoulder of the vial',
    short: 'eye, to the shoulder',
    hint: 'about ± 8 %',
  },
];

/** Solvent goes in once, and once more after an overshoot. */
export type Pour = 'solvent' | 'rescue';

/** One step of a dilution; in a rack those of each vial go by its name and a point. */
export type DiluteStep = Step<
  | NewBottleStep
  | 'card'
  | `pour.${Pour}`
  | 'drops'
  | 'weighed'
  | 'material'
  | 'made'
  | 'whole'
  | 'set'
  | `${number}.${string}`
>;

/** The vials of a rack, in the order in which they are made: each with the answers that it does not share. */
const rackShape = z.array(z.object({ name: z.string(), given: z.record(z.string(), z.string()) }));

/** The questions of a dilution. */
export const fields = {
  source: pick({ name: 'bottle', title: 'From' }),
  strength: (basis: string) =>
    amount({
      name: 'strength',
      title: 'Strength',
      unit: basis,
      above: 0,
      max: basis.startsWith('%') ? 100 : 1e6,
      preset: '1',
    }),
  basis: choice({
    name: 'basis',
    title: 'Counted as',
    preset: '% w/v',
    options: bases.map((value) => ({ value, label: value, hint: meaning[value] })),
  }),
  size: amount({ name: 'size', title: 'Vial', unit: 'mL', above: 0, max: 1000 }),
  /** The size of the first version's "Another size". */
  ownSize: amount({ name: 'ownSize', title: 'Size of the vial', unit: 'mL', above: 0, max: 1000 }),
  solvent: pick({ name: 'solvent', title: 'Solvent' }),
  food: choice({
    name: 'food',
    title: 'This bottle of solvent',
    options: [
      { value: 'yes', label: 'Food grade, nothing added', short: 'food grade', hint: 'the label says so' },
      { value: 'no', label: 'Denatured, or not known', short: 'not food grade', hint: 'the vial becomes smell only' },
    ],
  }),
  solventAlcohol: choice({
    name: 'solvent.alcohol',
    title: 'Is it alcohol?',
    options: [
      { value: 'yes', label: 'Yes', hint: 'its % vol is on the label' },
      { value: 'none', label: 'No alcohol in it', hint: '0 % vol' },
      { value: 'unknown', label: 'Not known', hint: 'so it is not known of any drink it goes into' },
    ],
  }),
  solventAbv: amount({ name: 'solvent.abv', title: 'Alcohol', unit: '% vol', above: 0, max: 100 }),
  solventCas: casNumber('solvent.cas'),
  solventName: words({ name: 'solvent.name', title: 'Name of the solvent', max: 60 }),
  solventDensity: amount({ name: 'solvent.density', title: 'Density at 20 °C', unit: 'g/mL', min: 0.5, max: 2 }),
  /** Where its alcohol is known it may stay empty. */
  spiritDensity: optionalAmount({ name: 'solvent.density', title: 'Density at 20 °C', unit: 'g/mL', min: 0.5, max: 2 }),
  solventFlash: optionalAmount({
    name: 'solvent.flash',
    title: 'Flash point',
    unit: '°C',
    min: -60,
    max: 400,
    help: 'Optional.',
  }),
  measure: pick({ name: 'measure', title: 'Solvent measured' }),
  way: choice({
    name: 'way',
    title: 'Material measured',
    options: [
      { value: 'drops', label: 'By drops' },
      { value: 'mass', label: 'On a scale', hint: '' },
    ],
  }),
  dropper: pick({ name: 'dropper', title: 'Dropper' }),
  readability,
  /** Another solvent amount than asked for was put in. */
  otherAmount: (pour: Pour) => given(`${pour}.own`, ['yes']),
  solventMl: (pour: Pour) =>
    amount({ name: `${pour}.ml`, title: 'Solvent really put in', unit: 'mL', above: 0, max: 2000 }),
  solventG: (pour: Pour) =>
    amount({ name: `${pour}.g`, title: 'The scale shows', unit: 'g', above: 0, max: 2000, scale: readability }),
  materialG: amount({
    name: 'material.g',
    title: 'The scale shows',
    unit: 'g',
    above: 0,
    max: 1000,
    scale: readability,
  }),
  /** What the counted drops weigh, where they fell on a scale: the surer of the two is taken, and it becomes a calibration. */
  weighs: given('weighs', ['yes']),
  dropsG: amount({ name: 'drops.g', title: 'The drops weigh', unit: 'g', above: 0, max: 100, scale: readability }),
  /** Whether the closed vial is weighed once it is made, and what the scale shows: later it tells what evaporated. */
  whole: given('whole', ['yes', 'no']),
  wholeG: amount({ name: 'whole.g', title: 'The scale shows', unit: 'g', above: 0, max: 10_000, scale: readability }),
  /** Solvent is taken that makes the planned drops exact. */
  exact: given('exact', ['yes']),
  /** A vial made before is made exactly again: drops or g of the material, and g of the solvent. */
  exactSource: amount({ name: 'again.source', title: 'Material as then', unit: 'drops or g', above: 0, max: 1000 }),
  exactSolvent: amount({ name: 'again.solvent', title: 'Solvent as then', unit: 'g', above: 0, max: 2000 }),
  /** What is done with a dilution that came out too strong. */
  overshoot: given('overshoot', ['keep', 'rescue']),
  code: code({ name: 'vial.code', title: 'Code of the vial' }),
  madeOn: day({ name: 'vial.made', title: 'Made on', past: true }),
  useBy: day({ name: 'vial.useBy', title: 'Use by' }),
  /** One step all the same, where a way down by two would be better known. */
  direct: given('direct', ['yes']),
  /** Said when the card is left: runs of before go on with the drop and the purity that they were planned with. */
  planned: given('planned', ['yes']),
  /** Several vials, made one after the other; and which bottles are picked for it. */
  rack: shaped('rack', rackShape),
  picking: given('picking', ['yes']),
  inSet: (bottle: string) => given(`set.${bottle}`, ['yes']),
  /** A vial of the rack that is not made after all. */
  skip: given('skip', ['yes']),
};

export type Rack = z.output<typeof rackShape>;

/** Whether the solvent is food grade, asked of each solvent, and each bottle of it, by itself. */
export function foodField(run: RunState): Field<'yes' | 'no'> {
  const id = answer(run, fields.solvent) ?? '';
  return askAbout(run, fields.food, id === 'new' ? `new.${answer(run, fields.solventName) ?? ''}` : id);
}

/** What the next dilution begins with. */
export const remembers = [
  fields.strength('% w/v'),
  fields.basis,
  fields.size,
  fields.solvent,
  fields.measure,
  fields.dropper,
  fields.readability,
  fields.whole,
].map(({ name }) => name);

/** What a repeat begins with. Whether its solvent is food grade is asked each time: it may be another bottle. */
export const repeats = [
  ...[fields.source, fields.ownSize, fields.way, fields.exact].map(({ name }) => name),
  ...remembers,
];

/** Whether a run was planned before drops were carried over and purities had a range, and is past its card. */
export function isPlannedBefore(run: RunState): boolean {
  return run.at !== '' && run.at !== 'card' && answer(run, fields.planned) === null;
}
