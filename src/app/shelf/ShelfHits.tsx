import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { AnyRecord } from '../../records/kind/kinds';
import { catalogue, catalogueGone, loadCatalogue, searchCatalogue, type CatalogueRow } from '../../workshop/catalogue';
import { whyGone } from '../../ui/codeGone';
import { go } from '../nav/route';
import { startTask } from '../nav/startTask';
import { ShelfEntry } from '../describe/ShelfEntry';
import { FIRST, withoutHeadings } from './hits';
import { searchShelf } from '../describe/shelfIndex';

const WITH_KEY = 5; // hits drawn with each key: as many as stand above a phone's keyboard
const PAUSE = 120; // ms without a key, our choice; then what lies below them is drawn
const MOST = 60;
const FROM_CATALOGUE = 5;

/** What the Shelf has for a query, then what the catalogue has. */
export function ShelfHits({ query }: { query: string }) {
  useEffect(() => void loadCatalogue(), []);
  const settled = useSettled(query);
  const still = settled === query;
  const hits = withoutHeadings(searchShelf(query, MOST));
  const rows = useMemo(() => searchCatalogue(settled, FROM_CATALOGUE), [settled, catalogue.value]);
  const fromCatalogue = useMemo(() => <CatalogueHits rows={rows} />, [rows]);
  return (
    <>
      <p class="quiet" role="status">
        {hits.length === 0
          ? 'No match on the Shelf.'
          : `${hits.length === MOST ? 'The best ' : ''}${hits.length} found`}
      </p>
      <OnShelf hits={hits} still={still} />
      {still && hits.length + rows.length === 0 && catalogue.value && (
        <button class="second" onClick={() => void startTask({ task: 'bottle', typed: { 'new.name': query.trim() } })}>
          Add “{query.trim()}” as a bottle
        </button>
      )}
      {fromCatalogue}
      {catalogueGone.value && !catalogue.value && (
        <p class="trouble" role="alert">
          The catalogue could not be fetched. {whyGone()}{' '}
          <button class="second" onClick={() => location.reload()}>
            Open Minim again
          </button>
        </p>
      )}
    </>
  );
}

/** The query once no key has followed for a moment. */
function useSettled(query: string): string {
  const settled = useSignal(query);
  useEffect(() => {
    const timer = setTimeout(() => (settled.value = query), PAUSE);
    return () => clearTimeout(timer);
  }, [query]);
  return settled.value;
}

function OnShelf({ hits, still }: { hits: readonly AnyRecord[]; still: boolean }) {
  const all = useSignal(false);
  const shown = hits.slice(0, still ? (all.value ? MOST : FIRST) : WITH_KEY);
  return (
    <>
      <ul class="list">
        {shown.map((record) => (
          <ShelfEntry key={record.id} record={record} kind />
        ))}
      </ul>
      {still && shown.length < hits.length && (
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
