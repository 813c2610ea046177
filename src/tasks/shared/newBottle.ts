import { casProblem, tidyCas } from '../../core/limits/cas';
import { shortCode } from '../../core/label/shortCode';
import type { Bottle, Material } from '../../records/kind/material';
import { find, list, newRecord } from '../../records/shelf';
import type { MaterialFacts } from '../../workshop/catalogue';
import { choice, code, day, optionalAmount, valueOf, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { drawNaming } from './Naming';
import { today } from '../../workshop/onHand';
import type { Step } from '../engine/task';
import { formatGiven } from '../../ui/format';

const own = 'as typed from the bottle or its certificate';

const takenCodes = () => list('material').map((material) => material.code);

/** A CAS number that may be left out; its check digit is looked at. */
const cas: Field<string> = {
  ...words({ name: 'new.cas', title: 'CAS number', optional: true, help: 'From the label; may stay empty.' }),
  read: (text) => {
    const why = text.trim() === '' ? null : casProblem(text);
    return why === null ? { ok: true, value: text.trim() === '' ? '' : tidyCas(text) } : { ok: false, why };
  },
};

/** The plant: rules ban some, whatever the CAS number. */
const plant = words({ name: 'new.plant', title: 'Plant, in Latin', optional: true, help: 'Of an oil or extract.' });

/** The questions of a new bottle; asked in three screens. */
const fields = {
  name: words({ name: 'new.name', title: 'Material', max: 80 }),
  code: (name: string) =>
    code({
      name: 'new.code',
      title: 'Short code',
      help: '2 to 6 letters or digits; it goes on strips and labels.',
      taken: takenCodes(),
      preset: shortCode(name, takenCodes()),
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
  amount: optionalAmount({
    name: 'new.amount',
    title: 'Amount in it',
    unit: 'g',
    above: 0,
    max: 100_000,
    help: 'Then Minim can say what is left. 10 mL of an oil weigh about 9 g.',
  }),
  price: optionalAmount({ name: 'new.price', title: 'Price of the bottle', unit: 'in your money', min: 0, max: 1e6 }),
  received: () => day({ name: 'new.received', title: 'Received', optional: true, today: today(), past: true }),
  useBy: () => day({ name: 'new.useBy', title: 'Use by, from the label', optional: true, today: today() }),
  density: (known: string) =>
    optionalAmount({
      name: 'new.density',
      title: 'Density of this lot at 20 °C',
      unit: 'g/mL',
      min: 0.5,
      max: 2.5,
      help: known || 'From the certificate; may stay empty.',
    }),
  purity: optionalAmount({
    name: 'new.purity',
    title: 'Purity, at least',
    unit: '%',
    above: 0,
    max: 100,
    help: 'From the certificate; may stay empty.',
  }),
  box: words({ name: 'new.box', title: 'Box it stands in', optional: true, max: 20 }),
  row: words({ name: 'new.row', title: 'Row', optional: true, max: 20 }),
  grade: choice({
    name: 'new.grade',
    title: 'May it go into a drink?',
    options: [
      { value: 'fit for drinks', words: 'Food grade', more: 'the bottle or its papers say so' },
      { value: 'smell only', words: 'No, or not known', more: 'smell only' },
    ],
  }),
};

/** What was chosen from the catalogue, as it was then; nothing when it was typed by hand. */
function chosenFacts(run: RunState): MaterialFacts | null {
  const text = run.typed['new.facts'];
  if (!text) return null;
  try {
    return JSON.parse(text) as MaterialFacts;
  } catch {
    return null;
  }
}

function materialStep(run: RunState): Step {
  const name = valueOf(run, fields.name);
  const known = find('material', run.typed['new.material']);
  const facts = chosenFacts(run);
  const more = known
    ? []
    : [fields.code(name ?? ''), ...(facts?.form ? [] : [fields.form]), ...(facts?.cas ? [] : [cas])];
  return {
    key: 'new-material',
    say: 'What is in the bottle?',
    draw: drawNaming,
    drawn: ['new.name'],
    ask: [fields.name, ...(name === null ? [] : more), ...(name === null || known || facts ? [] : [plant])],
    done: 'Next',
    ...(name === null ? { problem: 'Type its name, or the first letters, and choose.' } : {}),
  };
}

/** The screens that ask for a new bottle: of a material of the catalogue, of one on the Shelf, or of a new one. */
export function newBottleSteps(run: RunState): Step[] {
  const density = (find('material', run.typed['new.material']) ?? chosenFacts(run))?.density;
  const known = density ? `Empty: ${formatGiven(density.gPerMl)} g/mL is used, from the ${density.source}.` : '';
  const { supplier, lot, amount, price, received, useBy, purity, box, row } = fields;
  return [
    materialStep(run),
    {
      key: 'new-bottle',
      say: 'What does the label say?',
      more: ['All of it may stay empty.'],
      ask: [supplier, lot, amount, received(), useBy(), fields.density(known), purity, price, box, row],
      done: 'Next',
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

function newMaterial(run: RunState): Material | null {
  const name = valueOf(run, fields.name);
  if (name === null) return null;
  const short = valueOf(run, fields.code(name));
  const facts = chosenFacts(run);
  const form = facts?.form ?? (valueOf(run, fields.form) as Material['form'] | null);
  const number = facts?.cas ?? valueOf(run, cas);
  const botanical = facts ? null : valueOf(run, plant);
  if (short === null || form === null) return null;
  return newRecord('material', {
    ...{ sort: 'natural', cautions: [] },
    ...facts,
    ...{ name, code: short, form },
    ...(number ? { cas: number } : {}),
    ...(botanical ? { botanical } : {}),
  });
}

/**
 * The bottle and its material as asked for; null until name, code and form are there. `fresh` is false for a material that is
 * on the Shelf already. Ids and time are new at each call.
 */
export function newBottle(run: RunState): { material: Material; bottle: Bottle; fresh: boolean } | null {
  const known = find('material', run.typed['new.material']);
  const material = known ?? newMaterial(run);
  if (!material) return null;
  return { material, bottle: bottleOf(run, material.id), fresh: known === undefined };
}

function bottleOf(run: RunState, material: string): Bottle {
  const gPerMl = valueOf(run, fields.density(''));
  const purity = valueOf(run, fields.purity);
  const amountG = valueOf(run, fields.amount);
  const price = valueOf(run, fields.price);
  const texts = { received: fields.received(), useBy: fields.useBy(), box: fields.box, row: fields.row };
  const typed = Object.entries(texts).flatMap(([name, field]) => {
    const text = valueOf(run, field);
    return text ? [[name, text]] : [];
  });
  return newRecord('bottle', {
    from: [material],
    material,
    supplier: valueOf(run, fields.supplier) ?? '',
    lot: valueOf(run, fields.lot) ?? '',
    grade: (valueOf(run, fields.grade) ?? 'smell only') as Bottle['grade'],
    ...Object.fromEntries(typed),
    ...(gPerMl === null ? {} : { density: { gPerMl, atC: 20, source: own } }),
    ...(purity === null ? {} : { purity: purity / 100 }),
    ...(amountG === null ? {} : { amountG }),
    ...(amountG === null || price === null ? {} : { pricePerG: price / amountG }),
  });
}
