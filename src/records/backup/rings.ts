import type { Stored } from '../kind/record';

/** Ids of records that are, over whatever way, made from themselves: no trace could end. */
export function ringsIn(records: Iterable<Stored>): Set<string> {
  const list = [...records];
  const place = new Map(list.map(({ id }, i) => [id, i]));
  const sources = list.map((record) => originsOf(record).flatMap((id) => place.get(id) ?? []));
  const products = list.map((): number[] => []);
  sources.forEach((from, i) => from.forEach((source) => products[source]!.push(i)));
  const left = new Uint8Array(list.length).fill(1);
  peel(left, sources, products);
  peel(left, products, sources);
  return new Set(list.filter((_, i) => left[i]).map(({ id }) => id));
}

/** Takes away, again and again, what nothing left points at. */
function peel(left: Uint8Array, points: readonly number[][], pointedAtBy: readonly number[][]): void {
  const held = Int32Array.from(pointedAtBy, (others) => others.filter((other) => left[other]).length);
  const free = [...left.keys()].filter((i) => left[i] && held[i] === 0);
  for (let i = free.pop(); i !== undefined; i = free.pop()) {
    left[i] = 0;
    for (const next of points[i]!) if (--held[next]! === 0 && left[next]) free.push(next);
  }
}

function originsOf(record: Stored): string[] {
  const { from } = record as { from?: unknown };
  return Array.isArray(from) ? from.filter((id) => typeof id === 'string') : [];
}
