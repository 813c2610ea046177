import { Refusal } from '../core/text/refusal';
import { refusalWords, type NameOf } from '../ui/sentence';

/** What cannot be done, in one sentence for the person. */
export class Refused {
  constructor(readonly problem: string) {}
}

/** Does the work, or hands back why it is refused. Anything else that is thrown is a fault, and goes on. */
export function attempt<T>(work: () => T, nameOf?: NameOf): T | Refused {
  try {
    return work();
  } catch (error) {
    if (error instanceof Refusal) return new Refused(refusalWords(error, nameOf));
    throw error;
  }
}

/** The outcome of a piece of work, or the sentence on why there is none. */
export function outcome<T extends object>(work: () => T | null): { value: T | null; problem: string | null } {
  const done = attempt(work);
  return done instanceof Refused ? { value: null, problem: done.problem } : { value: done, problem: null };
}
