import { list } from '../../records/shelf';
import type { Option } from '../../ui/controls/field';
import { amount, choice, optionalAmount, whole, words, type Field } from '../engine/fields';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { dropperOptions, vialOptions } from '../../workshop/onHand';
import { formatGiven } from '../../ui/format';

const SCALE: Option = { value: 'scale', label: 'No dropper: on a scale', hint: 'for what is weighed into the drink' };

function vials(): Option[] {
  const all = list('vial');
  return vialOptions(all).map((option, i) => {
    return isSmellOnly(all[i]!) ? { ...option, hint: `${option.hint} · never in a drink` } : option;
  });
}

function bases(): Option[] {
  const used = list('base').map(({ id, name, brix, abv }) => ({
    value: id,
    label: name,
    hint: `${formatGiven(brix)} °Brix, ${formatGiven(abv)} % ABV`,
  }));
  return [...used, { value: 'new', label: 'Another drink' }];
}

/** The questions of a dose. Those of the first vial, dropper and so on carry no number, so that other pages can fill them in. */
export const fields = {
  vial: (i: number) => choice({ name: named('vial', i), title: 'Vial', options: vials() }),
  dropper: (i: number, preset: string) =>
    choice({ name: named('dropper', i), title: 'Dropper', options: [...dropperOptions(), SCALE], preset }),
  base: () => choice({ name: 'base', title: 'Drink', options: bases() }),
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
    title: 'Its density, where you measured it',
    unit: 'g/mL',
    min: 0.7,
    max: 1.5,
    help: 'Empty: computed from sugar and alcohol.',
  }),
  volume: (preset: string) =>
    amount({ name: 'base.ml', title: 'Volume of the drink', unit: 'mL', above: 0, max: 100_000, preset }),
  mass: amount({ name: 'base.g', title: 'The scale shows', unit: 'g', above: 0, max: 100_000 }),
  slack: (preset: string) =>
    amount({
      name: 'base.slack',
      title: 'Give or take',
      unit: '%',
      min: 0,
      max: 50,
      preset,
      help: 'Jug or glass about 2, measuring cylinder about 1, scale about 0.1.',
    }),
  aim: (i: number) =>
    optionalAmount({
      name: named('aim', i),
      title: 'Wanted in the drink',
      unit: 'mg/kg',
      above: 0,
      max: 1_000_000,
      help: 'May stay empty: then you go by taste.',
    }),
  weighed: (i: number): Field<number> =>
    amount({
      ...{ name: named('massG', i), title: 'The scale shows', unit: 'g', above: 0, max: 10_000 },
      scale: fields.readability,
    }),
  readability: amount({
    name: 'readability',
    title: 'Smallest step of the scale',
    unit: 'g',
    above: 0,
    max: 1,
    preset: '0.01',
  }),
  verdict: words({ name: 'verdict', title: 'In words', optional: true, max: 500, help: 'May stay empty.' }),
  liking: (name: string) => whole({ name, title: 'Liking', unit: 'points', min: 1, max: 9 }),
  lowest: amount({ name: 'lowest', title: 'Weakest glass', unit: 'mg/kg', above: 0, max: 1_000_000 }),
  glasses: whole({ name: 'glasses', title: 'Glasses', unit: 'glasses', min: 2, max: 8, preset: '4' }),
  factor: choice({
    name: 'factor',
    title: 'Each stronger by',
    options: [
      { value: '2', label: '2 times' },
      { value: '3', label: '3 times' },
      { value: 'own', label: 'another factor' },
    ],
    preset: '2',
  }),
  ownFactor: amount({ name: 'ownFactor', title: 'Factor', unit: 'times', above: 1, max: 100 }),
  blind: choice({
    name: 'blind',
    title: 'Glasses',
    options: [
      { value: 'yes', label: 'Blind', hint: 'with three-digit codes, in an order of chance' },
      { value: 'no', label: 'Open', hint: 'from weak to strong' },
    ],
  }),
  note: (i: number) =>
    words({ name: `note.${i}`, title: 'In words', optional: true, max: 500, help: 'May stay empty.' }),
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

/** vial, vial.2, vial.3, … */
export function named(name: string, i: number): string {
  return i === 1 ? name : `${name}.${i}`;
}
