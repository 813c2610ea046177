import { shelf } from '../../records/shelf';
import type { RunState } from './fold';

/**
 * The same work, done once for a run as it stands and a Shelf as it stands: all steps ask for the same plan. A sentence that
 * the work refuses with is refused with again.
 */
export function oncePerRun<T>(work: (run: RunState) => T): (run: RunState) => T {
  const done = new WeakMap<RunState, { records: unknown; settings: unknown; give: () => T }>();
  return (run) => {
    const [records, settings] = [shelf.records.value, shelf.settings.value];
    const before = done.get(run);
    if (before && before.records === records && before.settings === settings) return before.give();
    const give = outcomeOf(() => work(run));
    done.set(run, { records, settings, give });
    return give();
  };
}

function outcomeOf<T>(work: () => T): () => T {
  try {
    const value = work();
    return () => value;
  } catch (error) {
    return () => {
      throw error;
    };
  }
}
