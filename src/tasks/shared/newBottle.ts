import { shortCode } from '../../core/label/shortCode';
import type { Bottle, Material } from '../../records/kind/material';
import { find, list, newRecord } from '../../records/shelf';
import { answer, ask } from '../engine/answers';
import { notAmong, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { bottleFields as fields } from './bottleFields';
import { drawNaming } from './Naming';
import type { Step } from '../engine/task';
import { formatGiven } from '../../ui/format';
import { neverFit } from '../../workshop/drinkable/neverFit';

const own = 'as typed from the bottle or its certificate';

/** The code of a new material: one that is free is there, and one that is taken will not do. */
function askCode(name: string): Field<string> {
  const taken = list('material').map((material) => material.code);
  return ask(fields.code, { preset: shortCode(name, taken), refuse: notAmong(taken) });
}

export type NewBottleStep = 'new-material' | 'new-bottle' | 'new-grade';

function materialStep(run: RunState): Step<NewBottleStep> {
  const name = answer(run, fields.name);
  const known = find('material', answer(run, fields.material));
  const facts = answer(run, fields.facts);
  const more = known
    ? []
    : [askCode(name ?? ''), ...(facts?.form ? [] : [fields.form]), ...(facts?.cas ? [] : [fields.cas])];
  return {
    key: 'new-material',
    say: 'What is in the bottle?',
    draw: drawNaming,
    drawn: ['new.name'],
    ask: [fields.name, ...(name === null ? [] : more), ...(name === null || known || facts ? [] : [fields.plant])],
    done: 'Next',
    ...(name === null ? { problem: 'Type its name, or the first letters, and choose.' } : {}),
  };
}

/** The screens that ask for a new bottle: of a material of the catalogue, of one on the Shelf, or of a new one. */
export function newBottleSteps(run: RunState): Step<NewBottleStep>[] {
  const density = (find('material', answer(run, fields.material)) ?? answer(run, fields.facts))?.density;
  const known = density
    ? { help: `Empty: ${formatGiven(density.gPerMl)} g/mL is used, from the ${density.source}.` }
    : {};
  const never = neverFitIn(run);
  const { supplier, lot, amount, price, received, useBy, purity, box, row } = fields;
  return [
    materialStep(run),
    {
      key: 'new-bottle',
      say: 'What does the label say?',
      more: ['All of it may stay empty.'],
      ask: [supplier, lot, amount, received, useBy, ask(fields.density, known), purity, price, box, row],
      done: 'Next',
      cautions: ['Neat material: gloves and eye protection, open window, never taste it.'],
    },
    {
      key: 'new-grade',
      say: 'May it go into a drink?',
      more: ['Read the label. In doubt it is for the nose only.'],
      ask: [ask(fields.grade, { refuse: (grade) => (grade === 'fit for drinks' ? never : null) })],
      ...(never && answer(run, fields.grade) === null ? { cautions: [never] } : {}),
    },
  ];
}

/** Why what is in the bottle is never fit for drinks, whatever its label says; null where nothing speaks against it. */
function neverFitIn(run: RunState): string | null {
  const material = find('material', answer(run, fields.material)) ?? answer(run, fields.facts);
  const names = [answer(run, fields.name), material?.name, ...(material?.also ?? [])];
  return neverFit(
    names.filter((name) => name != null),
    material?.cas ?? answer(run, fields.cas),
  );
}

function newMaterial(run: RunState): Material | null {
  const name = answer(run, fields.name);
  if (name === null) return null;
  const short = answer(run, fields.code);
  const facts = answer(run, fields.facts);
  const form = facts?.form ?? answer(run, fields.form);
  const number = facts?.cas ?? answer(run, fields.cas);
  const botanical = facts ? null : answer(run, fields.plant);
  if (short === null || form === null) return null;
  return newRecord('material', {
    ...facts,
    sort: facts?.sort ?? 'natural',
    cautions: facts?.cautions ?? [],
    name,
    code: short,
    form,
    ...(number ? { cas: number } : {}),
    ...(botanical ? { botanical } : {}),
  });
}

/**
 * The bottle and its material as asked for; null until name, code and form are there. `fresh` is false for a material that is
 * on the Shelf already. Ids and time are new at each call.
 */
export function newBottle(run: RunState): { material: Material; bottle: Bottle; fresh: boolean } | null {
  const known = find('material', answer(run, fields.material));
  const material = known ?? newMaterial(run);
  if (!material) return null;
  return { material, bottle: bottleOf(run, material.id), fresh: known === undefined };
}

function bottleOf(run: RunState, material: string): Bottle {
  const gPerMl = answer(run, fields.density);
  const purity = answer(run, fields.purity);
  const amountG = answer(run, fields.amount);
  const price = answer(run, fields.price);
  const texts = { received: fields.received, useBy: fields.useBy, box: fields.box, row: fields.row };
  const typed = Object.entries(texts).flatMap(([name, field]) => {
    const text = answer(run, field);
    return text ? [[name, text]] : [];
  });
  return newRecord('bottle', {
    from: [material],
    material,
    supplier: answer(run, fields.supplier) ?? '',
    lot: answer(run, fields.lot) ?? '',
    grade: neverFitIn(run) ? 'smell only' : (answer(run, fields.grade) ?? 'smell only'),
    ...Object.fromEntries(typed),
    ...(gPerMl === null ? {} : { density: { gPerMl, atC: 20, source: own } }),
    ...(purity === null ? {} : { purity: purity / 100 }),
    ...(amountG === null ? {} : { amountG }),
    ...(amountG === null || price === null ? {} : { pricePerG: price / amountG }),
  });
}
