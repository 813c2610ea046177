import type { AnyRecord } from '../../records/kind/kinds';
import { choice, day, optionalAmount, words, type Field } from '../../tasks/engine/fields';

/** What was typed, by the name of the field. */
export type Typed = Readonly<Record<string, string>>;

/** One thing of a record that can be changed: how it is asked, how it stands now, and the record with another value. */
export interface Editable {
  readonly field: Field;
  readonly text: string;
  readonly set: (record: AnyRecord, value: unknown) => AnyRecord;
  /** Words above it, where it is the first of several that belong together. */
  readonly part?: string;
}

type Loose = Record<string, unknown>;
const own = 'as typed by hand';

/** Sets a key, or takes it out where the value is empty. */
export function put(key: string, into: (value: unknown) => unknown = (value) => value): Editable['set'] {
  return (record, value) => {
    const { [key]: _, ...rest } = record as unknown as Loose;
    const empty = value === null || value === '';
    return (empty ? rest : { ...rest, [key]: into(value) }) as unknown as AnyRecord;
  };
}

/** Words that must not be missing stay there even when they are empty. */
export function say(record: AnyRecord, key: string, title: string, optional = true): Editable {
  return {
    field: words({ name: key, title, optional, max: 200 }),
    text: String((record as unknown as Loose)[key] ?? ''),
    set: (old, value) => ({ ...old, [key]: value }) as AnyRecord,
  };
}

export function note(record: AnyRecord, key: string, title: string): Editable {
  return { ...say(record, key, title), set: put(key) };
}

export function number(record: AnyRecord, key: string, asked: { title: string; unit: string; min?: number }): Editable {
  const value = (record as unknown as Loose)[key];
  return {
    field: optionalAmount({ name: key, max: 1e6, ...asked }),
    text: typeof value === 'number' ? String(Number(value.toPrecision(6))) : '',
    set: put(key),
  };
}

export function date(record: AnyRecord, key: string, title: string): Editable {
  const text = String((record as unknown as Loose)[key] ?? '');
  return { field: day({ name: key, title, optional: true }), text, set: put(key) };
}

/** A number that carries where it was read; typing another one makes it the person's own. */
export function cited(record: AnyRecord, key: string, asked: { title: string; unit: string; min?: number }): Editable {
  const value = (record as unknown as Loose)[key] as { value: number; source: string } | undefined;
  return {
    field: optionalAmount({ name: key, max: 1e7, ...asked, ...(value ? { help: value.source } : {}) }),
    text: value ? String(value.value) : '',
    set: put(key, (typed) => (typed === value?.value ? value : { value: typed, source: own })),
  };
}

type Density = { gPerMl: number; atC: number; source: string; halfWidth?: number };

function densityOf(record: AnyRecord): Density | undefined {
  return 'density' in record ? (record.density as Density | undefined) : undefined;
}

export function density(record: AnyRecord): Editable {
  const now = densityOf(record);
  const width = now?.halfWidth === undefined ? {} : { halfWidth: now.halfWidth };
  const asked = { name: 'density', title: 'Density at 20 °C', unit: 'g/mL', min: 0.5, max: 2.5 };
  return {
    field: optionalAmount({ ...asked, ...(now ? { help: now.source } : {}) }),
    text: now ? String(now.gPerMl) : '',
    set: put('density', (typed) => (typed === now?.gPerMl ? now : { gPerMl: typed, atC: 20, source: own, ...width })),
  };
}

/** How far a density may be off; asked after it. */
export function densityWithin(record: AnyRecord): Editable {
  const now = densityOf(record)?.halfWidth;
  return {
    field: optionalAmount({ name: 'density.within', title: 'Right within ±', unit: 'g/mL', min: 0, max: 0.5 }),
    text: now === undefined ? '' : String(now),
    set: (old, value) => {
      const there = densityOf(old);
      if (!there || value === (there.halfWidth ?? null)) return old;
      const { halfWidth: _, ...rest } = there;
      const source = rest.source.includes(own) ? rest.source : `${rest.source}; ± ${own}`;
      return { ...old, density: { ...rest, source, ...(value === null ? {} : { halfWidth: value }) } } as AnyRecord;
    },
  };
}

export function lines(record: AnyRecord, key: string, title: string): Editable {
  const value = ((record as unknown as Loose)[key] ?? []) as string[];
  return {
    field: words({ name: key, title, optional: true, max: 500, help: 'With commas between them.' }),
    text: value.join(', '),
    set: put(key, (typed) => separate(String(typed))),
  };
}

/** What stands between commas. */
export function separate(text: string): string[] {
  return text
    .split(',')
    .map((one) => one.trim())
    .filter(Boolean);
}

export function purity(record: AnyRecord): Editable {
  const now = (record as { purity?: number }).purity;
  return {
    field: optionalAmount({ name: 'purity', title: 'Purity, at least', unit: '%', above: 0, max: 100 }),
    text: now === undefined ? '' : String(Number((now * 100).toPrecision(6))),
    set: put('purity', (typed) => Number(typed) / 100),
  };
}

export function oneOf(record: AnyRecord, key: string, title: string, values: readonly string[]): Editable {
  const options = values.map((value) => ({ value, words: value }));
  const text = String((record as unknown as Loose)[key] ?? '');
  return {
    field: choice({ name: key, title, options }),
    text,
    set: (old, value) => ({ ...old, [key]: value }) as AnyRecord,
  };
}

export function stands(record: AnyRecord): Editable[] {
  return [note(record, 'box', 'Box it stands in'), note(record, 'row', 'Row')];
}
