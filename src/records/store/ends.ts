import type { Stored } from '../kind/record';
import { withDatabase } from './database';

/** The indexes of runs by when they ended or were discarded; each holds [when, id]. */
const ENDS = ['ended', 'discarded'] as const;

/** The runs that ended or were discarded last, as stored, the last one first; at most so many. */
export function storedEnds(most: number): Promise<Stored[]> {
  return withDatabase(async (db) => {
    const records = db.transaction('records').store;
    const found: Stored[] = [];
    let [ended, discarded] = await Promise.all(ENDS.map((name) => records.index(name).openCursor(null, 'prev')));
    while (found.length < most && (ended || discarded)) {
      const isDiscarded = !ended || (discarded && isLater(discarded, ended));
      const { value } = (isDiscarded ? discarded : ended)!;
      if (value.kind === 'run' && (isDiscarded || !('discarded' in value))) found.push(value);
      if (isDiscarded) discarded = await discarded!.continue();
      else ended = await ended!.continue();
    }
    return found;
  });
}

interface At {
  readonly key: unknown;
}

function isLater({ key: a }: At, { key: b }: At): boolean {
  const [[endA, idA], [endB, idB]] = [a, b] as [[string, string], [string, string]];
  return endA === endB ? idA > idB : endA > endB;
}

/** All runs that are not open, as stored, a page at a time: those with an end, then those with none, which a file may have brought. */
export async function* storedEndedRuns(page = 1000): AsyncGenerator<Stored[]> {
  const passed = new Set<string>();
  for (const name of ENDS)
    for (let after: [string, string] = ['', '']; ;) {
      const found = await withDatabase((db) => db.getAllFromIndex('records', name, IDBKeyRange.lowerBound(after, true), page)); // prettier-ignore
      const fresh = found.filter(({ kind, id }) => kind === 'run' && !passed.has(id));
      for (const { id } of fresh) passed.add(id);
      yield fresh;
      if (found.length < page) break;
      after = placeOf(found.at(-1)!, name);
    }
  const without = await withDatabase(async (db) => {
    const ids = await db.getAllKeysFromIndex('records', 'kind', 'run');
    return ids.filter((id) => !passed.has(id));
  });
  yield await withDatabase(async (db) => {
    const records = db.transaction('records').store;
    const found = await Promise.all(without.map((id) => records.get(id)));
    return found.filter((run) => run !== undefined);
  });
}

function placeOf(run: Stored, name: (typeof ENDS)[number]): [string, string] {
  const { endedAt, discarded } = run as Stored & { endedAt?: string; discarded?: string };
  return [name === 'ended' ? endedAt! : discarded!, run.id];
}
