import type { Contribution } from './exposure';
import { isConfirmed, type Figure, type Trait } from './figure';
import { expanded, type Measured } from '../number/measured';
import type { GramPerMl } from '../number/units';

/**
 * Worst first. at: equal to the maximum as far as it can be told; look: needs a look, never "too much"; check: passes, but
 * check the law; unknown: no figure found.
 */
export const STATES = ['prohibited', 'over', 'at', 'near', 'look', 'check', 'unknown', 'label', 'within'] as const;
export type State = (typeof STATES)[number];

/** The finished drink as the rules see it. abv in % v/v. */
export interface JudgedDrink {
  readonly alcoholic: boolean;
  readonly abv: number;
  readonly density: GramPerMl;
  readonly traits: readonly Trait[];
}

/** Who drinks how much: kg of drink per day, kg of body weight. EFSA counts portions of 0.3 kg and adults of 60 kg. */
export interface Drinker {
  readonly drinkKgPerDay: number;
  readonly bodyKg: number;
}

/** Another drinker beside the one who is judged: a child, someone who drinks a lot. */
export interface OtherDrinker extends Drinker {
  readonly who: string;
}

/** What another drinker takes in, times the maximum: 1 is exactly the maximum. */
export interface OtherIntake {
  readonly who: string;
  readonly times: number;
}

/** One answer. `amount`, `fixed` and `max` share `unit`; `fixed` is the part that does not follow the dose. */
export interface Finding {
  readonly check: 'added' | 'limit' | 'intake' | 'concern';
  readonly state: State;
  readonly what: string;
  readonly amount: Measured;
  readonly fixed: Measured;
  readonly max: number | null;
  readonly unit: 'mg/kg' | 'mg/L' | 'mg/kg bw/day' | 'mg/day';
  readonly from: readonly Contribution[];
  readonly figure: Figure | null;
  readonly rule: string;
  /** Of an intake or a threshold of concern: what the other drinkers take in. */
  readonly others?: readonly OtherIntake[];
}

/** From this share of a maximum on, a result is 'near'. Our choice: one fifth in hand for what other food brings. */
export const NEAR = 0.8;

/** Within this share of a maximum an amount is at it, not over it: our choice, half of one in the fourth digit of 1.000. */
export const AT = 0.0005;

/**
 * The worst state among findings; 'unknown' when nothing was found. The order is our choice. A threshold of concern is no
 * maximum: at or near it counts as 'look', as above it does.
 */
export function worstState(findings: readonly Finding[]): State {
  return STATES.find((state) => findings.some((finding) => weightOf(finding) === state)) ?? 'unknown';
}

function weightOf({ check, state }: Finding): State {
  return check === 'concern' && (state === 'at' || state === 'near') ? 'look' : state;
}

/** True when a finding bars the words "fit for drinks": not allowed, or over a maximum. By definition of the states. */
export function isOver({ state }: Pick<Finding, 'state'>): boolean {
  return state === 'prohibited' || state === 'over';
}

/**
 * How an amount compares with a maximum of the same unit; 'within' only when figure and contributions are confirmed (our
 * choice). An amount whose ± at k = 2 reaches over the maximum is 'near'.
 */
export function stateOf(amount: Measured, max: number, by: { figure: Figure; from: readonly Contribution[] }): State {
  if (Math.abs(amount.value - max) <= AT * max) return 'at';
  if (amount.value > max) return 'over';
  if (amount.value >= NEAR * max || amount.value + expanded(amount) > max) return 'near';
  return isConfirmed(by.figure) && by.from.every((part) => part.confirmed) ? 'within' : 'check';
}

/** Order for sorting: the worst finding first (our choice, STATES). A difference of places there, a whole number. */
export function worstFirst(one: Finding, two: Finding): number {
  return STATES.indexOf(one.state) - STATES.indexOf(two.state);
}
