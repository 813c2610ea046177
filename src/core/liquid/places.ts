/** Ends of what a value may be; any unit that is the same throughout. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** The first and the last place that something may have in an order, counted from 1. */
export interface Places {
  readonly from: number;
  readonly to: number;
}

/**
 * Which place each of several ranges may have when they are put in order, lowest first; counts from 1. Ranges that overlap are not
 * told apart: a place is one more than all that lie below for certain, up to all that do not lie above for certain.
 * Source: arithmetic (interval order).
 */
export function placesOf(ranges: readonly Range[]): Places[] {
  return ranges.map(({ low, high }) => ({
    from: 1 + ranges.filter((other) => other.high < low).length,
    to: ranges.length - ranges.filter((other) => other.low > high).length,
  }));
}
