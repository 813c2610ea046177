import { leftOf, type Stocked } from '../records/stock';
import { formatDay, formatPlain } from '../ui/format';
import { attempt, Refused } from './attempt';
import { today } from './today';
import { useByOf } from './useBy';

/** What a thing is taken for: the refusal that it meets where it goes into a drink, and how many grams of it, where that is known. */
interface Purpose {
  readonly refusal?: string | null;
  readonly grams?: number | null;
}

/**
 * Why a bottle, vial or pack is not taken by itself, in a few words that follow "is"; null when it may be the default. A person may choose it
 * all the same, with the reason beside it; only what is smell only is refused for a drink.
 */
export function whyNotByItself(record: Stocked, purpose: Purpose = {}): string | null {
  const why = attempt(() => whyNot(record, purpose));
  return why instanceof Refused ? 'cannot be judged' : why; // one bad day or amount takes no list of things
}

function whyNot(record: Stocked, { refusal = null, grams = null }: Purpose): string | null {
  if (record.archived) return 'archived';
  if (refusal !== null) return 'smell only';
  const useBy = useByOf(record);
  if (useBy && useBy.day < today()) return `past its date (${formatDay(useBy.day)})`;
  const left = leftOf(record)?.value ?? null;
  if (left === 0) return 'empty';
  if (left === null || grams === null || left >= grams) return null;
  return `down to ${formatPlain(left, 3)} g, ${formatPlain(grams, 3)} g are needed`;
}
