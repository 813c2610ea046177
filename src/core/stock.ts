import { measured, minus, type Measured } from './measured';

/** Grams taken out of a bottle or vial, at a time (ISO 8601, UTC). */
export interface Taking {
  readonly at: string;
  readonly massG: number;
}

/** What was found to be left, by weighing, at a time (ISO 8601, UTC). */
export interface Weighed {
  readonly at: string;
  readonly leftG: Measured;
}

/** Our choice: a taking is off by 5 % (standard), all of them alike: drops cling, caps get wet. */
const TAKING_DOUBT = 0.05;
/** Our choice: below this share of what there was, it is time to make or buy more. */
const LOW = 0.15;

/**
 * Grams left: what was there at first, or was found at the last weighing, less what was taken since; never below zero.
 * Each taking is doubtful by 5 % (standard, our choice), all in the same direction, under `<id>:takings`.
 */
export function amountLeft(facts: {
  readonly id: string;
  readonly at: string;
  readonly fullG: Measured;
  readonly takings: readonly Taking[];
  readonly weighed: readonly Weighed[];
}): Measured {
  const last = facts.weighed.reduce<Weighed>((late, one) => (one.at >= late.at ? one : late), {
    at: facts.at,
    leftG: facts.fullG,
  });
  const taken = facts.takings.filter(({ at }) => at > last.at).reduce((sum, { massG }) => sum + massG, 0);
  const takings = measured(taken, taken * TAKING_DOUBT, {
    id: `${facts.id}:takings`,
    words: 'what was taken out of it',
  });
  const left = minus(last.leftG, takings);
  return left.value >= 0 ? left : { ...left, value: 0 };
}

/** Whether it is time to make or buy more: at or below `lowG` where the person set one, else below 15 % of the full amount; all in g. */
export function isLow(leftG: number, fullG: number, lowG?: number): boolean {
  return lowG === undefined ? leftG < LOW * fullG : leftG <= lowG;
}
