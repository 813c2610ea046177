import { freshRun, type RunState } from '../../../src/tasks/engine/fold';
import { batch } from '../../../src/tasks/batch/task';

export const runOf = (typed: Record<string, string>): RunState => ({ ...freshRun, typed });
/** A step as it is when it is shown. */
export const stepOf = (run: RunState, key: string) =>
  batch.steps({ ...run, at: key }).find((step) => step.key === key)!;
export const keysOf = (run: RunState) => batch.steps(run).map(({ key }) => key);

/** Weighs what is asked for, one after the other, exactly or as `mass` says, until nothing more is asked. */
export function weighAll(typed: Record<string, string>, mass = (target: number, _key: string) => target): RunState {
  const run = runOf(typed);
  const next = batch.steps(run).flatMap(({ offers = [] }) => offers.filter(({ words }) => /xactly/.test(words)))[0];
  if (!next) return run;
  const masses = Object.entries(next.type ?? {}).map(([key, text]) => [key, String(mass(Number(text), key))]);
  return weighAll({ ...typed, ...Object.fromEntries(masses) }, mass);
}
