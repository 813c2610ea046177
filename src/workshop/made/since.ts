import type { Batch } from '../../records/kind/batch';
import type { Since, SinceOf } from '../../records/kind/since';
import { newId } from '../../records/shelf';

/** What is known of a batch of one sort of fact, oldest first. */
export function sinceOf<F extends Since['fact']>({ since = [] }: Batch, fact: F): SinceOf<F>[] {
  return since.filter((one): one is SinceOf<F> => one.fact === fact).sort((a, b) => (a.at < b.at ? -1 : 1));
}

/** A batch with one more fact, which happened now. */
export function withFact(batch: Batch, fact: WithoutStamp<Since>): Batch {
  const stamped = { ...fact, id: newId(), at: new Date().toISOString() } as Since;
  return { ...batch, since: [...(batch.since ?? []), stamped] };
}

type WithoutStamp<S> = S extends Since ? Omit<S, 'id' | 'at'> : never;
