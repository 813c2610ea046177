import { signal } from '@preact/signals';
import { search, searchIndex, type Searchable, type SearchIndex } from '../core/text/search';
import type { MaterialFacts } from '../records/kind/material';
import type { CatalogueRow, Cited } from '../tables/catalogue/row';

export type { CatalogueRow } from '../tables/catalogue/row';

interface Catalogue {
  readonly rows: ReadonlyMap<string, CatalogueRow>;
  readonly index: SearchIndex;
  /** Words for a source id. */
  readonly source: (id: string) => string;
}

/** The catalogue, when it is here. */
export const catalogue = signal<Catalogue | null>(null);
/** True when it could not be fetched: another window updated Minim, and this one still runs the old one. */
export const catalogueGone = signal(false);

/** Fetches the catalogue when it is first needed. */
export async function loadCatalogue(): Promise<void> {
  if (catalogue.value) return;
  try {
    const [{ substances }, { oils }, { catalogueSources }] = await Promise.all([
      import('../tables/catalogue/substances'),
      import('../tables/catalogue/oils'),
      import('../tables/catalogue/sources'),
    ]);
    const rows = [...oils, ...substances];
    catalogue.value = {
      rows: new Map(rows.map((row) => [row.id, row])),
      index: searchIndex(rows.map(searchable)),
      source: (id) => sourceWords(id, catalogueSources),
    };
    catalogueGone.value = false;
  } catch {
    catalogueGone.value = true;
  }
}

/** Weights of what can be hit in a catalogue row: our choice, names before other names before numbers before words of smell; of names that fit alike first those that begin so, then the flavourings with a number of their own, last a mixture that no one has specified. */
function searchable(row: CatalogueRow): Searchable {
  const weight = row.name.includes('unspecified') ? 4.8 : row.fema ? 5 : 4.9;
  const [head = row.name] = row.name.match(/\p{L}{4,}/u) ?? []; // past 'd-', 'cis-3-'
  const texts: (readonly [string, number])[] = [
    [row.name, weight],
    [head, weight + 0.2],
    ...(row.also ?? []).map((name) => [name, 3] as const),
    ...(row.cas ? [[row.cas[0], 4] as const] : []),
    ...(row.fema ? [[row.fema[0], 4] as const] : []),
    ...(row.botanical ? [[row.botanical, 2] as const] : []),
    [[row.family, ...(row.smells ?? [])].join(' '), 1],
  ];
  return { id: row.id, texts };
}

/** What the catalogue has for a query, best first; nothing while it is not here. */
export function searchCatalogue(query: string, limit: number): CatalogueRow[] {
  const here = catalogue.value;
  return here ? search(here.index, query, limit).map(({ id }) => here.rows.get(id)!) : [];
}

function sourceWords(id: string, sources: Readonly<Record<string, string>>): string {
  return id
    .split(' + ')
    .map((one) => {
      const iso = /^O-ISO:(.*)$/.exec(one);
      return iso ? `${iso[1]}, public abstract` : (sources[one] ?? one);
    })
    .join('; ');
}

/** What a material takes over from the catalogue, each value with its source in words. */
export function factsOf(row: CatalogueRow): MaterialFacts {
  const words = catalogue.value!.source;
  const cited = ([value, source]: Cited<number>) => ({ value, source: words(source) });
  const [form] = row.form;
  return {
    name: row.name,
    catalogue: row.id,
    family: row.family,
    sort: row.botanical ? 'natural' : 'substance',
    ...(form ? { form } : {}),
    ...(row.cas ? { cas: row.cas[0] } : {}),
    ...(row.fema ? { fema: row.fema[0] } : {}),
    ...(row.botanical ? { botanical: row.botanical } : {}),
    ...(row.part ? { part: row.part } : {}),
    ...(row.density ? { density: densityOf(row.density, words) } : {}),
    ...(row.also ? { also: [...row.also] } : {}),
    ...(row.smells ? { smells: [...row.smells] } : {}),
    ...(row.melts ? { melts: cited(row.melts) } : {}),
    ...(row.boils ? { boils: cited(row.boils) } : {}),
    ...(row.flash ? { flash: cited(row.flash) } : {}),
    ...(row.water ? { water: cited(row.water) } : {}),
    ...(row.thresholds ? { thresholds: row.thresholds.map((one) => threshold(one, words)) } : {}),
    ...(row.notes ? { notes: [...row.notes] } : {}),
    ...(leastSold(row) ? { soldAtLeast: leastSold(row)! } : {}),
    cautions: [...(row.care ?? [])],
  };
}

/** The least purity that the Union list asks of a flavouring, g/g; null where it says none. */
function leastSold({ eu }: CatalogueRow): number | null {
  const percent = /^at least (\d+(?:\.\d+)?) %/.exec(eu?.[2] ?? '')?.[1];
  return percent === undefined ? null : Number(percent) / 100;
}

function densityOf(row: NonNullable<CatalogueRow['density']>, words: (id: string) => string) {
  const [gPerMl, halfWidth, atC, source, how] = row;
  return { gPerMl, halfWidth, atC, source: `catalogue: ${words(source)}; ${how}` };
}

function threshold(row: NonNullable<CatalogueRow['thresholds']>[number], words: (id: string) => string) {
  const [medium, kind, low, high, unit, source] = row;
  return { medium, kind, low, high, unit, source: words(source) };
}
