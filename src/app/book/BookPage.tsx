import { signal, useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Run } from '../../records/kind/run';
import { photosOf } from '../../records/photos';
import { endedRuns, shelf } from '../../records/shelf';
import { FieldInput } from '../../ui/controls/FieldInput';
import { useFault } from '../../ui/fault/useFault';
import { ago } from '../../ui/ago';
import { bookTable, narrowed, narrowers, taskName, type Narrowing } from '../describe/bookEntries';
import { DemoNotice } from '../shelf/DemoNotice';
import { describe } from '../describe/describe';
import { Entry } from '../describe/Entry';
import { saveTable } from '../nav/saveFile';
import { photosText } from '../photo/photoWords';
import '../shelf/shelf.css';

const PAGE = 40; // runs shown at first, and more with each tap

/** Stays while one looks at a run and comes back. */
const narrowing = signal<Narrowing>({ task: '', of: '', words: '' });
const narrow = (change: Partial<Narrowing>) => (narrowing.value = { ...narrowing.value, ...change });

/** What was done, newest first; by task, material, vial and words. */
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
    <main class="page book">
      <header class="top">
        <h1>Book</h1>
      </header>
      <DemoNotice />
      {all?.length === 0 && <p class="quiet">What you finish on the Bench is written down here, newest first.</p>}
      {all && all.length > 0 && (
        <>
          <Filters runs={all} />
          <Entries runs={left.slice(0, shown.value)} />
          {left.length > shown.value && (
            <button class="second all" onClick={() => (shown.value += PAGE)}>
              Show more ({left.length - shown.value})
            </button>
          )}
          <button
            class="second all"
            disabled={left.length === 0}
            onClick={() => saveTable(`Book ${new Date().toISOString().slice(0, 10)}`, () => bookTable(left))}
          >
            {left.length} as a table for a spreadsheet (CSV)
          </button>
        </>
      )}
    </main>
  );
}

function Filters({ runs }: { runs: readonly Run[] }) {
  const { task, words } = narrowing.value;
  const used = [...new Set(runs.map((run) => run.task))];
  return (
    <>
      <label class="search-box">
        <span class="unseen">Search the Book</span>
        <input
          type="search"
          value={words}
          placeholder="Words, code, lot…"
          autoComplete="off"
          autoCapitalize="off"
          onInput={(event) => narrow({ words: event.currentTarget.value })}
        />
      </label>
      <div class="filters" role="group" aria-label="Which tasks">
        {['', ...used].map((id) => (
          <button class="pick" aria-pressed={task === id} onClick={() => narrow({ task: id })}>
            {id === '' ? 'All' : taskName(id)}
          </button>
        ))}
      </div>
      <OneThing />
    </>
  );
}

/** Narrows the Book down to one material or vial. */
function OneThing() {
  const open = useSignal(false);
  const { of } = narrowing.value;
  const chosen = narrowers().find(({ value }) => value === of);
  const tap = () => (of === '' ? (open.value = !open.value) : narrow({ of: '' }));
  return (
    <>
      <div class="filters">
        <button class="pick" aria-pressed={of !== ''} aria-expanded={open.value} onClick={tap}>
          {chosen ? `${chosen.label} ✕` : 'One material or vial…'}
        </button>
      </div>
      {open.value && of === '' && (
        <FieldInput
          field={{ name: 'of', title: 'All that has to do with', input: 'choice', options: narrowers() }}
          text={of}
          problem={undefined}
          onText={(value) => {
            open.value = false;
            narrow({ of: value });
          }}
        />
      )}
    </>
  );
}

function Entries({ runs }: { runs: readonly Run[] }) {
  if (runs.length === 0) return <p class="quiet">Nothing like it in the Book.</p>;
  return (
    <ul class="list">
      {runs.map((run) => (
        <Entry key={run.id} record={run} line={() => told(run)} />
      ))}
    </ul>
  );
}

/** When it was done, and what came of it. */
function told(run: Run): string {
  const when = ago(Date.parse(run.discarded ?? run.endedAt ?? run.made), Date.now());
  const photos = photosText(photosOf(run.id, ...run.kept).length);
  return [run.discarded && 'discarded', when, ...outcome(run), photos, run.demo && 'demo'].filter(Boolean).join(' · ');
}

/** What is written on the first thing it ended in, and what was counted, or what that says of itself. */
function outcome(run: Run): string[] {
  const first = run.kept.map((id) => shelf.records.value.get(id)).find(Boolean);
  if (!first) return [];
  const { code = '', did, line } = describe(first);
  return [code, did ?? line];
}
