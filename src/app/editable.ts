import { casProblem, tidyCas } from '../core/cas';
import { isOf, type AnyRecord, type RecordOf } from '../records/kinds';
import { list } from '../records/shelf';
import { choice, code, day, optionalAmount, words, type Field } from '../tasks/fields';
import { today } from '../tasks/onHand';

/** One thing of a record that can be changed: how it is asked, how it stands now, and the record with another value. */
export interface Editable {
  readonly field: Field;
  readonly text: string;
  readonly set: (record: AnyRecord, value: unknown) => AnyRecord;
}

type Loose = Record<string, unknown>;
const own = 'as typed by hand';

/** Sets a key, or takes it out where the value is empty. */
function put(key: string, into: (value: unknown) => unknown = (value) => value): Editable['set'] {
  return (record, value) => {
    const { [key]: _, ...rest } = record as unknown as Loose;
    const empty = value === null || value === '';
    return (empty ? rest : { ...rest, [key]: into(value) }) as unknown as AnyRecord;
  };
}

/** Words that must not be missing stay there even when they are empty. */
function say(record: AnyRecord, key: string, title: string, optional = true): Editable {
  return {
    field: words({ name: key, title, optional, max: 200 }),
    text: String((record as unknown as Loose)[key] ?? ''),
    set: (old, value) => ({ ...old, [key]: value }) as AnyRecord,
  };
}

function note(record: AnyRecord, key: string, title: string): Editable {
  return { ...say(record, key, title), set: put(key) };
}

function number(record: AnyRecord, key: string, asked: { title: string; unit: string; min?: number }): Editable {
  const value = (record as unknown as Loose)[key];
  return {
    field: optionalAmount({ name: key, max: 1e6, ...asked }),
    text: typeof value === 'number' ? String(Number(value.toPrecision(6))) : '',
    set: put(key),
  };
}

function date(record: AnyRecord, key: string, title: string): Editable {
  const text = String((record as unknown as Loose)[key] ?? '');
  return { field: day({ name: key, title, optional: true, today: today() }), text, set: put(key) };
}

/** A number that carries where it was read; typing another one makes it the person's own. */
function cited(record: AnyRecord, key: string, asked: { title: string; unit: string; min?: number }): Editable {
  const value = (record as unknown as Loose)[key] as { value: number; source: string } | undefined;
  return {
    field: optionalAmount({ name: key, max: 1e7, ...asked, ...(value ? { help: value.source } : {}) }),
    text: value ? String(value.value) : '',
    set: put(key, (typed) => (typed === value?.value ? value : { value: typed, source: own })),
  };
}

function density(record: AnyRecord): Editable {
  const now = 'density' in record ? (record.density as { gPerMl: number; source: string } | undefined) : undefined;
  const asked = { name: 'density', title: 'Density at 20 °C', unit: 'g/mL', min: 0.5, max: 2.5 };
  return {
    field: optionalAmount({ ...asked, ...(now ? { help: now.source } : {}) }),
    text: now ? String(now.gPerMl) : '',
    set: put('density', (typed) => (typed === now?.gPerMl ? now : { gPerMl: typed, atC: 20, source: own })),
  };
}

function lines(record: AnyRecord, key: string, title: string): Editable {
  const value = ((record as unknown as Loose)[key] ?? []) as string[];
  return {
    field: words({ name: key, title, optional: true, max: 500, help: 'With commas between them.' }),
    text: value.join(', '),
    set: put(key, (typed) =>
      String(typed)
        .split(',')
        .map((one) => one.trim())
        .filter(Boolean),
    ),
  };
}

function purity(record: AnyRecord): Editable {
  const now = (record as { purity?: number }).purity;
  return {
    field: optionalAmount({ name: 'purity', title: 'Purity, at least', unit: '%', above: 0, max: 100 }),
    text: now === undefined ? '' : String(Number((now * 100).toPrecision(6))),
    set: put('purity', (typed) => Number(typed) / 100),
  };
}

function casNumber(text: string): Editable {
  const field = words({ name: 'cas', title: 'CAS number', optional: true });
  const read = (typed: string) => {
    const why = typed.trim() === '' ? null : casProblem(typed);
    return why === null ? { ok: true as const, value: typed.trim() && tidyCas(typed) } : { ok: false as const, why };
  };
  return { field: { ...field, read }, text, set: put('cas') };
}

function oneOf(record: AnyRecord, key: string, title: string, values: readonly string[]): Editable {
  const options = values.map((value) => ({ value, words: value }));
  const text = String((record as unknown as Loose)[key] ?? '');
  return {
    field: choice({ name: key, title, options }),
    text,
    set: (old, value) => ({ ...old, [key]: value }) as AnyRecord,
  };
}

function stands(record: AnyRecord): Editable[] {
  return [note(record, 'box', 'Box it stands in'), note(record, 'row', 'Row')];
}

function materialFields(record: RecordOf<'material'>): Editable[] {
  const taken = list('material').flatMap((other) => (other.id === record.id ? [] : other.code));
  return [
    say(record, 'name', 'Name', false),
    { field: code({ name: 'code', title: 'Short code', taken }), text: record.code, set: put('code') },
    casNumber(record.cas ?? ''),
    note(record, 'fema', 'FEMA number'),
    note(record, 'botanical', 'Plant, in Latin'),
    oneOf(record, 'form', 'At 20 °C it is', ['liquid', 'viscous', 'solid']),
    density(record),
    purity(record),
    cited(record, 'melts', { title: 'Melts at', unit: '°C', min: -273 }),
    cited(record, 'flash', { title: 'Flash point', unit: '°C', min: -273 }),
    cited(record, 'water', { title: 'Dissolves in water', unit: 'mg/L', min: 0 }),
    lines(record, 'also', 'Other names'),
    lines(record, 'smells', 'Smells of'),
  ];
}

/** What can be changed of a record, in the order it is asked. */
export function editables(record: AnyRecord): Editable[] {
  const lowAt = (unit: string) => number(record, 'lowAt', { title: 'Time for more at', unit, min: 0 });
  if (isOf('material', record)) return materialFields(record);
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
