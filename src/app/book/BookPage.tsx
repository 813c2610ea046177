import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { endOf } from '../../records/endedRuns';
import type { Run } from '../../records/kind/run';
import { shelf } from '../../records/shelf';
import { usePageTitle } from '../../ui/controls/usePageTitle';
import { formatCount, formatDayHead } from '../../ui/format';
import { bookTable, narrowed } from '../describe/bookEntries';
import { UnreadableList } from '../unread/UnreadableList';
import { Main } from '../nav/Main';
import { saveTable } from '../nav/saveFile';
import { DemoNotice } from '../shelf/DemoNotice';
import { BookEntry } from './BookEntry';
import { Filters, narrowing } from './Filters';
import { useRuns } from './useRuns';
import './book.css';

const PAGE = 40; // runs shown at first, and more with each tap

/** What was done: pages under their days, newest first; by task, material, vial and words. */
export function BookPage() {
  const shown = useSignal(PAGE);
  const recordsSeen = shelf.records.value;
  const now = narrowing.value;
  const { first, all } = useRuns(shown.value);
  const isNarrow = Object.values(now).some((one) => one.trim() !== '');
  const left = useMemo(() => (all ? narrowed(all, now) : null), [all, now, recordsSeen]);
  const onPage = left ?? (isNarrow ? null : first);
  usePageTitle('Book');
  return (
    <Main class="page book">
      <header class="top">
        <h1>Book</h1>
      </header>
      <DemoNotice />
      {all?.length === 0 && <p class="quiet">What you finish on the Bench is written down here, newest first.</p>}
      {(all ?? first ?? []).length > 0 && (
        <>
          <Filters runs={all ?? first!} />
          {!onPage && (
            <p class="quiet" role="status">
              Looking through the Book …
            </p>
          )}
          {left?.length === 0 && <p class="quiet">No match in the Book.</p>}
          <Days runs={(onPage ?? []).slice(0, shown.value)} byWords={now.words.trim() !== ''} />
          {onPage && onPage.length >= shown.value && (!left || left.length > shown.value) && (
            <button class="second all" onClick={() => (shown.value += PAGE)}>
              Show more{left && ` (${formatCount(left.length - shown.value)})`}
            </button>
          )}
          <AsTable runs={left} />
        </>
      )}
      <UnreadableList runs />
    </Main>
  );
}

/** What is left of the Book as a table; of all of it once all of it is read. */
function AsTable({ runs }: { runs: readonly Run[] | null }) {
  return (
    <button
      class="second all"
      disabled={!runs?.length}
      onClick={() => saveTable(`Book ${new Date().toISOString().slice(0, 10)}`, () => bookTable(runs!))}
    >
      {runs ? formatCount(runs.length) : 'All'} as a table for a spreadsheet (CSV)
    </button>
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
