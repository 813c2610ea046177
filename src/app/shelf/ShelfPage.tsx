import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { kindOf } from '../../records/kind/kinds';
import { shelf } from '../../records/shelf';
import { usePageTitle } from '../../ui/controls/usePageTitle';
import { add } from '../../ui/drawn/actionIcons';
import { Icon } from '../../ui/drawn/Icon';
import { DemoNotice } from './DemoNotice';
import { FirstRun } from './FirstRun';
import { LabelsButton, ScanButton } from '../describe/LabelLinks';
import { UnreadableList } from '../unread/UnreadableList';
import { Part } from '../fault/Part';
import { Main } from '../nav/Main';
import { go, route } from '../nav/route';
import { startTask } from '../nav/startTask';
import { ShelfHits } from './ShelfHits';
import { ArchivedPage, DuePage, ShoppingPage } from './ShelfLists';
import { place } from './place';
import { Sections } from './ShelfSections';
import { dueThings, toBuy, toMake } from '../nav/watch';
import './shelf.css';

/** What is searched for; #/shelf/find/<query> once something is tapped, so that coming back finds the same hits. */
const query = signal('');

function noteQuery(): void {
  const text = query.peek().trim();
  const [page, list] = route.peek();
  if (page !== 'shelf' || (text === '' && list !== 'find')) return;
  go(text === '' ? ['shelf'] : ['shelf', 'find', text], 'replace');
}

/** What is owned, a kind at a time: #/shelf/<kind>, and the lists #/shelf/due, /shopping and /archived. */
export function ShelfPage() {
  const list = place.value[0];
  if (list === 'due') return <DuePage />;
  if (list === 'shopping') return <ShoppingPage />;
  if (list === 'archived') return <ArchivedPage />;
  return <Overview />;
}

function isEmpty(): boolean {
  const isUnread = shelf.unreadable.value.some(({ raw }) => raw.kind !== 'run');
  return !isUnread && [...shelf.records.value.values()].every((record) => kindOf(record).search === null);
}

function Overview() {
  const [find, asked = ''] = place.value;
  useEffect(() => void (query.value = find === 'find' ? asked : ''), [find, asked]);
  usePageTitle('Shelf');
  if (isEmpty()) return shelf.loaded.value ? <FirstRun /> : <main class="page" aria-busy="true" />;
  return (
    <Main class="page shelf" onPointerDownCapture={noteQuery}>
      <header class="top">
        <h1>Shelf</h1>
        <LabelsButton />
        <ScanButton />
        <button class="round" onClick={() => void startTask({ task: 'bottle', typed: {} })} aria-label="Add a bottle">
          <Icon of={add} />
        </button>
      </header>
      <DemoNotice />
      <SearchBox />
      {query.value.trim() === '' ? <Everything /> : <ShelfHits query={query.value} />}
    </Main>
  );
}

function SearchBox() {
  return (
    <label class="search-box">
      <span class="unseen">Search the Shelf and the catalogue</span>
      <input
        type="search"
        value={query.value}
        placeholder="Name, code, CAS, lot, smell…"
        autoComplete="off"
        autoCapitalize="off"
        spellcheck={false}
        enterKeyHint="search"
        onInput={(event) => (query.value = event.currentTarget.value)}
      />
    </label>
  );
}

function Everything() {
  const archived = [...shelf.records.value.values()].filter((record) => record.archived).length;
  return (
    <>
      <Part of={shelf.records.value}>
        <Watch />
      </Part>
      <Sections />
      <button class="second" onClick={() => void startTask({ task: 'supply', typed: {} })}>
        Add solvents and supplies
      </button>
      <button class="second" onClick={() => void startTask({ task: 'scale', typed: {} })}>
        Add a scale
      </button>
      <button class="second" onClick={() => void startTask({ task: 'vessel', typed: {} })}>
        Add a vessel
      </button>
      {archived > 0 && (
        <button class="second" onClick={() => go(['shelf', 'archived'])}>
          Archived ({archived})
        </button>
      )}
      <UnreadableList />
    </>
  );
}

/** A quiet word on what is due and what runs low. */
function Watch() {
  const due = dueThings().length;
  const low = toBuy().length + toMake().length;
  if (due + low === 0) return null;
  return (
    <div class="row watch">
      {due > 0 && (
        <button class="second" onClick={() => go(['shelf', 'due'])}>
          {due} to use up
        </button>
      )}
      {low > 0 && (
        <button class="second" onClick={() => go(['shelf', 'shopping'])}>
          {low} running low
        </button>
      )}
    </div>
  );
}
