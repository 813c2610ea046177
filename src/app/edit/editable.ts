import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { code } from '../../tasks/engine/fields';
import { materialFields } from './editableMaterial';
import { date, density, number, oneOf, purity, say, put, stands, type Editable, type Typed } from './editing';

/** What can be changed of a record, in the order it is asked; it may depend on what was typed. */
export function editables(record: AnyRecord, typed: Typed = {}): Editable[] {
  const lowAt = (unit: string) => number(record, 'lowAt', { title: 'Time for more at', unit, min: 0 });
  if (isOf('material', record)) return materialFields(record, typed);
  if (isOf('bottle', record))
    return [
      ...[say(record, 'supplier', 'Supplier'), say(record, 'lot', 'Lot')],
      ...[
        date(record, 'received', 'Received'),
        date(record, 'opened', 'Opened'),
        date(record, 'useBy', 'Use by, from the label'),
      ],
      oneOf(record, 'grade', 'May it go into a drink?', ['fit for drinks', 'smell only']),
      number(record, 'amountG', { title: 'Amount when it came', unit: 'g', min: 0 }),
      number(record, 'pricePerG', { title: 'Price of one gram', unit: 'in your money', min: 0 }),
      ...[density(record), purity(record), ...stands(record), lowAt('g')],
    ];
  if (isOf('vial', record))
    return [
      { field: code({ name: 'code', title: 'Code of the vial' }), text: record.code, set: put('code') },
      { ...date(record, 'useBy', 'Use by'), set: (old, value) => ({ ...old, useBy: value }) as AnyRecord },
      ...[...stands(record), lowAt('g')],
    ];
  if (isOf('dropper', record))
    return [say(record, 'name', 'Name', false), say(record, 'tip', 'Tip'), ...stands(record)];
  if (isOf('supply', record))
    return [
      ...[say(record, 'name', 'Name', false), say(record, 'supplier', 'Supplier'), say(record, 'lot', 'Lot')],
      ...(record.sort === 'solvent'
        ? [oneOf(record, 'grade', 'May it go into a drink?', ['fit for drinks', 'smell only'])]
        : []),
      ...[date(record, 'useBy', 'Use by, from the label'), ...stands(record), lowAt(record.unit)],
    ];
  return [];
}

/** The record with what was typed, or null while an answer will not do. */
export function changed(record: AnyRecord, typed: Typed): AnyRecord | null {
  let now = record;
  for (const { field, text, set } of editables(record, typed)) {
    const answer = field.read(typed[field.name] ?? text);
    if (!answer.ok) return null;
    if (typed[field.name] !== undefined) now = set(now, answer.value);
  }
  return now;
}
