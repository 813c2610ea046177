import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { AnyRecord } from '../../records/kind/kinds';
import { runWithEvents } from '../../records/shelf';
import { repeatOf, type Repeat } from '../../tasks/shared/repeat';
import type { Difference } from '../../tasks/shared/todaysLot';
import { fold } from '../../tasks/engine/fold';
import { withPresets } from '../../tasks/engine/leaving';
import { describe } from '../describe/describe';
import { taskOrNotice } from '../nav/loaded';
import { startTask } from '../nav/startTask';
import { formatDay } from '../../ui/format';
import { PageHead } from '../nav/PageHead';

/** The run that a record came out of, with its answers and today's lots; null when it is not on this phone. */
async function repeatOfRecord(record: AnyRecord): Promise<Repeat | null> {
  for (const id of record.kind === 'run' ? [record.id] : [...record.from].reverse()) {
    const there = await runWithEvents(id);
    const task = await taskOrNotice(there?.run.task);
    if (there && task) return repeatOf(task, there.run, withPresets(task, fold(there.events)));
  }
  return null;
}

/** Make exactly this: what was done then and what is different today, before anything begins. */
export function RepeatPage({ record }: { record: AnyRecord }) {
  const again = useSignal<Repeat | null | undefined>(undefined);
  useEffect(() => void repeatOfRecord(record).then((found) => (again.value = found)), [record.id]);
  const { title, did } = describe(record);
  return (
    <main class="page form">
      <PageHead title={`Make exactly this · ${title}`} />
      {did && <p class="say">{did.replace(/ %/g, '\u00a0%')}.</p>}
      <p>Made {formatDay(record.made)}.</p>
      {again.value === null && <p>How it was made is not on this phone, so its steps cannot be repeated.</p>}
      {again.value && <Differences lines={again.value.differences} />}
      <footer class="actions">
        {again.value?.newer && <Newer repeat={again.value} newer={again.value.newer} />}
        {again.value && (
          <button class="main" onClick={() => void startTask(again.value!)}>
            Begin
          </button>
        )}
      </footer>
    </main>
  );
}

/** A later version of the formula, to be taken in place of that of then. */
function Newer({ repeat: { task }, newer }: { repeat: Repeat; newer: NonNullable<Repeat['newer']> }) {
  const { words, then, now, typed } = newer;
  return (
    <button class="second" onClick={() => void startTask({ task, typed })}>
      {words}: take {now} in place of {then}
    </button>
  );
}

function Differences({ lines }: { lines: readonly Difference[] }) {
  if (lines.length === 0) return <p class="say">Nothing is different: the same lots, the same amounts.</p>;
  return (
    <>
      <h2>Different from then</h2>
      <ul class="differences">
        {lines.map(({ words, then, now }) => (
          <li>
            {words}: {then} then, {now} now.
          </li>
        ))}
      </ul>
    </>
  );
}
