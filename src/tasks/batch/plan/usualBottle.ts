import type { Option } from '../../../ui/controls/field';
import { whyNotNow, type Source } from '../../../workshop/sources';
import type { RunState } from '../../engine/fold';
import { timesBefore } from './before';

/** The answer that a liquid comes from no bottle of the Shelf. */
export const NOT_FROM_SHELF: Option = {
  value: 'none',
  label: 'Not from the Shelf',
  short: 'not from the Shelf',
  hint: 'stock is not changed',
  always: true,
};

/** A bottle in the slot of a sentence: with its name, which is not said before it. */
export function inSlot(option: Option): Option {
  return { ...option, short: option.label };
}

/** The bottle that is taken by itself for so many g, of those that were used last if they will do; '' where several will. */
export function usualBottle(run: RunState, bottles: readonly Source[], grams: number | null): string {
  const usable = bottles.filter(({ refusal, leftG }) => refusal === null && leftG !== 0);
  if (usable.length === 0) return NOT_FROM_SHELF.value;
  const good = usable.filter((one) => whyNotNow(one, grams) === null);
  const last = timesBefore(run).bottles;
  return (good.length === 1 ? good[0] : good.find(({ id }) => last.includes(id)))?.id ?? '';
}
