import { measured, minus, type Measured } from '../number/measured';

/** What was taken out of a bottle or vial, g, or of a pack, pieces, at a time (ISO 8601, UTC). */
export interface Taking {
  readonly at: string;
  readonly amount: number;
}

/** What was found to be left, by weighing or counting, at a time (ISO 8601, UTC). */
export interface Weighed {
  readonly at: string;
  readonly left: Measured;
}

/** Our choice: a taking is off by 5 % (standard), all of them alike: drops cling, caps get wet. */
const TAKING_DOUBT = 0.05;
/** Our choice: below this share of what there was, it is time to make or buy more. */
const LOW = 0.15;

/**
 * Grams (or pieces) left: what was found at the last weighing less what was taken since, or what was there at first less all
 * that was taken; never below zero. Takings are uncertain by 5 % (standard, our choice), all in the same direction, under
 * `<id>:takings`.
 */
export function amountLeft(facts: {
  readonly id: string;
  readonly full: Measured;
  readonly takings: readonly Taking[];
  readonly weighed: readonly Weighed[];
}): Measured {
  const last = facts.weighed.reduce<Weighed | null>((late, one) => (late && late.at > one.at ? late : one), null);
  const since = facts.takings.filter(({ at }) => last === null || at > last.at);
  const taken = since.reduce((sum, { amount }) => sum + amount, 0);
  const takings = measured(taken, taken * TAKING_DOUBT, {
    id: `${facts.id}:takings`,
    words: 'what was taken out of it',
  });
  const left = minus(last?.left ?? facts.full, takings);
  return left.value >= 0 ? left : { ...left, value: 0 };
}

/** Whether it is time to make or buy more: at or below `lowAt` where the person set one, else below 15 % of the full amount (our choice). One unit. */
export function isLow(left: number, full: number, lowAt?: number): boolean {
  return lowAt === undefined ? left < LOW * full : left <= lowAt;
}
