import { daysBetween, isDay } from '../../core/number/calendar';
import type { AnyRecord } from '../../records/kind/kinds';
import { list } from '../../records/shelf';
import { leftOf, runsLow, type Stocked } from '../../records/stock';
import { today } from '../../workshop/today';
import { useByOf, type UseBy } from '../../workshop/useBy';

const SOON = 14; // days; our choice

/** A thing that is past its last day, or soon will be. */
export interface DueThing {
  readonly record: AnyRecord;
  readonly useBy: UseBy;
  /** Days to go; negative when it is past. */
  readonly days: number;
}

function watched(): Stocked[] {
  return [...list('bottle'), ...list('vial'), ...list('supply')];
}

/** What the work finds for each thing. One that it breaks on is left out, and named by `unjudged`. */
function judged<S extends Stocked, T>(things: readonly S[], work: (thing: S) => readonly T[]): T[] {
  return things.flatMap((thing) => {
    try {
      return work(thing);
    } catch {
      return [];
    }
  });
}

function dueOf(record: Stocked, { now, later } = days()): DueThing[] {
  const useBy = useByOf(record);
  if (!useBy || (isDay(useBy.day) && useBy.day > later)) return [];
  return [{ record, useBy, days: daysBetween(now, useBy.day) }];
}

/** Today, and a day that is surely not soon. */
function days(): { readonly now: string; readonly later: string } {
  return { now: today(), later: today(SOON + 1) };
}

/** What none of these lists can judge, with what it broke on. */
export function unjudged(): { readonly record: AnyRecord; readonly error: unknown }[] {
  return watched().flatMap((record) => {
    try {
      dueOf(record);
      runsLow(record);
      return [];
    } catch (error) {
      return [{ record, error }];
    }
  });
}

/** What is past its last day or will be within two weeks, longest past first. */
export function dueThings(): DueThing[] {
  const now = days();
  return judged(watched(), (thing) => dueOf(thing, now))
    .filter(({ days }) => days <= SOON)
    .sort((a, b) => a.days - b.days);
}

/** 'since 3 days', 'today', 'in 5 days'. */
export function dueWords(days: number): string {
  if (days === 0) return 'today is the last day';
  const count = `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`;
  return days < 0 ? `past by ${count}` : `in ${count}`;
}

/** What to buy: marked by hand, or running low with no other bottle of it that is not. */
export function toBuy(): Stocked[] {
  const bottles = list('bottle');
  const plenty = new Set(judged(bottles, (one) => (leftOf(one) && !runsLow(one) ? [one.material] : [])));
  return [
    ...judged(bottles, (one) => (one.buy || (runsLow(one) && !plenty.has(one.material)) ? [one] : [])),
    ...judged(list('supply'), (one) => (one.buy || runsLow(one) ? [one] : [])),
  ];
}

/** Vials to make again: running low. */
export function toMake(): Stocked[] {
  return judged(list('vial'), (vial) => (vial.buy || runsLow(vial) ? [vial] : []));
}
