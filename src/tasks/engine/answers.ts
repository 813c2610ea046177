import type { Option } from '../../ui/controls/field';
import { signIn, type Field } from './fields';
import type { RunState } from './fold';
import type { Happening } from './log';

/** What a field is asked with at this moment: what the Shelf, the day and the answers before it bring. */
interface Now<T> {
  readonly preset?: string;
  readonly help?: string;
  readonly options?: readonly Option[];
  /** One sentence when a value will not do today; null when it will. */
  readonly refuse?: (value: T) => string | null;
}

/** A declared field as a screen asks it now. Its name, and so its answer, stay the same. */
export function ask<T>(field: Field<T>, { refuse, ...now }: Now<T>): Field<T> {
  const read: Field<T>['read'] = (text, oneSign) => {
    if (now.options?.every(({ value }) => value !== text)) return { ok: false, why: `“${field.title}”: choose one.` };
    const answer = field.read(text, oneSign);
    const why = answer.ok && refuse ? refuse(answer.value) : null;
    return why === null ? answer : { ok: false, why };
  };
  return { ...field, ...now, asked: true, read };
}

/**
 * The answer of a run in a field; null while there is none. Of a declared field: what was typed, else what was in it when its
 * screen was left, else its fixed preset. Of a field as it is asked now: what was typed, else what is in it now.
 */
export function answer<T>(run: RunState, field: Field<T>): T | null {
  const left = field.asked ? undefined : run.presets[field.name];
  const given = field.read(run.typed[field.name] ?? left ?? field.preset ?? '', signIn(run, field));
  return given.ok ? given.value : null;
}

/** Whether something was ever typed in a field, even if it was taken back: how far a list that grows has come. */
export function isBegun(run: RunState, field: Field): boolean {
  return run.typed[field.name] !== undefined;
}

/** The names that begin so and in which something was ever typed, in the order in which that was first done. */
export function namesBegun({ typed }: RunState, start: string): string[] {
  return Object.keys(typed).filter((name) => name.startsWith(start));
}

/** What a button types: the answer of a field, by its name; what has a structure as JSON. */
export function types<T extends string | object>(field: Field<T>, value: NoInfer<T>): Record<string, string> {
  return { [field.name]: typeof value === 'string' ? value : JSON.stringify(value) };
}

/** What happens where answers are typed, by the names of their fields. */
export function asTyped(texts: Readonly<Record<string, string>>): Happening[] {
  return Object.entries(texts).map(([key, text]) => ({ type: 'typed', key, text }));
}

/**
 * A question about one thing of several, under a name of its own: the answer for one bottle or carrier is never that for the next.
 * Runs of older versions have one answer for all of them.
 */
export function askAbout<T>(run: RunState, field: Field<T>, id: string): Field<T> {
  return run.typed[field.name] ? field : { ...field, name: `${field.name}.${id}` };
}

/** A run as it would be with some answers typed. */
export function supposing(run: RunState, typed: Readonly<Record<string, string>>): RunState {
  return { ...run, typed: { ...run.typed, ...typed } };
}

/** What a button types to take an answer back. */
export function clears(field: Field): Record<string, string> {
  return { [field.name]: '' };
}

/** What a run has in some fields, by name, for another run to begin with. */
export function handedOn(run: RunState, fields: readonly Field[]): Record<string, string> {
  const all = { ...run.presets, ...run.typed };
  return Object.fromEntries(fields.flatMap(({ name }) => (all[name] === undefined ? [] : [[name, all[name]]])));
}
