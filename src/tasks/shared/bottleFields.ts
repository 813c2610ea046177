import { casProblem, tidyCas } from '../../core/limits/cas';
import { materialFacts } from '../../records/kind/material';
import { choice, code, day, given, optionalAmount, pick, shaped, words, type Field } from '../engine/fields';

/** A CAS number that may be left out; its check digit is looked at. */
export function casNumber(name: string): Field<string> {
  return {
    ...words({ name, title: 'CAS number', optional: true, help: 'From the label.' }),
    read: (text) => {
      const why = text.trim() === '' ? null : casProblem(text);
      return why === null ? { ok: true, value: text.trim() === '' ? '' : tidyCas(text) } : { ok: false, why };
    },
  };
}

/** The questions of a new bottle: its name first, then the rest on one card. */
export const bottleFields = {
  /** A material on the Shelf that the bottle holds, and what was taken over from the catalogue. */
  material: pick({ name: 'new.material', title: 'Material' }),
  /** Said of a bottle that follows another one. */
  following: given('new.following', ['yes']),
  /** Said when the name is left for the card: runs of the first version went on to other screens. */
  onCard: given('new.card', ['yes']),
  facts: shaped('new.facts', materialFacts),
  name: words({ name: 'new.name', title: 'Material', max: 80 }),
  code: code({
    name: 'new.code',
    title: 'Code',
    help: '2 to 6 letters or digits. Printed on strips and labels.',
  }),
  form: choice({
    name: 'new.form',
    title: 'At 20 °C it is',
    preset: 'liquid',
    options: [
      { value: 'liquid', label: 'liquid', hint: 'runs like water or oil' },
      { value: 'viscous', label: 'thick', hint: 'runs like honey' },
      { value: 'solid', label: 'solid', hint: 'crystals or powder: weighed, never dropped' },
    ],
  }),
  cas: casNumber('new.cas'),
  /** The plant: rules ban some, whatever the CAS number. */
  plant: words({ name: 'new.plant', title: 'Plant, in Latin', optional: true, help: 'Of an oil or extract.' }),
  supplier: words({ name: 'new.supplier', title: 'Supplier', optional: true, max: 80 }),
  lot: words({ name: 'new.lot', title: 'Lot', optional: true, max: 40 }),
  /** What its label says, in that unit. */
  amount: (unit: 'mL' | 'g') =>
    optionalAmount({
      name: 'new.amount',
      title: 'Amount',
      unit,
      above: 0,
      max: 100_000,
      help: 'As the label says. Then Minim can say what is left.',
    }),
  unit: choice({
    name: 'new.unit',
    title: 'Unit',
    options: [
      { value: 'mL', label: 'mL' },
      { value: 'g', label: 'g' },
    ],
  }),
  price: optionalAmount({ name: 'new.price', title: 'Price', unit: 'your currency', min: 0, max: 1e6 }),
  received: day({ name: 'new.received', title: 'Received', optional: true, past: true }),
  useBy: day({ name: 'new.useBy', title: 'Best before', optional: true }),
  density: optionalAmount({
    name: 'new.density',
    title: 'Density of this lot',
    unit: 'g/mL',
    min: 0.5,
    max: 2.5,
    help: 'At 20 °C, from the certificate.',
  }),
  purity: optionalAmount({
    name: 'new.purity',
    title: 'Purity, at least',
    unit: '%',
    above: 0,
    max: 100,
    help: 'From the certificate.',
  }),
  box: words({ name: 'new.box', title: 'Box', optional: true, max: 20 }),
  row: words({ name: 'new.row', title: 'Row', optional: true, max: 20 }),
  grade: choice({
    name: 'new.grade',
    title: 'May it go into a drink?',
    options: [
      { value: 'fit for drinks', label: 'Food grade', hint: 'the bottle or its papers say so', short: 'food grade' },
      { value: 'smell only', label: 'No, or not known', hint: 'smell only', short: 'smell only' },
    ],
  }),
};
