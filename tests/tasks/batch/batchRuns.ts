import type { Field } from '../../../src/tasks/engine/fields';
import { freshRun, type RunState } from '../../../src/tasks/engine/fold';
import { batch } from '../../../src/tasks/batch/task';

export const runOf = (typed: Record<string, string>): RunState => ({ ...freshRun, typed });
/** A step as it is when it is shown. */
export const stepOf = (run: RunState, key: string) =>
  batch.steps({ ...run, at: key }).find((step) => step.key === key)!;
export const keysOf = (run: RunState) => batch.steps(run).map(({ key }) => key);

/** The page that asks for the recipe. */
export const recipeOf = (run: RunState) => stepOf(run, 'recipe');
/** A question of that page. */
export const fieldOf = (run: RunState, name: string): Field | undefined =>
  recipeOf(run).ask!.find((field) => field.name === name);
/** What is said under the sentence of a section of that page, what is folded away too. */
export const wordsIn = (run: RunState, section: string): string =>
  recipeOf(run)
    .card!.sections!.filter(({ title }) => title === section)
    .flatMap(({ lines, folded = [] }) => [...lines, ...folded])
    .join(' ');
/** What the rules say of the recipe, in a few words. */
export const gradeOf = (run: RunState): string => {
  const { grade, lines } = recipeOf(run).card!.answer!;
  return grade?.words ?? lines.at(-1)!;
};

/** Weighs what is asked for, one after the other, exactly or as `mass` says, until nothing more is asked. */
export function weighAll(typed: Record<string, string>, mass = (target: number, _key: string) => target): RunState {
  const run = runOf(typed);
  const next = batch.steps(run).flatMap(({ offers = [] }) => offers.filter(({ words }) => /xactly/.test(words)))[0];
  if (!next) return run;
  const masses = Object.entries(next.type ?? {}).map(([key, text]) => [key, String(mass(Number(text), key))]);
  return weighAll({ ...typed, ...Object.fromEntries(masses) }, mass);
}
