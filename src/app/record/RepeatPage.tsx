import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { AnyRecord } from '../../records/kind/kinds';
import { runWithEvents } from '../../records/shelf';
import { repeatOf, type Repeat } from '../../tasks/shared/repeat';
import { fold } from '../../tasks/engine/fold';
import { describe } from '../describe/describe';
import { taskOrNotice } from '../nav/loaded';
import { startTask } from '../nav/startTask';
import { formatDay } from '../../ui/format';

/** The run that a record came out of, with its answers and today's lots; null when it is not on this phone. */
async function repeatOfRecord(record: AnyRecord): Promise<Repeat | null> {
  for (const id of record.kind === 'run' ? [record.id] : [...record.from].reverse()) {
    const there = await runWithEvents(id);
    const task = await taskOrNotice(there?.run.task);
    if (there && task) return repeatOf(task, there.run, fold(there.events));
  }
  return null;
}

/** Make again: what is different today, before anything begins. */
export function RepeatPage({ record }: { record: AnyRecord }) {
  const again = useSignal<Repeat | null | undefined>(undefined);
  useEffect(() => void repeatOfRecord(record).then((found) => (again.value = found)), [record.id]);
  const { title } = describe(record);
  return (
    <main class="page form">
      <header class="top">
        <h1>Make again · {title}</h1>
        <button class="round" onClick={() => history.back()} aria-label="Close">
          ✕
        </button>
      </header>
      <p>Made {formatDay(record.made)}.</p>
      {again.value === null && <p>How it was made is not on this phone, so its steps cannot be repeated.</p>}
      {again.value && <Differences lines={again.value.differences} />}
      <footer class="actions">
        {again.value && (
          <button class="main" onClick={() => void startTask(again.value!)}>
            Begin with the same answers
          </button>
        )}
      </footer>
    </main>
  );
}

function Differences({ lines }: { lines: readonly string[] }) {
  if (lines.length === 0) return <p class="say">Nothing is different: the same lots, the same drops.</p>;
  return (
    <>
      <h2>Different from then</h2>
      <ul class="differences">
        {lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </>
  );
}
