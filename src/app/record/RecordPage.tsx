import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { RunEvent } from '../../records/kind/run';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { runWithEvents, shelf } from '../../records/shelf';
import { isStocked } from '../../records/stock';
import { dropPicturesOf } from '../../workshop/dropPictures';
import { formatDay, formatMoment } from '../../ui/format';
import { Boundary } from '../../ui/fault/Boundary';
import { useFault } from '../../ui/fault/useFault';
import { HowPage } from '../../ui/controls/HowPage';
import type { Result } from '../../ui/controls/result';
import { ResultLine } from '../../ui/controls/ResultLine';
import { Scatter } from '../../ui/plot/Scatter';
import { RepeatPage as RepeatPage } from './RepeatPage';
import { ArchivedNotice, Care, CareActions, leftResult } from './Care';
import { describe } from '../describe/describe';
import type { Description } from '../describe/description';
import { BrokenPage, Part } from '../fault/Part';
import { isPictured, Pictured } from '../describe/Pictured';
import { EditPage } from '../edit/EditPage';
import { Facts } from '../describe/Facts';
import { Notices } from '../describe/Notices';
import { OVER, overNotices } from '../describe/overFacts';
import { LabelOffer } from '../describe/LabelLinks';
import { Relabel } from './Relabel';
import { Lots } from './Lots';
import { MarkPage } from './MarkPage';
import { PaperPage } from './PaperPage';
import { PhotoPage } from '../photo/PhotoPage';
import { Photos } from '../photo/Photos';
import { PageOffer } from './RecordLinks';
import { takeUpRun } from '../nav/discardRun';
import { back, go, route } from '../nav/route';
import { startTask } from '../nav/startTask';
import { RunStory } from '../describe/RunStory';
import { TracePage } from './TracePage';
import { WeighPage } from './WeighPage';
import { PageHead } from '../nav/PageHead';
import './record.css';

/** The page of one record: #/record/<id>, with its numbers, facts and what can be done next, and the pages under it. */
export function RecordPage({ id }: { id: string }) {
  const found = useSignal<{ record: AnyRecord; events: readonly RunEvent[] } | null>(null);
  const missing = useSignal(false);
  const fault = useFault();
  const onShelf = shelf.records.value.get(id);
  const loaded = shelf.loaded.value;
  useEffect(() => {
    let current = true; // a run that was looked for says nothing once the record has come
    if (onShelf && onShelf.kind !== 'run') found.value = { record: onShelf, events: [] };
    else
      runWithEvents(id).then((there) => {
        if (!current) return;
        found.value = there && { record: there.run, events: there.events };
        missing.value = !there && loaded;
      }, fault);
    return () => void (current = false);
  }, [onShelf, loaded, id]);
  if (!found.value || found.value.record.id !== id)
    return (
      <main class="page" aria-busy={!missing.value}>
        {missing.value && (
          <>
            <PageHead title="Not here" />
            <p class="quiet">This is not on this phone, or was erased.</p>
          </>
        )}
      </main>
    );
  return <Found record={found.value.record} events={found.value.events} />;
}

const PICTURE_PX = 176; // its label is read at arm's length

interface SectionsProps {
  record: AnyRecord;
  description: Description;
  events: readonly RunEvent[];
}

const pages = {
  weigh: WeighPage,
  edit: EditPage,
  trace: TracePage,
  again: RepeatPage,
  photo: PhotoPage,
  mark: MarkPage,
} as const;

function Found({ record, events }: { record: AnyRecord; events: readonly RunEvent[] }) {
  const description = describe(record);
  const { results = [], next = [], fault } = description;
  const [, , page, index] = route.value;
  const asked = page === 'how' ? (index === 'left' ? howLeft(record) : results[Number(index)]) : undefined;
  if (asked) return <HowPage result={asked} onClose={back} />;
  const Page = pages[page as keyof typeof pages];
  if (Page) return <Page record={record} />;
  if (page === 'paper') return <PaperPage record={record} events={events} />;
  if (fault) return <Broken record={record} error={fault.error} />;
  return (
    <main class="page record">
      <Head record={record} description={description} />
      <ArchivedNotice record={record} />
      <Sections record={record} description={description} events={events} />
      <footer class="actions">
        {next.map((offer) => (
          <button class="second" onClick={() => offer.start && startTask(offer.start)}>
            {offer.words}
          </button>
        ))}
        <LabelOffer record={record} />
        <PageOffer record={record} />
        <Part of={record}>
          <CareActions record={record} />
        </Part>
        <ResumeDiscarded record={record} />
      </footer>
    </main>
  );
}

/** Puts a discarded run back on the Bench and goes on with it. */
function ResumeDiscarded({ record }: { record: AnyRecord }) {
  if (!isOf('run', record) || !record.discarded) return null;
  const resume = () => void takeUpRun(record).then(() => go(['run', record.id], 'replace'));
  return (
    <>
      <p role="note">Discarded {formatDay(record.discarded)}: off the Bench, and all of it is here.</p>
      <button class="main" onClick={resume}>
        Resume
      </button>
    </>
  );
}

/** What is known of it; a section that breaks leaves the others. */
function Sections({ record, description: { facts = [], results = [] }, events }: SectionsProps) {
  const sections = [
    results.map((result, i) => (
      <ResultLine result={result} big={i === 0} onHow={() => go(['record', record.id, 'how', String(i)])} />
    )),
    <Care record={record} onHow={() => go(['record', record.id, 'how', 'left'])} />,
    <Relabel record={record} />,
    <Drops record={record} />,
    <Facts facts={facts} />,
    <Lots record={record} />,
    isOf('run', record) ? <RunStory run={record} events={events} /> : <MadeIn record={record} />,
    <Photos record={record} />,
  ];
  return (
    <>
      {sections.map((section) => (
        <Part of={record}>{section}</Part>
      ))}
    </>
  );
}

/** A record that cannot be put into words can still be changed, traced and put away. */
function Broken({ record, error }: { record: AnyRecord; error: unknown }) {
  return (
    <BrokenPage
      title={`${record.kind} ${record.id}`}
      words="This entry cannot be shown; it is kept as it is."
      error={error}
    >
      <ArchivedNotice record={record} />
      <footer class="actions">
        <Part of={record}>
          <CareActions record={record} />
        </Part>
      </footer>
    </BrokenPage>
  );
}

function howLeft(record: AnyRecord): Result | null {
  return isStocked(record) ? leftResult(record) : null;
}

function Head({ record, description: { title, code, grade } }: { record: AnyRecord; description: Description }) {
  const notices = overNotices(record);
  const over = notices.length > 0;
  return (
    <>
      <PageHead title={title} />
      <div class={isPictured(record) ? 'seen' : undefined}>
        {isPictured(record) && (
          <Boundary of={record} otherwise={() => null /* the words below tell what broke it */}>
            <Pictured record={record} size={PICTURE_PX} />
          </Boundary>
        )}
        {(code || grade || over || record.demo) && (
          <p class="chips">
            {code && <span class="chip">{code}</span>}
            {grade && !over && <span class={grade === 'smell only' ? 'chip smell-only' : 'chip'}>{grade}</span>}
            {over && <span class="chip smell-only">{OVER}</span>}
            {record.demo && <span class="chip">demo</span>}
          </p>
        )}
      </div>
      <Notices notices={notices} />
    </>
  );
}

/** A dropper as it was weighed; a calibration with its readings, and with those before and after it. */
function Drops({ record }: { record: AnyRecord }) {
  const pictures = dropPicturesOf(record);
  return (
    <>
      {pictures.map((picture) => (
        <Scatter {...picture} />
      ))}
    </>
  );
}

/** The run that a record came out of. */
function MadeIn({ record }: { record: AnyRecord }) {
  const made = record.from.at(-1);
  const known = made && shelf.records.value.get(made); // a run is held here only since it ended in this window
  if (!made || (known && !isOf('run', known))) return null;
  return (
    <button class="entry" onClick={() => go(['record', made])}>
      <b>How it was made</b>
      <span>{formatMoment(record.made)}</span>
    </button>
  );
}
