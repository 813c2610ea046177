import { attempt } from '../../workshop/attempt';

/** The outcome of a piece of work, or the sentence on why there is none. */
export function outcome<T extends object>(work: () => T | null): { value: T | null; problem: string | null } {
  const done = attempt(work);
  return done !== null && 'problem' in done ? { value: null, problem: done.problem } : { value: done, problem: null };
}
