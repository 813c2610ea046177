import { useEffect } from 'preact/hooks';
import { list } from '../../records/shelf';
import { catalogue, catalogueGone, factsOf, loadCatalogue, type CatalogueRow } from '../../workshop/catalogue';
import { catalogueSheet } from '../../workshop/catalogueSheet';
import { cautionWords } from '../../workshop/cautionWords';
import { Facts } from '../describe/Facts';
import { go } from '../nav/route';
import { startTask } from '../nav/startTask';
import { PageHead } from '../nav/PageHead';
import '../record/record.css';

/** One material of the catalogue, each value with where it was read: #/catalogue/<id>. */
export function CataloguePage({ id }: { id: string }) {
  useEffect(() => void loadCatalogue(), []);
  const row = catalogue.value?.rows.get(id);
  if (row) return <Sheet row={row} />;
  return (
    <main class="page" aria-busy={!catalogue.value && !catalogueGone.value}>
      <PageHead title="Catalogue" />
      {catalogue.value && <p>The catalogue has no entry of that name.</p>}
      {catalogueGone.value && (
        <p class="trouble" role="alert">
          The catalogue could not be fetched. Close Minim and open it again.
        </p>
      )}
    </main>
  );
}

function Sheet({ row }: { row: CatalogueRow }) {
  const own = list('material').find(({ catalogue: from }) => from === row.id);
  const typed = own
    ? { 'new.name': own.name, 'new.material': own.id }
    : { 'new.name': row.name, 'new.facts': JSON.stringify(factsOf(row)) };
  return (
    <main class="page record">
      <PageHead title={row.name} />
      <p class="quiet">
        {[row.botanical, row.part, row.family].filter(Boolean).join(', ')}
        {row.also && `. Also: ${row.also.join('; ')}`}
      </p>
      {[...cautionWords(row.care ?? []), ...(row.notes ?? [])].map((line) => (
        <p class="cautions">{line}</p>
      ))}
      <Facts facts={catalogueSheet(row).map(({ label, text, source }) => [label, text, source] as const)} />
      <p class="quiet">Values of a lot differ: its certificate wins. Minim warns and does not certify.</p>
      <footer class="actions">
        {own && (
          <button class="second" onClick={() => go(['record', own.id])}>
            {own.code} is on your Shelf
          </button>
        )}
        <button class="main" onClick={() => void startTask({ task: 'bottle', typed })}>
          Add a bottle of it
        </button>
      </footer>
    </main>
  );
}
