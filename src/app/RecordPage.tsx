import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Run, RunEvent } from '../records/run';
import type { AnyRecord } from '../records/kinds';
import { runWithEvents, shelf } from '../records/shelf';
import { HowPage } from '../ui/HowPage';
import { ResultLine } from '../ui/ResultLine';
import { describe } from './describe';
import type { Description } from './description';
import { LabelOffer } from './LabelLinks';
import { PageOffer } from './RecordLinks';
import { go, route } from './route';
import { startTask } from './RunPage';
import { RunStory } from './RunStory';

/** The page of one record: #/record/<id>, with its numbers, facts and what can be done next. */
export function RecordPage({ id }: { id: string }) {
  const found = useSignal<{ record: AnyRecord; events: readonly RunEvent[] } | null>(null);
  const onShelf = shelf.records.value.get(id);
  useEffect(() => {
    if (onShelf && onShelf.kind !== 'run') found.value = { record: onShelf, events: [] };
    else void runWithEvents(id).then((there) => there && (found.value = { record: there.run, events: there.events }));
  }, [onShelf, id]);
  if (!found.value) return <main class="page" aria-busy={!shelf.loaded.value} />;
  return <Found record={found.value.record} events={found.value.events} />;
}

function Found({ record, events }: { record: AnyRecord; events: readonly RunEvent[] }) {
  const description = describe(record);
  const { facts = [], results = [], next = [] } = description;
  const [, , page, index] = route.value;
  const asked = page === 'how' ? results[Number(index)] : undefined;
  if (asked) return <HowPage result={asked} onClose={() => history.back()} />;
  return (
    <main class="page record">
      <Head description={description} />
      {results.map((result, i) => (
        <ResultLine result={result} big={i === 0} onHow={() => go(['record', record.id, 'how', String(i)])} />
      ))}
      <dl class="facts">
        {facts.map(([label, text]) => (
          <div>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {isRun(record) ? <RunStory run={record} events={events} /> : <MadeIn record={record} />}
      <footer class="actions">
        <LabelOffer record={record} />
        <PageOffer record={record} />
        {next.map((offer) => (
          <button class="second" onClick={() => offer.start && startTask(offer.start)}>
            {offer.words}
          </button>
        ))}
        <button class="main" onClick={() => go([])}>
          To the Bench
        </button>
      </footer>
    </main>
  );
}

function Head({ description: { title, code, grade } }: { description: Description }) {
  return (
    <>
      <header class="top">
        <h1>{title}</h1>
        <button class="round" onClick={() => go([])} aria-label="To the Bench">
          ✕
        </button>
      </header>
      {(code || grade) && (
        <p class="chips">
          {code && <span class="chip">{code}</span>}
          {grade && <span class={grade === 'smell only' ? 'chip smell-only' : 'chip'}>{grade}</span>}
        </p>
      )}
    </>
  );
}

function isRun(record: AnyRecord): record is Run {
  return record.kind === 'run';
}

/** The run that a record came out of. */
function MadeIn({ record }: { record: AnyRecord }) {
  const made = record.from.at(-1);
  if (!made) return null;
  return (
    <button class="entry" onClick={() => go(['record', made])}>
      <b>How it was made</b>
      <span>{new Date(record.made).toLocaleString()}</span>
    </button>
  );
}
