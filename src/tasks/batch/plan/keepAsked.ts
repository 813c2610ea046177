import { answer } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { oncePerRun } from '../../engine/oncePerRun';
import { ofThisRecipe } from './asked';
import { timesBefore } from './before';
import { keepFields, SWEETENERS } from './keepFields';

/** What is asked of acid, keeping, gas and sweeteners as the page asks it now: as last time for this formula, never as for another. */
export const keepAsked = oncePerRun((run: RunState) => {
  const { same } = timesBefore(run);
  const own = ofThisRecipe(run);
  const asItself = <T>(field: Field<T>) => asBefore(own, field, same);
  const { ph, best, why, sweetener, sweetMg, ...all } = keepFields;
  const again = Object.fromEntries(
    Object.entries(all).map(([name, field]) => [name, asItself(field as Field)]),
  ) as unknown as typeof all;
  const sweets = SWEETENERS.map((n) => ({ which: asItself(sweetener(n)), mg: asItself(sweetMg(n)) }));
  return { ...again, ph, best, why, sweets };
});

/** A number that may stay open, as it is in the run; 0 while nothing is in it. */
export function amountIn(run: RunState, field: Field<number | null>): number {
  return answer(run, field) ?? 0;
}
