import { isOf, type AnyRecord } from './kind/kinds';
import { fullOf, leftOf, takingsOf, type Stocked } from './stock';

/** Where what a bottle, vial or pack held at first is now, in g or pieces. `full` less `left` is the sum of `isIn` and `lost`. */
export interface Balance {
  readonly full: number;
  readonly left: number;
  /** The things that it went into; those put away are among them. */
  readonly isIn: readonly { readonly record: AnyRecord; readonly amount: number }[];
  /** What is in nothing, by why. Below zero where more was found than was counted. */
  readonly lost: readonly { readonly why: string; readonly amount: number }[];
}

/** What the scale found beside what was counted: evaporated, spilled, runs that were thrown away, drops off their mean. */
const FOUND = 'found when it was weighed, not counted';
/** Counted beyond what the label said there was. */
const BEYOND = 'counted beyond what there was by its label';

/** The balance of a bottle, vial or pack; null where no one said how much there was at first. */
export function balanceOf(record: Stocked): Balance | null {
  const full = fullOf(record)?.value;
  const left = leftOf(record)?.value;
  if (full === undefined || left === undefined) return null;
  const lost = new Map<string, number>();
  const lose = (why: string, amount: number) => lost.set(why, (lost.get(why) ?? 0) + amount);
  const isIn = takingsOf(record).flatMap(({ of, amount, record: taker }) => {
    const away = isOf('batch', taker) ? (taker.lost ?? []).filter(({ id }) => id === of) : [];
    for (const { why, massG } of away) lose(why, massG);
    const rest = away.reduce((left, { massG }) => left - massG, amount);
    return away.length > 0 && rest < 1e-9 * amount ? [] : { record: taker, amount: rest };
  });
  const taken = takingsOf(record).reduce((sum, { amount }) => sum + amount, 0);
  const unexplained = full - left - taken;
  if (Math.abs(unexplained) > 1e-9 * Math.max(full, taken)) {
    lose((record.weighed ?? []).length > 0 ? FOUND : BEYOND, unexplained); // less is rounding
  }
  return { full, left, isIn, lost: [...lost].map(([why, amount]) => ({ why, amount })) };
}
