import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { shelf, whenLoaded } from '../../records/shelf';
import { usePageTitle } from '../../ui/controls/usePageTitle';
import { tasks } from '../../tasks';
import { settings } from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';
import { Part } from '../fault/Part';
import { KeepingNotice } from './KeepingNotice';
import { ScanButton } from '../describe/LabelLinks';
import { PausedRuns } from './PausedRuns';
import { Room } from './Room';
import { SmellOnlyCount } from './SmellOnlyCount';
import { go, hashOf } from '../nav/route';
import { startTask } from '../nav/startTask';

const whatNow = () => import('./whatNow');
type WhatNow = Awaited<ReturnType<typeof whatNow>>;
let here: WhatNow | null = null; // coming back to the Bench, it is there at once

/** What waits for the person, then the tasks. */
export function Bench() {
  const now = useSignal(here);
  useEffect(() => {
    const come = (found: WhatNow) => {
      now.value = here = found;
      return found.loadOpenings();
    };
    whenLoaded.then(whatNow).then(come, () => {}); // the tasks are there without it
  }, []);
  usePageTitle('Bench');
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
      <News now={now.value} />
      <Tiles lines={now.value?.linesNow() ?? {}} />
    </main>
  );
}

/** All that waits, and on the first days the way. */
function News({ now }: { now: WhatNow | null }) {
  const { FirstWay, DueList, LabelsWaiting, ApartLine } = now ?? {};
  return (
    <Room name="news">
      <Room name="due">
        {DueList && (
          <Part of={shelf.records.value}>
            <DueList />
          </Part>
        )}
      </Room>
      <PausedRuns />
      {LabelsWaiting && (
        <Part of={shelf.records.value}>
          <LabelsWaiting />
          {ApartLine && <ApartLine />}
        </Part>
      )}
      <Part of={shelf.records.value}>
        <KeepingNotice />
      </Part>
      {FirstWay && <FirstWay />}
    </Room>
  );
}

/** The tasks, each with what it would do now, as far as that is known. */
function Tiles({ lines }: { lines: Readonly<Record<string, string>> }) {
  return (
    <div class="tasks">
      {tasks.map((task) => (
        <Tile key={task.id} task={task} line={lines[task.id] ?? task.hint} />
      ))}
    </div>
  );
}

function Tile({ task, line }: { task: (typeof tasks)[number]; line: string }) {
  return (
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
      <span>{line}</span>
    </a>
  );
}
