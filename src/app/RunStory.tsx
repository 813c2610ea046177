import type { AnyRecord } from '../records/kinds';
import type { Run, RunEvent } from '../records/run';
import { shelf } from '../records/shelf';
import { useTask } from './loaded';
import { textOf, type Field } from '../tasks/fields';
import { fold, type RunState } from '../tasks/fold';
import type { Step } from '../tasks/task';
import { Say } from '../ui/Say';
import { describe } from './describe';
import { go } from './route';

/** What was done in a run, step by step, folded from the same events. */
export function RunStory({ run, events }: { run: Run; events: readonly RunEvent[] }) {
  const task = useTask(run.task);
  if (task === undefined) return null;
  if (task === null) return <p>This version of Minim does not know the task “{run.task}”.</p>;
  const state = fold(events);
  const done = task.steps(state).filter((step) => state.done[step.key]);
  const kept = run.kept.flatMap((id) => shelf.records.value.get(id) ?? []);
  return (
    <>
      <ol class="story">
        {done.map((step) => (
          <Told step={step} state={state} />
        ))}
      </ol>
      <ul class="list">
        {kept.map((record: AnyRecord) => (
          <li>
            <button class="entry" onClick={() => go(['record', record.id])}>
              <b>{describe(record).title}</b>
              <span>{describe(record).line}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

function Told({ step, state }: { step: Step; state: RunState }) {
  return (
    <li>
      <p>
        <Say text={step.say} />
      </p>
      {step.ask?.map((field) => (
        <p class="answer">
          {field.title}: <b>{answerText(field, state)}</b>
        </p>
      ))}
      {step.pad && (
        <p class="answer">
          <b>{state.drops[step.pad.counter] ?? 0} drops</b>
        </p>
      )}
      <small>{new Date(state.done[step.key]!).toLocaleTimeString()}</small>
    </li>
  );
}

function answerText(field: Field, state: RunState): string {
  const text = textOf(state, field);
  const words = field.options?.find((option) => option.value === text)?.words ?? text;
  return field.unit && words ? `${words} ${field.unit}` : words || '–';
}
