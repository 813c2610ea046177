import { daysBetween } from '../../core/number/calendar';
import type { AnyRecord } from '../../records/kind/kinds';
import { list } from '../../records/shelf';
import { leftOf, runsLow, type Stocked } from '../../records/stock';
import { today } from '../../workshop/onHand';
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

/** What is past its last day or will be within two weeks, longest past first. */
export function dueThings(): DueThing[] {
  return watched()
    .flatMap((record) => {
      const useBy = useByOf(record);
      return useBy ? [{ record, useBy, days: daysBetween(today(), useBy.day) }] : [];
    })
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
  const plenty = new Set(bottles.flatMap((one) => (leftOf(one) && !runsLow(one) ? one.material : [])));
  return [
    ...bottles.filter((bottle) => bottle.buy || (runsLow(bottle) && !plenty.has(bottle.material))),
    ...list('supply').filter((supply) => supply.buy || runsLow(supply)),
  ];
}

/** Vials to make again: running low. */
export function toMake(): Stocked[] {
  return list('vial').filter((vial) => vial.buy || runsLow(vial));
}
