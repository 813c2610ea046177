import type { ComponentChildren } from 'preact';
import { useSignal } from '@preact/signals';
import { find, keep, shelf } from '../../records/shelf';
import { isOf } from '../../records/kind/kinds';
import type { Stocked } from '../../records/stock';
import { describe } from '../describe/describe';
import { Entry } from '../describe/Entry';
import { leftWords, ShelfEntry } from '../describe/ShelfEntry';
import { dueThings, dueWords, toBuy, toMake, unjudged } from '../nav/watch';
import { Main } from '../nav/Main';
import { faultText } from '../../ui/fault/FaultNotice';
import { formatDay } from '../../ui/format';
import { InPages } from './InPages';
import { PageHead } from '../nav/PageHead';

function ListPage({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <Main class="page shelf">
      <PageHead title={title} />
      {children}
    </Main>
  );
}

/** What is past its last day, or soon will be, with where the day comes from. */
export function DuePage() {
  const due = dueThings();
  return (
    <ListPage title="To use up">
      {due.length === 0 && <p class="quiet">Nothing is due within two weeks.</p>}
      <InPages
        all={due}
        row={({ record, useBy, days }) => (
          <Entry
            key={record.id}
            record={record}
            line={() => (
              <>
                {dueWords(days)}, {formatDay(useBy.day)}
                <small>{useBy.words}</small>
              </>
            )}
          />
        )}
      />
      <Unjudged />
      <p class="quiet">The date is when to compare it with a fresh sample, not when it spoils.</p>
    </ListPage>
  );
}

/** What to buy and what to make, ready to be sent to oneself. */
export function ShoppingPage() {
  const copied = useSignal('');
  const [buy, make] = [toBuy(), toMake()];
  const send = async () => {
    const text = buy.map(shoppingLine).join('\n');
    try {
      if (navigator.share) await navigator.share({ title: 'Shopping list', text });
      else await navigator.clipboard.writeText(text).then(() => (copied.value = 'Copied.'));
    } catch {
      copied.value = 'It could not be sent; the list stays here.';
    }
  };
  return (
    <ListPage title="Running low">
      {buy.length > 0 && <h2>To buy</h2>}
      <InPages all={buy} row={(record) => <Bought key={record.id} record={record} />} />
      {buy.length > 0 && (
        <button class="second all" onClick={() => void send()}>
          Send or copy the list
        </button>
      )}
      <p role="status">{copied.value}</p>
      {make.length > 0 && <h2>To make again</h2>}
      <InPages all={make} row={(record) => <ShelfEntry key={record.id} record={record} />} />
      <Unjudged />
      {buy.length + make.length === 0 && <p class="quiet">Enough of everything.</p>}
    </ListPage>
  );
}

function shoppingLine(record: Stocked): string {
  const { title } = describe(record);
  const { supplier, lot } = record;
  const from = [supplier, lot && `last lot ${lot}`].filter(Boolean).join(', ');
  const cas = isOf('bottle', record) ? find('material', record.material)?.cas : undefined;
  return [title, cas && `CAS ${cas}`, from].filter(Boolean).join(' · ');
}

function Bought({ record }: { record: Stocked }) {
  return (
    <Entry
      record={record}
      class="bought"
      line={() => [leftWords(record), record.supplier, record.buy && 'put here by hand'].filter(Boolean).join(' · ')}
    >
      {record.buy && (
        <button class="second" onClick={() => void keep([{ ...record, buy: false }])}>
          Take off
        </button>
      )}
    </Entry>
  );
}

/** What could not be judged is in neither list, so it is named. */
function Unjudged() {
  const broken = unjudged();
  if (broken.length === 0) return null;
  return (
    <section>
      <h2>Could not be judged</h2>
      <ul class="list">
        {broken.map(({ record, error }) => (
          <Entry key={record.id} record={record} line={() => faultText(error)} />
        ))}
      </ul>
    </section>
  );
}

/** What was put away; nothing of it is gone. */
export function ArchivedPage() {
  const archived = [...shelf.records.value.values()]
    .filter((record) => record.archived)
    .sort((a, b) => (a.archived! < b.archived! ? 1 : -1));
  return (
    <ListPage title="Archived">
      <p class="quiet">Archived items are hidden, not deleted. Open one to restore it.</p>
      <InPages all={archived} row={(record) => <ShelfEntry key={record.id} record={record} kind />} />
    </ListPage>
  );
}
