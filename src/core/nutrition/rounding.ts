/** How a number is rounded before it is on a label: up to `upTo` (included) to a whole multiple of `step`; what is not above `none` is none. */
export interface Rounding {
  readonly none: number;
  readonly steps: readonly { readonly upTo: number; readonly step: number }[];
}

/** A number as it is on a label; with `below` it is said as less than that: '< 0.5 g'. */
export interface Declared {
  readonly value: number;
  readonly below: boolean;
  /** Digits behind the point. */
  readonly digits: number;
}

const ALMOST = 1e-9; // of a step: 0.25 is a half, whatever is left of its sum

/**
 * A number (zero or more, any unit) as a label gives it, halves up; what is above zero but not above `none` is said as less than that.
 * Source: the rules that are handed over name theirs. Check, EU: 0.3 g of sugars is "< 0.5 g", 9.44 g is 9.4 g, 10.4 g is 10 g.
 */
export function declared(value: number, { none, steps }: Rounding): Declared {
  const { step } = steps.find(({ upTo }) => value <= upTo) ?? steps[steps.length - 1]!;
  if (value <= none) return { value: value > 0 ? none : 0, below: value > 0, digits: digitsOf(value > 0 ? none : 1) };
  return { value: Math.floor(value / step + 0.5 + ALMOST) * step, below: false, digits: digitsOf(step) };
}

/** Digits behind the point that a step has: 0 of 5, 1 of 0.1. */
function digitsOf(step: number): number {
  return step >= 1 ? 0 : Math.ceil(-Math.log10(step) - ALMOST);
}
