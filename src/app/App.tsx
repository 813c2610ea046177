import { useEffect } from 'preact/hooks';
import { shelf, whenFirstRead } from '../records/shelf';
import { escapeGoesBack } from '../ui/BackButton';
import { Later } from '../ui/controls/Later';
import { bench, book, shelf as shelfIcon } from '../ui/drawn/firstIcons';
import { Icon } from '../ui/drawn/Icon';
import { WaysOut } from '../ui/fault/FaultNotice';
import { useFault } from '../ui/fault/useFault';
import { Bench } from './bench/Bench';
import { MishapNotice } from './fault/mishap';
import { GuardedPage } from './fault/Part';
import { StaleNotice } from './nav/loaded';
import { showLook } from './nav/look';
import { go, hashOf, route } from './nav/route';
import { startTask } from './nav/startTask';
import { isPaned, wide } from './nav/wide';
import { FaultWays } from './settings/FaultWays';
import { UpdateNotice } from './nav/update';

const runPage = async () => (await import('./nav/RunPage')).RunPage;
const scanPage = async () => (await import('./label/ScanPage')).ScanPage;
const settingsPage = async () => (await import('./settings/SettingsPage')).SettingsPage;
const keepingPage = async () => (await import('./settings/KeepingPage')).KeepingPage;
const devicesPage = async () => (await import('./pairing/DevicesPage')).DevicesPage;
const recordPage = async () => (await import('./record/RecordPage')).RecordPage;
const cataloguePage = async () => (await import('./shelf/CataloguePage')).CataloguePage;
const shelfPage = async () => (await import('./shelf/ShelfPage')).ShelfPage;
const panes = async () => (await import('./Panes')).Panes;
const bookPage = async () => (await import('./book/BookPage')).BookPage;

/** The page that the hash asks for. */
export function App() {
  const { theme, hand } = shelf.settings.value;
  useEffect(() => void whenFirstRead.then(() => showLook(shelf.settings.value)), [theme, hand]);
  useEffect(escapeGoesBack, []);
  return (
    <WaysOut.Provider value={FaultWays}>
      <StaleNotice />
      <MishapNotice />
      <GuardedPage of={route.value.join('/')}>
        <Page />
      </GuardedPage>
      {(hasTabs(route.value) || (wide.value && isPaned(route.value))) && <Tabs here={tabOf(route.value)} />}
    </WaysOut.Provider>
  );
}

/** Pages of one thing or one piece of work; every other one is the Bench, the Shelf or the Book. */
const ofOne = ['run', 'record', 'catalogue', 'sheet', 'formula', 'new'];
const ofAll = ['settings', 'keeping', 'devices', 'scan', 'labels', 'apart'];

function hasTabs([page = '', id]: readonly string[]): boolean {
  return !ofAll.includes(page) && !(ofOne.includes(page) && id);
}

/** The tab that a page belongs to; that of the page of a thing is the list that it was opened from. */
let lastTab = 'shelf';
function tabOf([page = '']: readonly string[]): string {
  if (page === 'shelf' || page === 'book') lastTab = page;
  return page === 'record' || page === 'catalogue' ? lastTab : page;
}

function Page() {
  const [page, id, sub] = route.value;
  if (wide.value && isPaned(route.value)) return <Later key="panes" load={panes} props={{}} />;
  if (page === 'run' && id) return <Later key="run" load={runPage} props={{ id }} />;
  if (page === 'record' && id) return <Later key="record" load={recordPage} props={{ id }} />;
  if (page === 'catalogue' && id) return <Later key="catalogue" load={cataloguePage} props={{ id }} />;
  if (page === 'settings') return <Later key="settings" load={settingsPage} props={{}} />;
  if (page === 'keeping') return <Later key="keeping" load={keepingPage} props={{}} />;
  if (page === 'devices') return <Later key="devices" load={devicesPage} props={{}} />;
  if (page === 'scan') return <Later key="scan" load={scanPage} props={{}} />;
  if (page === 'labels') return <Later load={async () => (await import('./label/LabelPage')).LabelPage} props={{}} />;
  if (page === 'sheet' && id && sub === 'label')
    return <Later key="label" load={async () => (await import('./sheet/LabelSheet')).LabelSheet} props={{ id }} />;
  if (page === 'sheet' && id)
    return <Later key="sheet" load={async () => (await import('./sheet/BatchSheet')).BatchSheet} props={{ id }} />;
  if (page === 'formula' && id)
    return (
      <Later key="formula" load={async () => (await import('./formula/FormulaPage')).FormulaPage} props={{ id }} />
    );
  if (page === 'apart') return <Later load={async () => (await import('./apart/ApartPage')).ApartPage} props={{}} />;
  if (page === 'new' && id) return <NewPage task={id} />;
  if (page === 'shelf') return <Later key="shelf" load={shelfPage} props={{}} />;
  if (page === 'book') return <Later key="book" load={bookPage} props={{}} />;
  return <Bench />;
}

/** #/new/<task> begins the task and makes room for its first step. */
function NewPage({ task }: { task: string }) {
  const fault = useFault();
  useEffect(() => {
    startTask({ task, typed: {} }, 'replace').catch(fault);
  }, [task]);
  return <main class="page" aria-busy="true" />;
}

function Tabs({ here }: { here: string }) {
  const tabs = [
    ['', 'Bench', bench],
    ['shelf', 'Shelf', shelfIcon],
    ['book', 'Book', book],
  ] as const;
  return (
    <nav class="tabs" aria-label="Bench, Shelf, Book">
      <UpdateNotice />
      {tabs.map(([page, words, icon]) => (
        <a
          href={hashOf(...(page ? [page] : []))}
          aria-current={here === page ? 'page' : undefined}
          onClick={(event) => {
            event.preventDefault();
            go(page ? [page] : []);
          }}
        >
          <Icon of={icon} />
          {words}
        </a>
      ))}
    </nav>
  );
}
