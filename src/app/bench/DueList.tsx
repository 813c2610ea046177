import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Run } from '../../records/kind/run';
import { runWithEvents, shelf, whenLoaded } from '../../records/shelf';
import { fold } from '../../tasks/engine/fold';
import { askForReminders, permission, permissionWords, remind } from '../../tasks/screen/reminders';
import type { Due } from '../../tasks/engine/task';
import { until } from '../../ui/ago';
import { bottleNumbers } from '../../workshop/made/bottles';
import { daysFrom, duesUntil } from '../../workshop/made/trials';
import { tagOf } from '../../workshop/thing/labelled';
import { today } from '../../workshop/today';
import { taskOrNotice } from '../nav/loaded';
import { go } from '../nav/route';

interface Waiting {
  readonly run: string;
  readonly due: Due;
}

/** A line of the list: when, what, and where a tap goes. */
interface Line {
  readonly at: number;
  readonly when: string;
  readonly words: string;
  readonly to: readonly string[];
}

const SHOWN = 4; // our choice: the tasks below stay in sight
const TICK = 20_000; // ms

/** What paused runs wait for: the last of each that has come, and the next. Sets the reminders, too. */
async function waitingIn(runs: readonly Run[]): Promise<Waiting[]> {
  await whenLoaded;
  const found = await Promise.all(
    runs.map((run) => waitingInOne(run).catch(() => [])), // the card of the paused run says what is wrong with it
  );
  return found.flat().sort((a, b) => a.due.at - b.due.at);
}

async function waitingInOne({ id, task: name }: Run): Promise<Waiting[]> {
  const task = await taskOrNotice(name);
  if (!task?.due) return [];
  const dues = task.due(fold((await runWithEvents(id))?.events ?? []));
  remind(id, task);
  const come = dues.filter(({ at }) => at <= Date.now()).slice(-1);
  const next = dues.filter(({ at }) => at > Date.now()).slice(0, 1);
  return [...come, ...next].map((due) => ({ run: id, due }));
}

let before: readonly Waiting[] = []; // what was due when the Bench was left

/** What is due, soonest first; a tap goes there. */
export function DueList() {
  const runs = shelf.openRuns.value;
  const waiting = useSignal(before.filter(({ run }) => runs.some(({ id }) => id === run)));
  useEffect(() => {
    const look = () => void waitingIn(runs).then((found) => (waiting.value = before = found));
    look();
    const timer = setInterval(look, TICK);
    return () => clearInterval(timer);
  }, [runs]);
  const all = [...waiting.value.map(lineOfRun), ...dueBatches()].sort((a, b) => a.at - b.at);
  if (all.length === 0) return null;
  return (
    <section class="due-list" aria-label="Due">
      <ul class="list">
        {all.slice(0, SHOWN).map(({ when, words, to }) => (
          <li>
            <button class="entry" onClick={() => go(to)}>
              <b>{when}</b> {words}
            </button>
          </li>
        ))}
      </ul>
      {waiting.value.length > 0 && <Reminding />}
    </section>
  );
}

function lineOfRun({ run, due }: Waiting): Line {
  return { at: due.at, when: until(due.at, Date.now()), words: due.words, to: ['run', run] };
}

/** Trials to be looked at, and bottles that were put aside until now. */
function dueBatches(): Line[] {
  return duesUntil(today(1)).map(({ batch, day, trial, bottles }) => ({
    at: Date.parse(day),
    when: day < today() ? `${daysFrom(day, today())} d late` : day === today() ? 'today' : 'tomorrow',
    words: trial
      ? `${tagOf(batch)}: ${trial.row?.name ?? trial.trial.sort}, day ${daysFrom(trial.trial.begun, day)}`
      : `${tagOf(batch)}: bottles put aside, ${bottleNumbers(batch, ...bottles!)}`,
    to: trial ? ['record', batch.id, 'look', trial.trial.id] : ['record', batch.id],
  }));
}

/** Whether the phone may remind, and the way to ask it. */
function Reminding() {
  const allowed = useSignal(permission());
  return (
    <>
      {permissionWords(allowed.value) && <p class="quiet">{permissionWords(allowed.value)}</p>}
      {allowed.value === 'default' && (
        <button class="second" onClick={() => void askForReminders().then(() => (allowed.value = permission()))}>
          Remind me while Minim is open
        </button>
      )}
    </>
  );
}
