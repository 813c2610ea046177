import { effect, signal } from '@preact/signals';
import { usePageTitle } from '../ui/controls/usePageTitle';
import { shelf } from '../ui/drawn/firstIcons';
import { Icon } from '../ui/drawn/Icon';
import { BookPage } from './book/BookPage';
import { Part } from './fault/Part';
import { RecordPage } from './record/RecordPage';
import { CataloguePage } from './shelf/CataloguePage';
import { ShelfPage } from './shelf/ShelfPage';
import { Beside } from './nav/Main';
import { route } from './nav/route';
import './panes.css';

/** The list that was opened last. */
export const listed = signal<'shelf' | 'book'>('shelf');
effect(() => {
  const [page] = route.value;
  if (page === 'shelf' || page === 'book') listed.value = page;
});

/** Shelf or Book, and beside it the page of what was opened from it. */
export function Panes() {
  const [page, id] = route.value;
  const isOpen = page === 'record' || page === 'catalogue';
  const name = listed.value === 'book' ? 'Book' : 'Shelf';
  return (
    <div class="panes">
      <div class="pane list-pane" key={listed.value}>
        <Beside.Provider value={name}>
          <Part of={listed.value}>{listed.value === 'book' ? <BookPage /> : <ShelfPage />}</Part>
        </Beside.Provider>
      </div>
      <div class="pane" key={id}>
        {isOpen && id ? (
          <Part of={route.value.join('/')}>
            {page === 'record' ? <RecordPage key={id} id={id} /> : <CataloguePage key={id} id={id} />}
          </Part>
        ) : (
          <Nothing list={name} />
        )}
      </div>
    </div>
  );
}

function Nothing({ list }: { list: string }) {
  usePageTitle(list);
  return (
    <main class="nothing-open">
      <Icon of={shelf} />
      <p>What you tap on the left opens here.</p>
    </main>
  );
}
