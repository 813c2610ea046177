import { acids } from '../../tables/syrupAdditives';
import type { Option } from '../../ui/controls/field';
import { amount, choice, code, optionalAmount, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { traitKey } from '../shared/judgeRun';
import { solventsOnHand } from '../../workshop/onHand';
import { numberedVialCode, vialCodes } from '../../workshop/thing/vialCode';
import { recipeOptions as recipeOptions } from './recipe';

const yesNo: readonly Option[] = [
  { value: 'yes', label: 'Yes, the bottle says so' },
  { value: 'no', label: 'No, or not known', hint: 'then it never goes into a drink' },
];

/** The questions of a batch. Amounts weighed are asked under keys of their own. */
export const fields = {
  what: (run: RunState) =>
    choice({ name: 'what', title: 'Formula, or a drink you liked', options: recipeOptions(run) }),
  lot: (material: string, title: string, options: readonly Option[], preset: string) =>
    choice({ name: `lot.${material}`, title, options, preset }),
  dose: (preset: string) =>
    amount({
      name: 'dose',
      title: 'Whole formula in the drink',
      unit: 'mg/kg',
      above: 0,
      max: 100_000,
      preset,
      help: 'All neat materials together.',
    }),
  litres: amount({ name: 'litres', title: 'Drink to make', unit: 'L', above: 0, max: 100_000, preset: '20' }),
  brix: (preset: string) =>
    amount({
      name: 'brix',
      title: 'Sugar in the drink',
      unit: '°Brix',
      min: 0,
      max: 70,
      preset,
      help: 'g of sugar in 100 g of drink.',
    }),
  sugarPerL: (preset: string) =>
    amount({ name: 'sugar.l', title: 'Sugar in the drink', unit: 'g/L', min: 0, max: 940, preset }),
  abv: (preset: string) =>
    amount({ name: 'abv', title: 'Alcohol of the drink', unit: '% ABV', min: 0, max: 70, preset }),
  spirit: amount({ name: 'spirit', title: 'Strength of the spirit', unit: '% ABV', above: 0, max: 100, preset: '96' }),
  spiritFood: choice({ name: 'spirit.food', title: 'Is it drinking alcohol?', options: yesNo }),
  parts: amount({
    name: 'throw.n',
    title: 'One part syrup and so many parts water',
    unit: 'parts',
    min: 0,
    max: 50,
    preset: '5',
    help: '0: no syrup, the drink is mixed at once.',
  }),
  by: choice({
    name: 'throw.by',
    title: 'Parts are measured by',
    preset: 'volume',
    options: [
      { value: 'volume', label: 'Volume' },
      { value: 'mass', label: 'Mass' },
    ],
  }),
  acid: choice({
    name: 'acid',
    title: 'Acid',
    preset: 'citric-acid',
    options: [...acids.map(({ id, name }) => ({ value: id, label: name })), { value: 'none', label: 'No acid' }],
  }),
  acidity: amount({
    name: 'acidity',
    title: 'Acid in the drink',
    unit: 'g/L',
    min: 0,
    max: 30,
    preset: '2',
    help: 'As anhydrous citric acid. Fruit drinks 1 to 2.5.',
  }),
  benzoate: amount({
    name: 'benzoate',
    title: 'Sodium benzoate, as benzoic acid',
    unit: 'mg/L',
    min: 0,
    max: 2000,
    preset: '0',
  }),
  sorbate: amount({
    name: 'sorbate',
    title: 'Potassium sorbate, as sorbic acid',
    unit: 'mg/L',
    min: 0,
    max: 2000,
    preset: '0',
  }),
  dosage: amount({
    name: 'dosage',
    title: 'Concentrate per litre of drink',
    unit: 'g/L',
    above: 0,
    max: 100,
    preset: '1',
    help: 'Usual: 0.5 to 1.5 clear, 1 to 2 as an emulsion.',
  }),
  spare: amount({
    name: 'spare',
    title: 'More of it than the drink needs',
    unit: '%',
    min: 0,
    max: 10_000,
    preset: '0',
    help: 'It is kept as a vial: to dose by drops, to try in other drinks.',
  }),
  left: choice({
    name: 'left',
    title: 'The concentrate that is left',
    preset: 'keep',
    options: [
      { value: 'keep', label: 'Keep it as a vial', hint: 'on the Shelf, with its strengths' },
      { value: 'away', label: 'It is not kept' },
    ],
  }),
  leftCode: () =>
    code({
      name: 'left.code',
      title: 'Code of that vial',
      preset: numberedVialCode('C'),
      taken: vialCodes(),
    }),
  carrier: () =>
    choice({
      name: 'carrier',
      title: 'Carrier',
      options: solventsOnHand()
        .filter(({ foodPossible }) => foodPossible)
        .map(({ id, name }) => ({ value: id, label: name })),
    }),
  carrierFood: choice({ name: 'carrier.food', title: 'Food grade', options: yesNo }),
  make: (preset: string) =>
    choice({
      name: 'make',
      title: 'So the concentrate is',
      preset,
      options: [
        { value: 'clear', label: 'A solution', hint: 'dissolved in the carrier' },
        { value: 'emulsion', label: 'An emulsion', hint: 'oil, weighting agent, gum and water; the drink is cloudy' },
      ],
    }),
  agent: (options: readonly Option[]) => choice({ name: 'agent', title: 'Weighting agent', options, preset: 'none' }),
  citrus: choice({
    name: traitKey('citrus oil'),
    title: 'Is there citrus oil in it?',
    preset: 'no',
    options: [
      { value: 'yes', label: 'Yes', hint: 'then ester gum may make it heavier (US)' },
      { value: 'no', label: 'No' },
    ],
  }),
  gum: amount({
    name: 'gum',
    title: 'Gum arabic per gram of oil phase',
    unit: 'g/g',
    min: 0,
    max: 5,
    preset: '1.5',
    help: '1 to 2: common practice, no source.',
  }),
  oilDensity: (preset: string, help: string) =>
    amount({ name: 'oil', title: 'Density of the oils together', unit: 'g/mL', min: 0.6, max: 1.5, preset, help }),
  droplet: amount({
    name: 'droplet',
    title: 'Droplets, 90 % are smaller than',
    unit: 'µm',
    above: 0,
    max: 50,
    preset: '1',
    help: 'Diameter. Large droplets make the ring.',
  }),
  volumes: amount({
    name: 'gas',
    title: 'Carbonation',
    unit: 'volumes',
    min: 0,
    max: 8,
    preset: '0',
    help: '0: still. Soft drinks about 3.',
  }),
  gasAt: amount({ name: 'gas.t', title: 'Temperature when it is gassed', unit: '°C', min: 0, max: 40, preset: '4' }),
  fine: amount({
    name: 'fine',
    title: 'Step of the fine scale',
    unit: 'g',
    above: 0,
    max: 1,
    preset: '0.01',
    help: 'For the concentrate.',
  }),
  scatter: optionalAmount({
    name: 'scatter',
    title: 'Its repeatability',
    unit: 'g',
    min: 0,
    max: 1,
    help: 'Standard deviation of ten weighings; may stay empty.',
  }),
  coarse: amount({
    name: 'coarse',
    title: 'Step of the large scale',
    unit: 'g',
    above: 0,
    max: 100,
    preset: '1',
    help: 'For syrup and water.',
  }),
  tolerance: amount({
    name: 'tolerance',
    title: 'Each weighing right within',
    unit: '%',
    above: 0,
    max: 20,
    preset: '1',
  }),
  mass: (key: string, title: string, scale: 'fine' | 'coarse'): Field<number> =>
    amount({ name: `mass.${key}`, title, unit: 'g', min: 0, max: 1_000_000, scale: fields[scale] }),
  name: (preset: string) => words({ name: 'name', title: 'Name of the batch', max: 60, preset }),
  notes: words({ name: 'notes', title: 'Notes', optional: true, max: 500, help: 'May stay empty.' }),
};
