import { computed } from '@preact/signals';
import { search, searchIndex } from '../../core/text/search';
import type { Material } from '../../records/kind/material';
import { find, list } from '../../records/shelf';
import type { CatalogueRow } from '../../tables/catalogue/row';
import { searchCatalogue } from '../../workshop/catalogue';

const MOST = 6; // shown; our choice

/** The materials on the Shelf, findable. */
const ownIndex = computed(() =>
  searchIndex(
    list('material').map(({ id, name, code, cas, also = [] }) => ({
      id,
      texts: [[name, 5], [code, 8], [cas ?? '', 4], ...also.map((other) => [other, 3] as const)],
    })),
  ),
);

/** Materials on the Shelf, those used or bought last first. */
const lastUsed = computed(() => {
  const vials = list('vial').flatMap(({ made, contents }) => contents.map(({ material }) => ({ made, material })));
  const used = [...vials, ...list('bottle')].sort((a, b) => b.made.localeCompare(a.made));
  return [...new Set([...used.map(({ material }) => material), ...list('material').map(({ id }) => id)])];
});

/** What the Shelf and the catalogue have for the name of a new bottle, best first; for none what was used last. */
export function matchesOf(query: string): { own: readonly Material[]; rows: readonly CatalogueRow[] } {
  const ids =
    query.trim() !== '' ? search(ownIndex.value, query, 3).map(({ id }) => id) : lastUsed.value.slice(0, MOST);
  const own = ids.flatMap((id) => find('material', id) ?? []);
  return { own, rows: query.trim().length < 2 ? [] : searchCatalogue(query, MOST - own.length) };
}

/** Whether anything answers to a name that was typed. */
export function isMatched(query: string): boolean {
  const { own, rows } = matchesOf(query);
  return query.trim() !== '' && own.length + rows.length > 0;
}
