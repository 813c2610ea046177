import { heatKinds } from '../../../tables/keeping/preserved';
import { bufferSalts } from '../../../tables/keeping/acidity';
import { sweeteners } from '../../../tables/keeping/sweeteners';
import type { Option } from '../../../ui/controls/field';
import { amount, choice, day, optionalAmount, words, type Field } from '../../engine/fields';
import { good } from '../../engine/readAmount';
import { heatLog } from './heatLog';

/** A choice that may stay open: then its answer is ''. */
function openChoice<const V extends string>(asked: { name: string; title: string; options: readonly Option<V>[] }) {
  const field = choice(asked);
  return { ...field, read: (text: string) => (text === '' ? good('' as const) : field.read(text)) };
}

const minutes = { unit: 'min', above: 0, max: 300 } as const;

/** What is asked of acid, keeping, gas and sweeteners, beside the questions that the first version had. */
export const keepFields = {
  salt: choice({
    name: 'salt',
    title: 'Buffer salt',
    preset: 'trisodium-citrate',
    options: bufferSalts.map(({ id, name }) => ({ value: id, label: name })),
  }),
  saltPerL: optionalAmount({
    name: 'salt.g',
    title: 'Buffer salt',
    unit: 'g/L',
    min: 0,
    max: 20,
    help: 'It takes sourness back, and holds the pH.',
  }),
  ascorbic: optionalAmount({
    name: 'ascorbic',
    title: 'Ascorbic acid',
    unit: 'mg/L',
    min: 0,
    max: 5000,
    help: 'Vitamin C: keeps air from colour and flavour.',
  }),
  alkalinity: optionalAmount({
    name: 'alkalinity',
    title: 'Alkalinity of the water',
    unit: 'mg/L',
    min: 0,
    max: 1000,
    help: 'As calcium carbonate, from the water works. 1 °dH of carbonate hardness is 17.8.',
  }),
  ph: optionalAmount({
    name: 'ph',
    title: 'Measured pH',
    unit: 'pH',
    min: 1,
    max: 10,
    help: 'Of a trial without gas, at 20 to 25 °C, with a meter set in two buffers.',
  }),
  phTarget: optionalAmount({ name: 'ph.target', title: 'Target pH', unit: 'pH', min: 1.5, max: 8 }),
  treated: choice({
    name: 'treated',
    title: 'What else keeps it',
    preset: 'none',
    options: [
      { value: 'none', label: 'Nothing else', short: 'not heated' },
      { value: 'cold', label: 'The cold', short: 'kept cold', hint: 'below 5 °C, for days' },
      { value: 'bottle', label: 'Heat, in the closed bottle', short: 'heated in the bottle' },
      { value: 'hot', label: 'It is filled hot', short: 'filled hot' },
    ],
  }),
  heatKind: choice({
    name: 'heat.kind',
    title: 'Heat is counted as for',
    preset: 'soft',
    options: heatKinds.map(({ id, name, organism }) => ({ value: id, label: name, hint: organism })),
  }),
  heatC: amount({ name: 'heat.c', title: 'In the middle of the bottle', unit: '°C', min: 40, max: 110, preset: '65' }),
  heatMin: amount({ name: 'heat.min', title: 'Held there for', ...minutes, preset: '20' }),
  heatLog,
  fillC: amount({ name: 'fill.c', title: 'Temperature when filled', unit: '°C', min: 40, max: 110, preset: '85' }),
  fillMin: amount({ name: 'fill.min', title: 'Held closed, cap down, for', ...minutes, preset: '3' }),
  best: day({ name: 'best', title: 'Best before', optional: true }),
  why: words({ name: 'best.why', title: 'How you know', optional: true, max: 120 }),
  labelName: words({ name: 'label.name', title: 'Name on the label', optional: true, max: 80 }),
  labelMl: optionalAmount({ name: 'label.ml', title: 'In a bottle', unit: 'mL', above: 0, max: 20_000 }),
  rating: optionalAmount({
    name: 'bottle.bar',
    title: 'Bottle rating',
    unit: 'bar',
    above: 0,
    max: 30,
    help: 'On the gauge, of bottle and cap: as their maker says.',
  }),
  headspace: amount({ name: 'bottle.head', title: 'Headspace', unit: '%', above: 0, max: 50, preset: '5' }),
  air: choice({
    name: 'bottle.air',
    title: 'In the headspace is',
    preset: 'air',
    options: [
      { value: 'air', label: 'Air', short: 'air', hint: 'it adds about 1 bar' },
      { value: 'gas', label: 'Carbon dioxide', short: 'carbon dioxide', hint: 'flushed, or capped on foam' },
    ],
  }),
  sweetener: (n: number) =>
    openChoice({
      name: `sweet.${n}`,
      title: n === 1 ? 'Sweetener' : 'Second sweetener',
      options: [
        { value: '', label: 'None' },
        ...sweeteners.map(({ id, name, eNumber, note }) => ({ value: id, label: `${name}, ${eNumber}`, short: name, hint: note })),
      ],
    }), // prettier-ignore
  sweetMg: (n: number): Field<number> =>
    amount({ name: `sweet.${n}.mg`, title: 'Sweetener in the drink', unit: 'mg/L', above: 0, max: 20_000 }),
};

/** How many sweeteners there may be in one drink here. */
export const SWEETENERS = [1, 2] as const;

/** Names of the answers of which the next batch of this formula begins with the same. */
export const keptWithFormula = [
  ...[
    'salt',
    'salt.g',
    'ascorbic',
    'alkalinity',
    'ph.target',
    'treated',
    'heat.',
    'fill.',
    'bottle.',
    'sweet.',
    'label.',
  ],
];

/** Names of the answers that belong to one batch alone. */
export const keptOfOneBatch = ['ph', 'best', 'best.why'];
