import { acids } from '../../../tables/syrupAdditives';
import type { Option } from '../../../ui/controls/field';
import { amount, choice, code, given, optionalAmount, pick, whole, words, type Field } from '../../engine/fields';
import { emulsionFields } from './emulsionFields';
import { numberedVialCode, vialCodes } from '../../../workshop/thing/vialCode';

const yesNo: readonly Option<'yes' | 'no'>[] = [
  { value: 'yes', label: 'Yes, the bottle says so', short: 'food grade' },
  { value: 'no', label: 'No, or not known', short: 'not food grade', hint: 'then it never goes into a drink' },
];

/** The questions of a batch, with what is usual where nothing is known from before. Amounts weighed are asked under keys of their own. */
export const fields = {
  ...emulsionFields,
  what: pick({ name: 'what', title: 'Formula, or a drink you liked' }),
  /** The formula that the page was left for: what was in its slots belongs to that one. */
  plannedFor: pick({ name: 'for', title: 'Planned for' }),
  again: pick({ name: 'again', title: 'Made again' }),
  exactly: pick({ name: 'exactly', title: 'Made exactly again' }),
  lot: (material: string, title: string) => pick({ name: `lot.${material}`, title }),
  dose: amount({
    name: 'dose',
    title: 'Whole formula in the drink',
    unit: 'mg/kg',
    above: 0,
    max: 100_000,
    help: 'All neat materials together.',
  }),
  litres: amount({ name: 'litres', title: 'Drink to make', unit: 'L', above: 0, max: 100_000, preset: '20' }),
  /** The drink that the first version took sugar and alcohol from. */
  base: pick({ name: 'base', title: 'As in' }),
  brix: amount({ name: 'brix', title: 'Sugar in the drink', unit: '°Brix', min: 0, max: 70, help: 'g in 100 g.' }),
  sugarPerL: amount({ name: 'sugar.l', title: 'Sugar in the drink', unit: 'g/L', min: 0, max: 940 }),
  sugarBy: given('sugar.by', ['mass', 'litre']),
  abv: amount({ name: 'abv', title: 'Alcohol of the drink', unit: '% ABV', min: 0, max: 70 }),
  spirit: amount({ name: 'spirit', title: 'Strength of the spirit', unit: '% ABV', above: 0, max: 100, preset: '96' }),
  spiritFood: choice({ name: 'spirit.food', title: 'Is it drinking alcohol?', options: yesNo }),
  parts: amount({
    name: 'throw.n',
    title: 'Parts of water to one of syrup',
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
      { value: 'volume', label: 'Volume', short: 'by volume' },
      { value: 'mass', label: 'Mass', short: 'by mass' },
    ],
  }),
  into: choice({
    name: 'into',
    title: 'Where the concentrate goes',
    options: [
      { value: 'syrup', label: 'The syrup', short: 'into the syrup', hint: 'before it is thrown' },
      { value: 'drink', label: 'The drink', short: 'into the drink', hint: 'once the syrup is thrown with its water' },
    ],
  }),
  acid: choice({
    name: 'acid',
    title: 'Acid',
    preset: 'citric-acid',
    options: [
      ...acids.map(({ id, name }) => ({ value: id, label: name })),
      { value: 'none', label: 'No acid', short: 'no acid' },
    ],
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
      {
        value: 'keep',
        label: 'Keep it as a vial',
        short: 'the rest of the concentrate as a vial',
        hint: 'on the Shelf, with its strengths',
      },
      { value: 'away', label: 'It is not kept', short: 'the rest of the concentrate not kept' },
    ],
  }),
  leftCode: () =>
    code({
      name: 'left.code',
      title: 'Code of that vial',
      preset: numberedVialCode('C'),
      taken: vialCodes(),
    }),
  carrier: pick({ name: 'carrier', title: 'Carrier' }),
  carrierFood: choice({ name: 'carrier.food', title: 'Food grade', options: yesNo }),
  make: choice({
    name: 'make',
    title: 'What the concentrate is',
    options: [
      { value: 'clear', label: 'A solution', short: 'a solution', hint: 'dissolved in the carrier' },
      {
        value: 'emulsion',
        label: 'An emulsion',
        short: 'an emulsion',
        hint: 'oil, weighting agent, gum and water; the drink is cloudy',
      },
    ],
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
    title: 'Readability of the fine scale',
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
    help: 'Optional: standard deviation of ten weighings.',
  }),
  coarse: amount({
    name: 'coarse',
    title: 'Readability of the large scale',
    unit: 'g',
    above: 0,
    max: 100,
    preset: '1',
    help: 'For syrup and water.',
  }),
  tolerance: amount({
    name: 'tolerance',
    title: 'Each weighing to within',
    unit: '%',
    above: 0,
    max: 20,
    preset: '1',
  }),
  mass: (key: string, title: string, scale: Field<number>): Field<number> =>
    amount({ name: `mass.${key}`, title, unit: 'g', min: 0, max: 1_000_000, scale }),
  over: (key: string) => given(`over.${key}`, ['scale', 'aside', 'keep']),
  /** How many of the steps at which a vessel is begun again were left. */
  emptied: whole({ name: 'begun.emptied', title: 'Emptied', unit: 'times', preset: '0' }),
  name: (preset: string) => words({ name: 'name', title: 'Name of the batch', max: 60, preset }),
  notes: words({ name: 'notes', title: 'Notes', optional: true, max: 500, help: 'Optional.' }),
};
