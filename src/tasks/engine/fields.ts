import type * as z from 'zod/mini';
import { isDay } from '../../core/number/calendar';
import type { Option } from '../../ui/controls/field';
import { formatDay } from '../../ui/format';
import { today } from '../../workshop/today';
import type { RunState } from './fold';
import { bad, good, readAmount, type Answer, type AskedAmount, type OneSign } from './readAmount';

/** A question of a step: how it is asked, and how its typed text becomes a value, or one clear sentence. */
export interface Field<T = unknown> {
  readonly name: string;
  readonly title: string;
  readonly unit?: string;
  readonly help?: string;
  /** Text that is in the field until something is typed. */
  readonly preset?: string;
  readonly input: 'decimal' | 'numeric' | 'text' | 'date' | 'choice';
  readonly options?: readonly Option[];
  /** Of what a scale shows: the question for its smallest step, g. */
  readonly scale?: Field<number>;
  /** A scale shows it: a line that a scale types is taken. */
  readonly weighed?: boolean;
  /** True for a field as a screen asks it now (`ask`): its preset is that of the moment. */
  readonly asked?: true;
  read(text: string, oneSign?: OneSign): Answer<T>;
}

interface Asked {
  name: string;
  title: string;
  help?: string;
  preset?: string;
  optional?: boolean;
}

/** What is in a field of a run: what was typed, else its preset. */
export function textOf(run: RunState, field: Field): string {
  return run.typed[field.name] ?? field.preset ?? '';
}

/** How the text in a field of a run is read. */
export function answerIn<T>(run: RunState, field: Field<T>): Answer<T> {
  return field.read(textOf(run, field), signIn(run, field));
}

/** How one comma or point is read in a field of a run. A scale that shows three decimals shows a decimal sign, not thousands. */
export function signIn(run: RunState, { name, scale }: Field): OneSign {
  if (run.told || run.typed[name] === undefined) return 'decimal';
  const step = scale ? stepOf(run, scale) : null;
  return step !== null && step < 0.01 ? 'decimal' : undefined;
}

/** The readability of a scale as it was answered, by hand or by leaving it as it was. */
function stepOf(run: RunState, scale: Field<number>): number | null {
  const answer = scale.read(run.typed[scale.name] ?? run.presets[scale.name] ?? scale.preset ?? '', 'decimal');
  return answer.ok ? answer.value : null;
}

/** A field as it is read in a run, for its screen. */
export function inRun<T>(run: RunState, field: Field<T>): Field<T> {
  return { ...field, read: (text) => field.read(text, signIn(run, field)) };
}

/** The value of a field of a run, or null while its text is not a value. */
export function valueOf<T>(run: RunState, field: Field<T>): T | null {
  const answer = answerIn(run, field);
  return answer.ok ? answer.value : null;
}

/** A number with a unit; comma or point. What can be read in two ways is asked about. */
export function amount(asked: Asked & AskedAmount & Pick<Field, 'weighed'> & { scale?: Field<number> }): Field<number> {
  const { weighed = asked.scale !== undefined } = asked;
  return { ...asked, weighed, input: 'decimal', read: (text, oneSign) => readAmount(asked, text, oneSign) };
}

/** An amount that may be left out: empty text is null. */
export function optionalAmount(asked: Asked & AskedAmount): Field<number | null> {
  const field = amount(asked);
  const read = (text: string, oneSign?: OneSign) => (text.trim() === '' ? good(null) : field.read(text, oneSign));
  return { ...field, read };
}

/** A whole number of something. */
export function whole(asked: Asked & { unit: string; min?: number; max?: number }): Field<number> {
  const field = amount({ ...asked, min: asked.min ?? 0, counts: true });
  const read = (text: string, oneSign?: OneSign): Answer<number> => {
    const answer = field.read(text, oneSign);
    return answer.ok && !Number.isInteger(answer.value)
      ? bad(`${asked.title}: whole ${asked.unit} only, not ${text.trim()}.`)
      : answer;
  };
  return { ...field, input: 'numeric', read };
}

/** Words. Unless optional, at least one letter or digit. */
export function words(asked: Asked & { max?: number }): Field<string> {
  const max = asked.max ?? 200;
  const read = (text: string): Answer<string> => {
    const trimmed = text.trim();
    if (trimmed.replace(/[\s\p{Default_Ignorable_Code_Point}]/gu, '') === '')
      return asked.optional ? good('') : bad(`“${asked.title}” is still empty.`);
    return trimmed.length > max ? bad(`${asked.title}: at most ${max} letters, not ${trimmed.length}.`) : good(trimmed);
  };
  return { ...asked, input: 'text', read };
}

/** A short code as written on strips and labels: 2 to 6 letters or digits, kept in capitals. */
export function code(asked: Asked & { taken?: readonly string[] }): Field<string> {
  const read = (text: string): Answer<string> => {
    const short = text.trim().toUpperCase();
    if (short === '') return bad('Type a short code: 2 to 6 letters or digits, as on the strip.');
    if (!/^[\p{L}\p{N}]{2,6}$/u.test(short)) return bad(`A code is 2 to 6 letters or digits, not “${text.trim()}”.`);
    const why = notAmong(asked.taken ?? [])(short);
    return why === null ? good(short) : bad(why);
  };
  return { ...asked, input: 'text', read };
}

/** Why a code will not do beside those that are taken; null when it will. */
export function notAmong(taken: readonly string[]): (short: string) => string | null {
  return (short) => (taken.includes(short) ? `${short} is already the code of another; choose one more letter.` : null);
}

/** A day, as YYYY-MM-DD. `past` refuses a day that is still to come. */
export function day(asked: Asked & { past?: boolean }): Field<string> {
  const read = (text: string): Answer<string> => {
    if (text === '') return asked.optional ? good('') : bad(`“${asked.title}” is still empty: choose a day.`);
    if (!isDay(text)) return bad(`“${text}” is not a day.`);
    return asked.past && text > today()
      ? bad(`${asked.title}: ${formatDay(text)} is still to come; today is ${formatDay(today())}.`)
      : good(text);
  };
  return { ...asked, input: 'date', read };
}

/** One of several. Written out in the task, their values are the type of the answer. */
export function choice<const V extends string>(asked: Asked & { options: readonly Option<V>[] }): Field<V> {
  const read = (text: string): Answer<V> => {
    const chosen = asked.options.find((option) => option.value === text);
    return chosen ? good(chosen.value) : bad(`“${asked.title}”: choose one.`);
  };
  return { ...asked, input: 'choice', read };
}

/** One of several that are known only when it is asked, such as what is on the Shelf: `ask` brings them. */
export function pick(asked: Asked): Field<string> {
  const read = (text: string): Answer<string> => (text === '' ? bad(`“${asked.title}”: choose one.`) : good(text));
  return { ...asked, input: 'choice', read };
}

/** An answer with a structure, kept as JSON; what does not have its shape is no answer. */
export function shaped<S extends z.ZodMiniType>(name: string, shape: S): Field<z.output<S>> {
  const read = (text: string): Answer<z.output<S>> => {
    try {
      const given = shape.safeParse(JSON.parse(text));
      return given.success ? good(given.data) : bad(`“${name}” cannot be read.`);
    } catch {
      return bad(`“${name}” cannot be read.`);
    }
  };
  return { name, title: name, input: 'text', read };
}

/** An answer that no question asks for by itself: a button or a picture gives it. */
export function given<const V extends string>(name: string, values: readonly V[]): Field<V> {
  return choice({ name, title: name, options: values.map((value) => ({ value, label: value })) });
}
