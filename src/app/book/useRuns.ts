import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { endedRuns, lastRuns } from '../../records/endedRuns';
import type { Run } from '../../records/kind/run';
import { shelf } from '../../records/shelf';
import { useFault } from '../../ui/fault/useFault';
import { prepareBook } from '../describe/bookEntries';

/** What the Book has read so far. */
interface Runs {
  /** The ones that ended last, as many as were asked for; null until they are read. */
  readonly first: readonly Run[] | null;
  /** All of them; null until then. */
  readonly all: readonly Run[] | null;
}

/** All of them as they were when the records were these: coming back to the Book, nothing is read again. */
let known: { of: typeof shelf.records.value; all: readonly Run[] } | null = null;

/** The runs of the Book: those on its page at once, then all, and what they are found by, while nothing else is to be done. */
export function useRuns(most: number): Runs {
  const [first, all] = [
    useSignal<Runs['first']>(null),
    useSignal<Runs['all']>(known?.of === shelf.records.peek() ? known.all : null),
  ];
  const records = shelf.records.value;
  const fault = useFault();
  useEffect(() => {
    if (all.peek()) return; // what is on the page comes from all of them
    lastRuns(most).then((found) => (first.value = found), fault);
  }, [most]);
  useEffect(() => {
    let gone = false;
    const read = async () => {
      const found = known?.of === records ? known.all : await endedRuns();
      known = { of: records, all: found };
      if (gone) return;
      all.value = found;
      await prepareBook(found, () => gone);
    };
    read().catch(fault);
    return () => void (gone = true);
  }, [records]);
  return { first: first.value, all: all.value };
}
