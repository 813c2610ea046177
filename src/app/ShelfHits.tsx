import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { AnyRecord } from '../records/kinds';
import { catalogue, catalogueGone, loadCatalogue, searchCatalogue, type CatalogueRow } from '../tasks/catalogue';
import { go } from './route';
import { startTask } from './RunPage';
import { ShelfEntry } from './ShelfEntry';
import { searchShelf } from './shelfIndex';

const FIRST = 10; // hits of the Shelf drawn with each key; the rest when asked for
const MOST = 60;
const FROM_CATALOGUE = 5;

/** What the Shelf has for a query, then what the catalogue has. */
export function ShelfHits({ query }: { query: string }) {
  useEffect(() => void loadCatalogue(), []);
  const hits = searchShelf(query, MOST);
  const rows = searchCatalogue(query, FROM_CATALOGUE);
  return (
    <>
      <p class="quiet" role="status">
        {hits.length === 0
          ? 'Nothing like it on the Shelf.'
          : `${hits.length === MOST ? 'The best ' : ''}${hits.length} on the Shelf`}
      </p>
      <OnShelf hits={hits} />
      {hits.length + rows.length === 0 && catalogue.value && (
        <button class="second" onClick={() => void startTask({ task: 'bottle', typed: { 'new.name': query.trim() } })}>
          Add “{query.trim()}” as a bottle
        </button>
      )}
      <CatalogueHits rows={rows} />
      {catalogueGone.value && !catalogue.value && (
        <p class="trouble" role="alert">
          The catalogue could not be fetched: Minim was updated in another window.{' '}
          <button class="second" onClick={() => location.reload()}>
            Open Minim anew
          </button>
        </p>
      )}
    </>
  );
}

function OnShelf({ hits }: { hits: readonly AnyRecord[] }) {
  const all = useSignal(false);
  const shown = all.value ? hits : hits.slice(0, FIRST);
  return (
    <>
      <ul class="list">
        {shown.map((record) => (
          <ShelfEntry key={record.id} record={record} kind />
        ))}
      </ul>
      {shown.length < hits.length && (
        <button class="second all" onClick={() => (all.value = true)}>
          Show {hits.length - shown.length} more
        </button>
      )}
    </>
  );
}

function CatalogueHits({ rows }: { rows: readonly CatalogueRow[] }) {
  if (rows.length === 0) return null;
  return (
    <>
      <h2>In the catalogue</h2>
      <ul class="list">
        {rows.map((row) => (
          <li key={row.id}>
            <button class="entry" onClick={() => go(['catalogue', row.id])}>
              <b>{row.name}</b>
              <span>
                {[row.cas?.[0], row.family, (row.smells ?? []).slice(0, 4).join(', ')].filter(Boolean).join(' · ')}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
