import { byKind, isEditable, type AnyRecord, type EditableKind, type RecordOf } from '../../records/kind/kinds';
import { choice, code, day } from '../../tasks/engine/fields';
import { materialFields } from './editableMaterial';
import { ingredientFacts } from './editableIngredient';
import { solventFields } from './editableSolvent';
import { date, density, editable, number, oneOf, purity, say, stands, type Editable, type Typed } from './editing';

const grades = ['fit for drinks', 'smell only'] as const;
const lowAt = (unit: string) => ({ title: 'Time for more at', unit, min: 0 });

/** What can be changed of each kind that says that it can, in the order it is asked. */
const edits: {
  readonly [K in EditableKind]: (record: RecordOf<K>, typed: Typed) => readonly Editable<RecordOf<K>>[];
} = {
  material: materialFields,
  bottle: (record) => [
    say(record, 'supplier', 'Supplier'),
    say(record, 'lot', 'Lot'),
    date(record, 'received', 'Received'),
    date(record, 'opened', 'Opened'),
    date(record, 'useBy', 'Use by, from the label'),
    ...(record.grade === 'fit for drinks' || record.smellOnly ? [] : [gradeOf(record)]),
    amountInGrams(record),
    number(record, 'pricePerG', { title: 'Price of one gram', unit: 'your currency', min: 0 }),
    density(record, 'density'),
    purity(record, 'purity'),
    ...ingredientFacts(record),
    ...stands(record, 'box', 'row'),
    number(record, 'lowAt', lowAt('g')),
  ],
  vial: (record) => [
    editable(code({ name: 'code', title: 'Code of the vial' }), record.code, (old, typed) => ({ ...old, code: typed })),
    lastDay(record),
    capOf(record),
    ...stands(record, 'box', 'row'),
    number(record, 'lowAt', lowAt('g')),
  ],
  solvent: solventFields,
  dropper: (record) => [say(record, 'name', 'Name', false), say(record, 'tip', 'Tip'), ...stands(record, 'box', 'row')],
  scale: (record) => [
    say(record, 'name', 'Name', false),
    number(record, 'capacityG', { title: 'Carries', unit: 'g', min: 0 }),
  ],
  vessel: (record) => [say(record, 'name', 'Name', false)],
  supply: (record) => [
    say(record, 'name', 'Name', false),
    say(record, 'supplier', 'Supplier'),
    say(record, 'lot', 'Lot'),
    ...(record.sort !== 'solvent' || record.grade === 'fit for drinks' || record.smellOnly ? [] : [gradeOf(record)]),
    date(record, 'useBy', 'Use by, from the label'),
    ...stands(record, 'box', 'row'),
    number(record, 'lowAt', lowAt(record.unit)),
  ],
};

/** How a vial is closed: tells how much of its solvent may evaporate. */
function capOf(record: RecordOf<'vial'>): Editable<RecordOf<'vial'>> {
  const field = choice({
    name: 'cap',
    title: 'It is closed by',
    options: [
      { value: 'lined cap', label: 'a lined cap', hint: 'loses up to 4 % of alcohol in a year' },
      { value: 'dropper cap', label: 'a dropper cap', hint: 'loses up to 15 % of alcohol in a year' },
      { value: 'not said', label: 'not said', hint: 'taken for a dropper cap' },
    ],
  });
  return editable(field, record.cap ?? 'not said', (old, text) => {
    const { cap: _, ...rest } = old;
    return text === 'not said' ? rest : { ...rest, cap: text };
  });
}

/** Asked only while it is not called fit: it becomes smell only by being marked so, which stays. */
function gradeOf<R extends RecordOf<'bottle' | 'supply'>>(record: R): Editable<R> {
  return oneOf(record, 'grade', 'May it go into a drink?', grades);
}

/** Grams that are typed are as typed: what the density left open of an amount in mL goes with the old ones. */
function amountInGrams(record: RecordOf<'bottle'>): Editable<RecordOf<'bottle'>> {
  const asked = number(record, 'amountG', { title: 'Amount when it came', unit: 'g', min: 0 });
  return {
    ...asked,
    change(old, typed) {
      const answer = asked.change(old, typed);
      if (!answer.ok) return answer;
      const { amountU: _, ...value } = answer.value;
      return { ok: true, value };
    },
  };
}

/** A vial carries its last day even where it is empty. */
function lastDay(record: RecordOf<'vial'>): Editable<RecordOf<'vial'>> {
  const field = day({ name: 'useBy', title: 'Use by', optional: true });
  return editable(field, record.useBy, (old, useBy) => ({ ...old, useBy }));
}

/** What can be changed of a record; it may depend on what was typed. Nothing of a kind that is never changed. */
export function editables(record: AnyRecord, typed: Typed = {}): readonly Editable<AnyRecord>[] {
  return isEditable(record) ? byKind<EditableKind, readonly Editable<AnyRecord>[], [Typed]>(edits, record, typed) : [];
}

/** The record with what was typed, or null while an answer will not do. */
export function changed(record: AnyRecord, typed: Typed): AnyRecord | null {
  let now = record;
  for (const { field, text, change } of editables(record, typed)) {
    const answer = change(now, typed[field.name] ?? text);
    if (!answer.ok) return null;
    if (typed[field.name] !== undefined) now = answer.value;
  }
  return now;
}
