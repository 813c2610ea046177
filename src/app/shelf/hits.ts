import { isOf, type AnyRecord } from '../../records/kind/kinds';

/** Hits of the Shelf that are drawn once no key follows; the rest when asked for. */
export const FIRST = 20;

/** Without a material of which a bottle was found, too: its page is one tap from there. */
export function withoutHeadings(hits: readonly AnyRecord[]): AnyRecord[] {
  const named = new Set(hits.flatMap((hit) => (isOf('bottle', hit) ? [hit.material] : [])));
  return hits.filter(({ id }) => !named.has(id));
}
