import { amount, choice, given, optionalAmount, pick, whole, words, type Field } from '../engine/fields';
import { readability } from '../shared/readabilityField';

/** The dropper of a vial of which the drink's part is weighed in. */
export const ON_SCALE = 'scale';

/** The questions of a dose. Those of the first vial, dropper and so on carry no number, so that other pages can fill them in. */
export const fields = {
  vial: (i: number) => pick({ name: named('vial', i), title: 'Vial' }),
  dropper: (i: number) => pick({ name: named('dropper', i), title: 'Dropper' }),
  aim: (i: number, unit = 'mg/kg') =>
    optionalAmount({
      name: named('aim', i),
      title: 'Target',
      unit,
      above: 0,
      max: 1_000_000,
      help: 'Optional. Leave empty to dose by taste.',
    }),
  /** Whether the target is a level in the drink or so many drops. */
  aimIn: (i: number) =>
    choice({
      name: named('aim.in', i),
      title: 'Target in',
      options: [
        { value: 'mg/kg', label: 'mg/kg', hint: 'ppm by mass, in the drink' },
        { value: 'drops', label: 'drops', hint: 'and what they come to is shown' },
      ],
      preset: 'mg/kg',
    }),
  weighed: (i: number): Field<number> =>
    amount({
      name: named('massG', i),
      title: 'The scale shows',
      unit: 'g',
      above: 0,
      max: 10_000,
      scale: readability,
    }),
  /** Whether another vial goes into the same glass after dose i. */
  more: (i: number) => given(`more.${i}`, ['yes', 'no']),
  /** Drops of then, of a drink that the first version of Minim began again. */
  then: (i: number) => whole({ name: named('again.drops', i), title: 'Drops of then', unit: 'drops', min: 1 }),
  readability,
  mode: given('mode', ['one', 'ladder']),
  verdict: words({ name: 'verdict', title: 'Your words', optional: true, max: 500, help: 'Optional.' }),
  liking: (name: string) => whole({ name, title: 'Liking', unit: 'points', min: 1, max: 9 }),
};

/** The questions on the drink before it is dosed. */
export const drinkFields = {
  base: pick({ name: 'base', title: 'Drink' }),
  name: words({ name: 'base.name', title: 'Name of the drink', max: 40 }),
  brix: amount({
    name: 'base.brix',
    title: 'Sugar',
    unit: '°Brix',
    min: 0,
    max: 84,
    preset: '0',
    help: 'g of sugar in 100 g of drink.',
  }),
  abv: amount({ name: 'base.abv', title: 'Alcohol', unit: '% ABV', min: 0, max: 96, preset: '0' }),
  density: optionalAmount({
    name: 'base.density',
    title: 'Density, if you measured it',
    unit: 'g/mL',
    min: 0.7,
    max: 1.5,
    help: 'Empty: from sugar and alcohol.',
  }),
  by: choice({
    name: 'base.by',
    title: 'Amount in',
    options: [
      { value: 'volume', label: 'mL', hint: 'its volume is read' },
      { value: 'mass', label: 'g', hint: 'it is weighed' },
    ],
    preset: 'volume',
  }),
  volume: amount({ name: 'base.ml', title: 'Volume of the drink', unit: 'mL', above: 0, max: 100_000 }),
  mass: amount({ name: 'base.g', title: 'The scale shows', unit: 'g', above: 0, max: 100_000, weighed: true }),
  slack: amount({
    name: 'base.slack',
    title: 'Uncertainty of it, ±',
    unit: '%',
    min: 0,
    max: 50,
    help: 'Jug or glass about 2, measuring cylinder about 1, scale about 0.1.',
  }),
};

/** The questions of a series of glasses. */
export const seriesFields = {
  lowest: amount({ name: 'lowest', title: 'Weakest glass', unit: 'mg/kg', above: 0, max: 1_000_000 }),
  glasses: whole({ name: 'glasses', title: 'Glasses', unit: 'glasses', min: 2, max: 8 }),
  factor: choice({
    name: 'factor',
    title: 'Each stronger by',
    options: [
      { value: '2', label: '2 times', short: '2 times' },
      { value: '3', label: '3 times', short: '3 times' },
      { value: 'own', label: 'another factor' },
    ],
  }),
  ownFactor: amount({ name: 'ownFactor', title: 'Factor', unit: 'times', above: 1, max: 100 }),
  blank: choice({
    name: 'blank',
    title: 'A blank glass',
    options: [
      {
        value: 'yes',
        label: 'With a blank',
        short: 'a blank',
        hint: 'nothing of the material in it, to taste against',
      },
      { value: 'no', label: 'Without a blank', short: 'no blank' },
    ],
  }),
  blind: choice({
    name: 'blind',
    title: 'Serve them',
    options: [
      { value: 'yes', label: 'Blind', short: 'blind', hint: 'with three-digit codes, in random order' },
      { value: 'no', label: 'Open', short: 'open', hint: 'from weak to strong' },
    ],
  }),
  /** Codes of blind glasses, once they are drawn. */
  codes: words({ name: 'codes', title: 'Codes', max: 100 }),
  /** Words on glass k, from 1; 0 is the blank. */
  note: (k: number) => words({ name: `note.${k}`, title: 'Your words', optional: true, max: 500, help: 'Optional.' }),
  best: (codes: readonly string[]) =>
    choice({
      name: 'best',
      title: 'The best',
      options: [
        ...codes.map((code) => ({ value: code, label: `Glass ${code}` })),
        { value: 'none', label: 'None of them' },
      ],
    }),
};

/** What the next dose of a material begins with. */
export const remembers = [
  fields.dropper(1),
  fields.aim(1),
  fields.aimIn(1),
  drinkFields.by,
  drinkFields.volume,
  drinkFields.slack,
  fields.readability,
  ...[seriesFields.lowest, seriesFields.glasses, seriesFields.factor, seriesFields.ownFactor],
  ...[seriesFields.blank, seriesFields.blind],
].map(({ name }) => name);

/** vial, vial.2, vial.3, … */
export function named(name: string, i: number): string {
  return i === 1 ? name : `${name}.${i}`;
}
