import { exact, minus, type Measured } from '../../core/number/measured';
import type { Batch } from '../../records/kind/batch';
import type { SinceOf } from '../../records/kind/since';
import { sinceOf } from './since';

/** What was filled of a batch: bottles, L in them, L that are in none, and the number that the next bottle has. */
export interface Filled {
  readonly count: number;
  readonly litres: number;
  readonly rest: Measured;
  /** L in bottles per L that was made. */
  readonly yielded: number;
  readonly next: number;
}

/** The bottles of a batch. */
export function filledOf(batch: Batch): Filled {
  const all = sinceOf(batch, 'filled');
  const litres = all.reduce((sum, { count, ml }) => sum + (count * ml) / 1000, 0);
  return {
    count: all.reduce((sum, { count }) => sum + count, 0),
    litres,
    rest: minus(batch.drink.litres, exact(litres)),
    yielded: litres / batch.drink.litres.value,
    next: all.reduce((most, { first, count }) => Math.max(most, first + count), 1),
  };
}

/** Bottles that were put aside and are still there. */
export function asideOf(batch: Batch): SinceOf<'retained'>[] {
  const gone = new Set(sinceOf(batch, 'gone').map(({ of }) => of));
  return sinceOf(batch, 'retained').filter(({ id }) => !gone.has(id));
}

/** The number on a bottle: 'B12-007'; of a batch without a code the number alone. */
export function bottleNumber({ code }: Batch, n: number): string {
  const number = String(n).padStart(3, '0');
  return code === undefined ? number : `${code}-${number}`;
}

/** 'B12-001 to B12-048', or one. */
export function bottleNumbers(batch: Batch, from: number, to: number): string {
  return from === to ? bottleNumber(batch, from) : `${bottleNumber(batch, from)} to ${bottleNumber(batch, to)}`;
}
