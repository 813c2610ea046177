import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Run } from '../../records/kind/run';
import { runWithEvents, shelf, whenLoaded } from '../../records/shelf';
import { tasks } from '../../tasks';
import { fold } from '../../tasks/engine/fold';
import { placeOf } from '../../tasks/engine/place';
import { ago } from '../../ui/ago';
import { settings } from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';
import { Part } from '../fault/Part';
import { DueList } from './DueList';
import { KeepingNotice } from './KeepingNotice';
import { ScanButton } from '../describe/LabelLinks';
import { taskOrNotice } from '../nav/loaded';
import { News } from './News';
import { SmellOnlyCount } from './SmellOnlyCount';
import { go, hashOf } from '../nav/route';
import { startTask } from '../nav/startTask';

/** The tasks, with what was left half done first. */
export function Bench() {
  return (
    <main class="page bench">
      <header class="top">
        <h1>Bench</h1>
        <SmellOnlyCount />
        <ScanButton />
        <button class="round" onClick={() => go(['settings'])} aria-label="Settings">
          <Icon of={settings} />
        </button>
      </header>
      <News>
        <PausedRuns />
        <Part of={shelf.records.value}>
          <KeepingNotice />
        </Part>
        <Part of={shelf.records.value}>
          <DueList />
        </Part>
      </News>
      <div class="tasks">
        {tasks.map((task) => (
          <a
            class="card"
            href={hashOf('new', task.id)}
            onClick={(event) => {
              event.preventDefault();
              void startTask({ task: task.id, typed: {} });
            }}
          >
            <Icon of={task.icon} />
            <b>{task.name}</b>
            <span>{task.hint}</span>
          </a>
        ))}
      </div>
    </main>
  );
}

function PausedRuns() {
  return (
    <div class="paused-runs" data-loaded={shelf.loaded.value}>
      {shelf.openRuns.value.map((run, i) => (
        <Part of={run} key={run.id}>
          <Paused run={run} newest={i === 0} />
        </Part>
      ))}
    </div>
  );
}

interface Place {
  title: string;
  words: string;
  at: string;
}

/** Where a paused run stands, from its events. */
async function placeOfRun(run: Run): Promise<Place> {
  await whenLoaded; // steps read the shelf
  const events = (await runWithEvents(run.id))?.events ?? [];
  const at = events.at(-1)?.at ?? run.made;
  const task = await taskOrNotice(run.task);
  if (!task) return { title: run.title, words: 'This version of Minim does not know its task.', at };
  const state = fold(events);
  const steps = task.steps(state);
  const index = placeOf(steps, state);
  const pad = steps[index]!.pad;
  const count = pad && (state.drops[pad.counter] ?? 0);
  const words = pad
    ? `drop ${count}${pad.target === null ? '' : ` of ${pad.target}`}`
    : `step ${index + 1} of ${steps.length}`;
  return { title: task.title(state), words: `Paused at ${words}`, at };
}

function Paused({ run, newest }: { run: Run; newest: boolean }) {
  const place = useSignal<Place>({ title: run.title, words: 'Paused', at: run.made });
  const recordsSeen = shelf.records.value;
  const lost = () =>
    void (place.value = { ...place.peek(), words: 'Paused before a step that could not be worked out' });
  useEffect(() => void placeOfRun(run).then((found) => (place.value = found), lost), [recordsSeen]);
  const { title, words, at } = place.value;
  return (
    <section class="card paused">
      <div>
        <b>{title}</b>
        <span>
          {words}, {ago(Date.parse(at), Date.now())}
        </span>
      </div>
      <button class={newest ? 'main' : 'second'} onClick={() => go(['run', run.id])}>
        Resume<span class="unseen"> {title}</span>
      </button>
    </section>
  );
}
