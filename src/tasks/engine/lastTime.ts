import type { AnyRecord } from '../../records/kind/kinds';
import { ask } from './answers';
import type { Field } from './fields';
import type { RunState } from './fold';

/** Answers by the names of their fields, as text. */
export type Answers = Readonly<Record<string, string>>;

/** The answers of a run that its record keeps, for the next one to begin with; a name that ends with a point stands for all that begin so. */
export function askedIn({ typed, presets }: RunState, names: readonly string[]): Answers {
  const isNamed = (key: string) => names.some((name) => (name.endsWith('.') ? key.startsWith(name) : key === name));
  return Object.fromEntries(
    Object.entries({ ...presets, ...typed }).filter(([key, text]) => isNamed(key) && text !== ''),
  );
}

/** What was answered last time: of the first record here, newest first, that says so. */
export function lastTime(newestFirst: readonly AnyRecord[]): Answers {
  return newestFirst.find(({ done }) => done?.asked)?.done?.asked ?? {};
}

/**
 * A field that begins with what was in it when its card was left, else with the answer of last time, where that is still one, else with
 * what is usual. `last` has the answers of several times, the closest first.
 */
export function asBefore<T>(run: RunState, field: Field<T>, last: readonly Answers[], usual?: string): Field<T> {
  const before = last.map((answers) => answers[field.name]).find((text) => text !== undefined && field.read(text).ok);
  const preset = run.presets[field.name] ?? before ?? usual ?? field.preset;
  return ask(field, preset === undefined ? {} : { preset });
}

/** The run as it would be with its card left as it is: what is in the fields and was not typed counts as answered. */
export function asIfLeft(run: RunState, asked: readonly Field[]): RunState {
  const inThem = asked.flatMap(({ name, preset }) =>
    preset === undefined || name in run.typed ? [] : [[name, preset]],
  );
  return { ...run, presets: { ...run.presets, ...Object.fromEntries(inThem) } };
}
