import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CalendarEntry } from '../../core/text/calendar';
import type { Run } from '../../records/kind/run';
import { runWithEvents, shelf, whenLoaded } from '../../records/shelf';
import { fold } from '../../tasks/engine/fold';
import { askForReminders, permission, permissionWords, remind } from '../../tasks/screen/reminders';
import type { Due, Task } from '../../tasks/engine/task';
import { until } from '../../ui/ago';
import { bottleNumbers } from '../../workshop/made/bottles';
import { daysFrom, duesUntil, type DueOfBatch } from '../../workshop/made/trials';
import { tagOf } from '../../workshop/thing/labelled';
import { today } from '../../workshop/today';
import { taskOrNotice } from '../nav/loaded';
import { go } from '../nav/route';
import { CalendarButton } from './CalendarButton';

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
const NEVER = '9999-12-31'; // a day after all others
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
  const dues = await duesOfRun(id, task);
  remind(id, task);
  const come = dues.filter(({ at }) => at <= Date.now()).slice(-1);
  const next = dues.filter(({ at }) => at > Date.now()).slice(0, 1);
  return [...come, ...next].map((due) => ({ run: id, due }));
}

async function duesOfRun(id: string, task: Task): Promise<readonly Due[]> {
  return task.due?.(fold((await runWithEvents(id))?.events ?? [])) ?? [];
}

/** All that is due from now on, however far ahead, for a calendar. */
async function allAhead(runs: readonly Run[]): Promise<CalendarEntry[]> {
  const ofRuns = await Promise.all(
    runs.map(async ({ id, task: name }) => {
      const task = await taskOrNotice(name);
      const dues = task ? await duesOfRun(id, task) : [];
      return dues
        .filter(({ at }) => at > Date.now())
        .map(({ at, words }) => ({ id: `${id}-${at}`, at, words: `${words} (Minim)` }));
    }),
  );
  const ofBatches = duesUntil(NEVER)
    .filter(({ day }) => day >= today())
    .map((due) => ({
      id: `${due.batch.id}-${due.trial?.trial.id ?? due.bottles![0]}-${due.day}`,
      at: due.day,
      words: `${wordsOf(due)} (Minim)`,
    }));
  return [...ofRuns.flat(), ...ofBatches];
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
      <CalendarButton entries={() => allAhead(runs)} />
    </section>
  );
}

function lineOfRun({ run, due }: Waiting): Line {
  return { at: due.at, when: until(due.at, Date.now()), words: due.words, to: ['run', run] };
}

/** Trials to be looked at, and bottles that were put aside until now. */
function dueBatches(): Line[] {
  return duesUntil(today(1)).map((due) => ({
    at: Date.parse(due.day),
    when: due.day < today() ? `${daysFrom(due.day, today())} d late` : due.day === today() ? 'today' : 'tomorrow',
    words: wordsOf(due),
    to: due.trial ? ['record', due.batch.id, 'look', due.trial.trial.id] : ['record', due.batch.id],
  }));
}

function wordsOf({ batch, day, trial, bottles }: DueOfBatch): string {
  return trial
    ? `${tagOf(batch)}: ${trial.row?.name ?? trial.trial.sort}, day ${daysFrom(trial.trial.begun, day)}`
    : `${tagOf(batch)}: bottles put aside, ${bottleNumbers(batch, ...bottles!)}`;
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
