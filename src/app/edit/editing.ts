import { typedText } from '../../core/number/typed';
import { AS_TYPED } from '../../records/kind/quantity';
import type { Material } from '../../records/kind/material';
import { choice, day, optionalAmount, words, type Field } from '../../tasks/engine/fields';
import type { Answer } from '../../tasks/engine/readAmount';

/** What was typed, by the name of the field. */
export type Typed = Readonly<Record<string, string>>;

/** One thing of a record that can be changed: how it is asked, and how it stands now. */
export interface Editable<R> {
  readonly field: Field;
  readonly text: string;
  /** Words above it, where it is the first of several that belong together. */
  readonly part?: string;
  /** The record as it is with what was typed in the field, or one sentence on why that will not do. */
  change(record: R, typed: string): Answer<R>;
}

/** Keys under which a record holds values of a type, whatever their order; any value of that type may be stored there. */
type KeyFor<R, V> = {
  [K in keyof R]-?: [V] extends [R[K]] ? ([NonNullable<R[K]>] extends [V] ? K : never) : never;
}[keyof R] &
  string;
/** Those of them that a record need not have. */
type OptionalKeyFor<R, V> = {
  [K in KeyFor<R, V>]: Record<never, never> extends Pick<R, K> ? K : never;
}[KeyFor<R, V>];

/** What is asked by a field, as it stands, and the record with another value. */
export function editable<R, V>(field: Field<V>, text: string, set: (record: R, value: V) => R): Editable<R> {
  const change = (record: R, typed: string): Answer<R> => {
    const answer = field.read(typed);
    return answer.ok ? { ok: true, value: set(record, answer.value) } : answer;
  };
  return { field, text, change };
}

/** A record with another value under a key that it need not have, or without that key where there is no value. */
export function put<R extends object, V>(record: R, key: OptionalKeyFor<R, V>, value: V | null): R {
  const next = { ...record };
  delete next[key];
  return value === null ? next : { ...next, [key]: value };
}

/** What a record holds under a key that is for values of a type. */
function held<R, V>(record: R, key: KeyFor<R, V>): V | undefined {
  const value: unknown = record[key];
  return value as V | undefined; // by the type of the key
}

function shown(value: unknown): string {
  return value === undefined ? '' : String(value);
}

/** Words that must not be missing stay there even when they are empty. */
export function say<R extends object>(record: R, key: KeyFor<R, string>, title: string, optional = true): Editable<R> {
  const field = words({ name: key, title, optional, max: 200 });
  return editable(field, shown(record[key]), (old, value) => ({ ...old, [key]: value }));
}

/** Words that are taken out where they are empty. */
export function note<R extends object>(record: R, key: OptionalKeyFor<R, string>, title: string): Editable<R> {
  const field = words({ name: key, title, optional: true, max: 200 });
  return editable(field, shown(record[key]), (old, value) => put(old, key, value || null));
}

interface Amount {
  title: string;
  unit: string;
  min?: number;
}

export function number<R extends object>(record: R, key: OptionalKeyFor<R, number>, asked: Amount): Editable<R> {
  const now = held<R, number>(record, key);
  const text = now === undefined ? '' : typedText(Number(now.toPrecision(6)));
  return editable(optionalAmount({ name: key, max: 1e6, ...asked }), text, (old, typed) => put(old, key, typed));
}

/** A day that is taken out where it is empty. */
export function date<R extends object>(record: R, key: OptionalKeyFor<R, string>, title: string): Editable<R> {
  const field = day({ name: key, title, optional: true });
  return editable(field, shown(record[key]), (old, value) => put(old, key, value || null));
}

type Cited = NonNullable<Material['melts']>;

/** A number that carries where it was read; typing another one makes it the person's own. */
export function cited<R extends object>(record: R, key: OptionalKeyFor<R, Cited>, asked: Amount): Editable<R> {
  const now = held<R, Cited>(record, key);
  const field = optionalAmount({ name: key, max: 1e7, ...asked, ...(now ? { help: now.source } : {}) });
  return editable(field, now ? typedText(now.value) : '', (old, value) => {
    const typed = value === null ? null : value === now?.value ? now : { value, source: AS_TYPED };
    return put<R, Cited>(old, key, typed);
  });
}

type Density = NonNullable<Material['density']>;
type DensityKey<R> = OptionalKeyFor<R, Density>;

export function density<R extends object>(record: R, key: DensityKey<R>): Editable<R> {
  const now = held<R, Density>(record, key);
  const width = now?.halfWidth === undefined ? {} : { halfWidth: now.halfWidth };
  const asked = { name: key, title: 'Density at 20 °C', unit: 'g/mL', min: 0.5, max: 2.5 };
  const field = optionalAmount({ ...asked, ...(now ? { help: now.source } : {}) });
  return editable(field, now ? typedText(now.gPerMl) : '', (old, gPerMl) => {
    const typed =
      gPerMl === null ? null : gPerMl === now?.gPerMl ? now : { gPerMl, atC: 20, source: AS_TYPED, ...width };
    return put<R, Density>(old, key, typed);
  });
}

/** How far a density may be off; asked after it. */
export function densityWithin<R extends object>(record: R, key: DensityKey<R>): Editable<R> {
  const now = held<R, Density>(record, key)?.halfWidth;
  const field = optionalAmount({ name: `${key}.within`, title: 'Right within ±', unit: 'g/mL', min: 0, max: 0.5 });
  return editable(field, shown(now), (old, value) => {
    const there = held<R, Density>(old, key);
    if (!there || value === (there.halfWidth ?? null)) return old;
    const { halfWidth: _, ...rest } = there;
    const source = rest.source.includes(AS_TYPED) ? rest.source : `${rest.source}; ± ${AS_TYPED}`;
    return put<R, Density>(old, key, { ...rest, source, ...(value === null ? {} : { halfWidth: value }) });
  });
}

/** Words with commas between them. */
export function lines<R extends object>(record: R, key: OptionalKeyFor<R, string[]>, title: string): Editable<R> {
  const field = words({ name: key, title, optional: true, max: 500, help: 'With commas between them.' });
  const now = held<R, string[]>(record, key) ?? [];
  return editable(field, now.join(', '), (old, typed) => put<R, string[]>(old, key, typed ? separate(typed) : null));
}

/** What stands between commas. */
export function separate(text: string): string[] {
  return text
    .split(',')
    .map((one) => one.trim())
    .filter(Boolean);
}

/** A share (g/g), asked in %. */
export function purity<R extends object>(record: R, key: OptionalKeyFor<R, number>): Editable<R> {
  const now = held<R, number>(record, key);
  const field = optionalAmount({ name: key, title: 'Purity, at least', unit: '%', above: 0, max: 100 });
  const text = now === undefined ? '' : typedText(Number((now * 100).toPrecision(6)));
  return editable(field, text, (old, percent) => put(old, key, percent === null ? null : percent / 100));
}

/** One of several words. */
export function oneOf<R extends object, K extends keyof R & string>(
  record: R,
  key: K,
  title: string,
  values: readonly (R[K] & string)[],
): Editable<R> {
  const field = choice({ name: key, title, options: values.map((value) => ({ value, label: value })) });
  return editable(field, shown(record[key]), (old, text) => {
    const chosen = values.find((value) => value === text);
    return chosen === undefined ? old : { ...old, [key]: chosen };
  });
}

/** Where a thing is kept. */
export function stands<R extends object, K extends OptionalKeyFor<R, string>>(
  record: R,
  box: K,
  row: K,
): Editable<R>[] {
  return [note(record, box, 'Storage box'), note(record, row, 'Row')];
}
