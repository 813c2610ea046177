import { searchIndex, type Searchable } from '../../core/text/search';
import { idle } from '../../records/store/idle';

const FEW = 100; // entries at a time: some 10 ms on a quick phone

/**
 * Makes things findable, a few at a time while nothing else is to be done, so that the first search finds them ready. What `entryOf`
 * and `searchIndex` know of a thing they keep.
 */
export async function prepare<T>(
  things: readonly T[],
  entryOf: (thing: T) => Searchable,
  isGone: () => boolean,
): Promise<void> {
  for (let i = 0; i < things.length; i += FEW) {
    await idle(1000);
    if (isGone()) return;
    searchIndex(things.slice(i, i + FEW).map(entryOf));
  }
}
