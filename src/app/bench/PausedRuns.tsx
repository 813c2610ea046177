import { useSignal, type Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Run } from '../../records/kind/run';
import { shelf } from '../../records/shelf';
import { ago } from '../../ui/ago';
import { formatMoment } from '../../ui/format';
import { Part } from '../fault/Part';
import { discardRun, takeUpRun } from '../nav/discardRun';
import { go } from '../nav/route';
import type { Place } from './placeOfRun';

const SHOWN = 2; // our choice: the tasks below stay in sight

/** Runs that were left half done, newest first. One that is discarded here leaves its place only with the Bench: nothing moves under a finger. */
export function PausedRuns() {
  const all = useSignal(false);
  const titles = useSignal<Readonly<Record<string, string>>>({});
  const discarded = useSignal<readonly Run[]>([]);
  const open = shelf.openRuns.value;
  const gone = discarded.value.filter(({ id }) => open.every((run) => run.id !== id));
  const runs = [...open, ...gone].sort((a, b) => (a.id < b.id ? 1 : -1));
  const more = all.value ? 0 : Math.max(0, runs.length - SHOWN);
  return (
    <div class="paused-runs" data-loaded={shelf.loaded.value}>
      {runs.slice(0, runs.length - more).map((run, i) => (
        <Part of={run} key={run.id}>
          {gone.includes(run) ? (
            <Discarded run={run} title={titles.value[run.id] ?? run.title} />
          ) : (
            <Paused
              run={run}
              newest={i === 0}
              titles={titles}
              onDiscard={() => (discarded.value = [...discarded.value.filter(({ id }) => id !== run.id), run])}
            />
          )}
        </Part>
      ))}
      {more > 0 && (
        <button class="second" onClick={() => (all.value = true)}>
          {more} more paused
        </button>
      )}
    </div>
  );
}

interface PausedProps {
  run: Run;
  newest: boolean;
  /** Titles of the runs shown, by id, as they become known: two alike are told apart by when they were begun. */
  titles: Signal<Readonly<Record<string, string>>>;
  onDiscard: () => void;
}

const places = new Map<string, Place>(); // as they were when the Bench was left, by run

function Paused({ run, newest, titles, onDiscard }: PausedProps) {
  const place = useSignal(places.get(run.id) ?? { title: run.title, words: 'Paused', at: run.made });
  const recordsSeen = shelf.records.value;
  const lost = () =>
    void (place.value = { ...place.peek(), words: 'Paused before a step that could not be worked out' });
  const found = (now: Place) => {
    place.value = now;
    places.set(run.id, now);
    titles.value = { ...titles.peek(), [run.id]: now.title };
  };
  useEffect(() => {
    void import('./whatNow').then(({ placeOfRun }) => placeOfRun(run)).then(found, lost);
  }, [recordsSeen]);
  const { title, words, at } = place.value;
  const alike = Object.values(titles.value).filter((one) => one === title).length > 1;
  return (
    <section class="card paused">
      <div>
        <b>{title}</b>
        <span>
          {words}, {ago(Date.parse(at), Date.now())}
          {alike && `, begun ${formatMoment(run.made)}`}
        </span>
      </div>
      <button
        class="discard"
        onClick={() => {
          onDiscard();
          void discardRun(run.id, title);
        }}
      >
        Discard<span class="unseen"> {title}</span>
      </button>
      <button class={newest ? 'main' : 'second'} onClick={() => go(['run', run.id])}>
        Resume<span class="unseen"> {title}</span>
      </button>
    </section>
  );
}

function Discarded({ run, title }: { run: Run; title: string }) {
  return (
    <section class="card paused">
      <div role="status">
        <b>{title}</b>
        <span>Discarded; it is in the Book.</span>
      </div>
      <button class="second" onClick={() => void takeUpRun(run)}>
        Undo<span class="unseen">: put {title} back on the Bench</span>
      </button>
    </section>
  );
}
