import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Run } from '../records/run';
import { endedRuns, shelf } from '../records/shelf';
import { ago } from '../ui/format';
import { go } from './route';

/** What was done, newest first. */
export function BookPage() {
  const runs = useSignal<readonly Run[] | null>(null);
  const recordsSeen = shelf.records.value;
  useEffect(() => void endedRuns().then((found) => (runs.value = found)), [recordsSeen]);
  return (
    <main class="page">
      <header class="top">
        <h1>Book</h1>
      </header>
      {runs.value?.length === 0 && (
        <p class="quiet">What you finish on the Bench is written down here, newest first.</p>
      )}
      <ul class="list">
        {runs.value?.map((run) => (
          <li>
            <button class="entry" onClick={() => go(['record', run.id])}>
              <b>{run.title}</b>
              <span>{ago(Date.parse(run.endedAt ?? run.made), Date.now())}</span>
            </button>
          </li>
        ))}
      </ul>
    </main>
  );
}
