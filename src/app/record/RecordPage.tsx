import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { RunEvent } from '../../records/kind/run';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { runWithEvents, shelf } from '../../records/shelf';
import { isStocked } from '../../records/stock';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { dropPicturesOf } from '../../workshop/dropPictures';
import { useFault } from '../../ui/fault/useFault';
import { formatDay } from '../../ui/format';
import { HowPage } from '../../ui/controls/HowPage';
import type { Result } from '../../ui/controls/result';
import { BlendMap } from '../../ui/plot/BlendMap';
import { Scatter } from '../../ui/plot/Scatter';
import { mapOf } from '../../tasks/proportions/mapOf';
import { searchKept } from '../../tasks/proportions/search';
import { ChooseSides } from '../apart/ChooseSides';
import { RepeatPage } from './RepeatPage';
import { ArchivedNotice, leftResult } from './Care';
import { describe } from '../describe/describe';
import type { Description } from '../describe/description';
import { BrokenPage, Part } from '../fault/Part';
import { EditPage } from '../edit/EditPage';
import { Facts } from '../describe/Facts';
import { madePages } from '../made/pages';
import { sinceSections } from '../made/Since';
import { HowMade } from './HowMade';
import { InIt } from './InIt';
import { Learned, OfMaterial, UsedIn } from './Kin';
import { NotHere } from '../unread/NotHere';
import { Notices } from '../describe/Notices';
import { overNotices } from '../describe/overFacts';
import { Relabel } from './Relabel';
import { MarkPage } from './MarkPage';
import { Lots } from './Lots';
import { More, MoreRows } from './MoreSheet';
import { againOf } from './nexts';
import { NextSteps } from './NextSteps';
import { Panel } from './Panel';
import { PaperPage } from './PaperPage';
import { PhotoPage } from '../photo/PhotoPage';
import { Photos } from '../photo/Photos';
import { back, go, route } from '../nav/route';
import { takeUpRun } from '../nav/discardRun';
import { RunStory } from '../describe/RunStory';
import { Accounts, Stages } from '../sheet/Stages';
import { keepingOf, thingOf } from './thing';
import { ThingHead } from './ThingHead';
import { ThingNumbers } from './ThingNumbers';
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
    return missing.value ? <NotHere id={id} /> : <main class="page" aria-busy="true" />;
  return <Found record={found.value.record} events={found.value.events} />;
}

const pages = {
  weigh: WeighPage,
  edit: EditPage,
  trace: TracePage,
  again: RepeatPage,
  photo: PhotoPage,
  mark: MarkPage,
  ...madePages,
} as const;

interface ThingProps {
  record: AnyRecord;
  description: Description;
  events: readonly RunEvent[];
}

function Found({ record, events }: { record: AnyRecord; events: readonly RunEvent[] }) {
  const description = describe(record);
  const { results = [], fault } = description;
  const [, , page, index] = route.value;
  const asked = page === 'how' ? (index === 'left' ? howLeft(record) : results[Number(index)]) : undefined;
  if (asked) return <HowPage result={asked} onClose={back} />;
  const Page = pages[page as keyof typeof pages];
  if (Page && (page !== 'weigh' || isStocked(record))) return <Page record={record} />;
  if (page === 'paper') return <PaperPage record={record} events={events} />;
  if (fault) return <Broken record={record} error={fault.error} />;
  return <Thing record={record} description={description} events={events} />;
}

/** The thing, what is in it, how it was made, and what can be done with it next. A part that breaks leaves the others. */
function Thing({ record, description, events }: ThingProps) {
  const thing = thingOf(record, description);
  const notices = overNotices(record);
  const parts = partsOf({ record, description, events }, thing);
  return (
    <main class="page record">
      <PageHead title={description.title}>
        <More record={record} />
      </PageHead>
      <ArchivedNotice record={record} />
      <Part of={record}>
        <ChooseSides record={record} />
        <Notices notices={notices} />
      </Part>
      <ThingHead over={notices.length > 0} record={record} description={description} thing={thing} />
      {parts.map((part) => (
        <Part of={record}>{part}</Part>
      ))}
      <ResumeDiscarded record={record} />
      <Part of={record}>
        <NextSteps record={record} smellOnly={isSmellOnly(record)} />
      </Part>
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

/** The parts of its page below the thing itself. */
function partsOf({ record, description: { results = [] }, events }: ThingProps, thing: ReturnType<typeof thingOf>) {
  return [
    isOf('batch', record) ? <Stages batch={record} /> : null,
    <InIt record={record} rows={thing.inIt} remarks={thing.remarks} />,
    <ThingNumbers record={record} results={results} />,
    isOf('batch', record) ? <Accounts batch={record} /> : null,
    ...(isOf('batch', record) ? sinceSections(record) : []),
    isOf('test', record) ? <Panel test={record} /> : null,
    <Relabel record={record} />,
    <Learned record={record} />,
    <Drops record={record} />,
    <Blends record={record} />,
    <Facts facts={thing.facts} stacked={isOf('layering', record) || isOf('proportions', record)} />,
    <Keeping record={record} />,
    <Lots record={record} />,
    <OfMaterial record={record} />,
    <UsedIn record={record} />,
    isOf('run', record) ? (
      <RunStory run={record} events={events} />
    ) : (
      <HowMade record={record} again={againOf(record, isSmellOnly(record))} />
    ),
    <Photos record={record} />,
  ];
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
      <Part of={record}>
        <MoreRows record={record} />
      </Part>
    </BrokenPage>
  );
}

function howLeft(record: AnyRecord): Result | null {
  return isStocked(record) ? leftResult(record) : null;
}

function Keeping({ record }: { record: AnyRecord }) {
  return <Facts facts={keepingOf(record)} />;
}

/** The surface that a search for proportions found, with its blends. */
function Blends({ record }: { record: AnyRecord }) {
  return isOf('proportions', record) ? <BlendMap {...mapOf(searchKept(record), false)} /> : null;
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
