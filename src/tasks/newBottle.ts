import type { Bottle, Material } from '../records/material';
import { list, newRecord } from '../records/shelf';
import { choice, code, day, optionalAmount, valueOf, words } from './fields';
import type { RunState } from './fold';
import { today } from './onHand';
import type { Step } from './task';

const own = 'as typed from the bottle or its certificate';

/** The questions of a new bottle; asked in two screens. */
const fields = {
  name: words({ name: 'new.name', title: 'Material', max: 80 }),
  code: () =>
    code({
      name: 'new.code',
      title: 'Short code',
      help: '2 to 6 letters or digits; it goes on strips and labels.',
      taken: list('material').map((material) => material.code),
    }),
  form: choice({
    name: 'new.form',
    title: 'At 20 °C it is',
    preset: 'liquid',
    options: [
      { value: 'liquid', words: 'liquid', more: 'runs like water or oil' },
      { value: 'viscous', words: 'thick', more: 'runs like honey' },
      { value: 'solid', words: 'solid', more: 'crystals or powder: weighed, never dropped' },
    ],
  }),
  supplier: words({ name: 'new.supplier', title: 'Supplier', optional: true, max: 80 }),
  lot: words({ name: 'new.lot', title: 'Lot', optional: true, max: 40 }),
  received: () => day({ name: 'new.received', title: 'Received', optional: true, today: today(), past: true }),
  density: optionalAmount({
    name: 'new.density',
    title: 'Density at 20 °C',
    unit: 'g/mL',
    min: 0.5,
    max: 2.5,
    help: 'From the certificate; may stay empty.',
  }),
  purity: optionalAmount({
    name: 'new.purity',
    title: 'Purity, at least',
    unit: '%',
    above: 0,
    max: 100,
    help: 'May stay empty.',
  }),
  grade: choice({
    name: 'new.grade',
    title: 'May it go into a drink?',
    options: [
      { value: 'fit for drinks', words: 'Food grade', more: 'the bottle or its papers say so' },
      { value: 'smell only', words: 'No, or not known', more: 'smell only' },
    ],
  }),
};

/** The screens that ask for a new bottle of a new material. */
export function newBottleSteps(): Step[] {
  return [
    { key: 'new-material', say: 'What is in the bottle?', ask: [fields.name, fields.code(), fields.form] },
    {
      key: 'new-bottle',
      say: 'What does the label say?',
      ask: [fields.supplier, fields.lot, fields.received(), fields.density, fields.purity],
      cautions: ['Neat material: gloves and eye protection, open window, never taste it.'],
    },
    {
      key: 'new-grade',
      say: 'May it go into a drink?',
      more: ['Read the label. In doubt it is for the nose only.'],
      ask: [fields.grade],
    },
  ];
}

/** The bottle and its material as asked for; null until name, code and grade are there. Ids and time are new at each call. */
export function newBottle(run: RunState): { material: Material; bottle: Bottle } | null {
  const name = valueOf(run, fields.name);
  const short = valueOf(run, fields.code());
  const form = valueOf(run, fields.form) as Material['form'] | null;
  if (name === null || short === null || form === null) return null;
  const gPerMl = valueOf(run, fields.density);
  const purity = valueOf(run, fields.purity);
  const received = valueOf(run, fields.received());
  const material = newRecord('material', { name, code: short, sort: 'natural', form, cautions: [] });
  const bottle = newRecord('bottle', {
    from: [material.id],
    material: material.id,
    supplier: valueOf(run, fields.supplier) ?? '',
    lot: valueOf(run, fields.lot) ?? '',
    grade: (valueOf(run, fields.grade) ?? 'smell only') as Bottle['grade'],
    ...(received ? { received } : {}),
    ...(gPerMl === null ? {} : { density: { gPerMl, atC: 20, source: own } }),
    ...(purity === null ? {} : { purity: purity / 100 }),
  });
  return { material, bottle };
}
