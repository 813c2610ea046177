import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Run } from '../../records/kind/run';
import { endedRuns, shelf } from '../../records/shelf';
import { useFault } from '../../ui/fault/useFault';
import { formatCount, formatDayHead } from '../../ui/format';
import { bookTable, narrowed } from '../describe/bookEntries';
import { UnreadableList } from '../unread/UnreadableList';
import { Main } from '../nav/Main';
import { saveTable } from '../nav/saveFile';
import { DemoNotice } from '../shelf/DemoNotice';
import { BookEntry } from './BookEntry';
import { endOf } from './endOf';
import { Filters, narrowing } from './Filters';
import './book.css';

const PAGE = 40; // runs shown at first, and more with each tap

/** What was done: pages under their days, newest first; by task, material, vial and words. */
export function BookPage() {
  const runs = useSignal<readonly Run[] | null>(null);
  const shown = useSignal(PAGE);
  const recordsSeen = shelf.records.value;
  const now = narrowing.value;
  const fault = useFault();
  useEffect(() => void endedRuns().then((found) => (runs.value = found), fault), [recordsSeen]);
  const all = runs.value;
  const left = useMemo(() => (all ? narrowed(all, now) : []), [all, now, recordsSeen]);
  return (
    <Main class="page book">
      <header class="top">
        <h1>Book</h1>
      </header>
      <DemoNotice />
      {all?.length === 0 && <p class="quiet">What you finish on the Bench is written down here, newest first.</p>}
      {all && all.length > 0 && (
        <>
          <Filters runs={all} />
          {left.length === 0 && <p class="quiet">No match in the Book.</p>}
          <Days runs={left.slice(0, shown.value)} byWords={now.words.trim() !== ''} />
          {left.length > shown.value && (
            <button class="second all" onClick={() => (shown.value += PAGE)}>
              Show more ({formatCount(left.length - shown.value)})
            </button>
          )}
          <button
            class="second all"
            disabled={left.length === 0}
            onClick={() => saveTable(`Book ${new Date().toISOString().slice(0, 10)}`, () => bookTable(left))}
          >
            {formatCount(left.length)} as a table for a spreadsheet (CSV)
          </button>
        </>
      )}
      <UnreadableList runs />
    </Main>
  );
}

/** Runs under the day on which they ended; what was searched for is in the order of how well it fits, each with its day. */
function Days({ runs, byWords }: { runs: readonly Run[]; byWords: boolean }) {
  const days: { head: string; runs: Run[] }[] = [];
  for (const run of runs) {
    const head = formatDayHead(endOf(run));
    if (days.at(-1)?.head === head) days.at(-1)!.runs.push(run);
    else days.push({ head, runs: [run] });
  }
  return (
    <>
      {days.map((day, i) => (
        <section key={byWords ? day.runs[0]!.id : `${day.head} ${i}`}>
          <h2>{day.head}</h2>
          <ul class="list">
            {day.runs.map((run) => (
              <BookEntry key={run.id} run={run} />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
