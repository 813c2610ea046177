import { deviceName } from '../../records/devices';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Run, RunEvent } from '../../records/kind/run';
import { list } from '../../records/shelf';
import { Say } from '../../ui/controls/Say';
import { keptOf } from './bookEntries';
import { Entry } from './Entry';
import { useTask } from '../nav/loaded';
import { storyOf, type StoryLine } from './story';

interface Props {
  run: Run;
  events: readonly RunEvent[];
}

/** What was done in a run, step by step, each with its time. */
export function StoryLines({ run, events }: Props) {
  const task = useTask(run.task);
  if (task === undefined) return null;
  if (task === null) return <p>This version of Minim does not know the task “{run.task}”.</p>;
  return (
    <ol class="story">
      {storyOf(task, events).map((line) => (
        <Told line={line} device={deviceAt(line.at, events)} />
      ))}
    </ol>
  );
}

/** The same, and what the run ended in. */
export function RunStory({ run, events }: Props) {
  return (
    <>
      <StoryLines run={run} events={events} />
      <ul class="list">
        {keptOf(run).map((record: AnyRecord) => (
          <Entry key={record.id} record={record} line={({ line }) => line} />
        ))}
      </ul>
    </>
  );
}

/** The device that a step was made on, where more than one is known. */
function deviceAt(at: string, events: readonly RunEvent[]): string | null {
  const who = events.find((event) => event.at === at)?.who;
  return list('device').length > 1 ? deviceName(who) : null;
}

function Told({ line: { say, answers, at }, device }: { line: StoryLine; device: string | null }) {
  return (
    <li>
      <p>
        <Say text={say} />
      </p>
      {answers.map(([title, text]) => (
        <p class="answer">
          {title}: <b>{text}</b>
        </p>
      ))}
      <small>
        {new Date(at).toLocaleTimeString()}
        {device !== null && (
          <>
            {' · '}
            <bdi>{device}</bdi>
          </>
        )}
      </small>
    </li>
  );
}
