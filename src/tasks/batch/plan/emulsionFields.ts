import { amount, choice, optionalAmount, pick } from '../../engine/fields';
import { traitKey } from '../../shared/judgeRun';

/** The questions of an emulsion. */
export const emulsionFields = {
  agent: pick({ name: 'agent', title: 'Weighting agent', preset: 'none' }),
  citrus: choice({
    name: traitKey('citrus oil'),
    title: 'Is there citrus oil in it?',
    preset: 'no',
    options: [
      { value: 'yes', label: 'Yes', short: 'citrus oil', hint: 'then ester gum may make it heavier (US)' },
      { value: 'no', label: 'No', short: 'no citrus oil' },
    ],
  }),
  /** Without a preset of its own: what was never asked for it is a run of an older version. */
  emulsifier: pick({ name: 'emulsifier', title: 'Emulsifier' }),
  gum: amount({
    name: 'gum',
    title: 'Emulsifier per gram of oil phase',
    unit: 'g/g',
    min: 0,
    max: 5,
    preset: '1.5',
  }),
  oilDensity: amount({ name: 'oil', title: 'Density of the oils together', unit: 'g/mL', min: 0.6, max: 1.5 }),
  droplet: amount({
    name: 'droplet',
    title: 'Droplets, 90 % are smaller than',
    unit: 'µm',
    above: 0,
    max: 50,
    preset: '1',
    help: 'Diameter. Large droplets make the ring.',
  }),
  d90: optionalAmount({
    name: 'd90',
    title: 'Measured: 90 % of the oil is in droplets under',
    unit: 'µm',
    above: 0,
    max: 50,
    help: 'Optional, by microscope or laser.',
  }),
  ring: choice({
    name: 'ring',
    title: 'Ring trial',
    preset: 'yes',
    options: [
      { value: 'yes', label: 'Watch bottles for a ring', short: 'watched for a ring', hint: 'the Bench says when' },
      { value: 'no', label: 'No ring trial', short: 'no ring trial' },
    ],
  }),
};
