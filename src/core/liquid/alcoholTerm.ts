import { expanded, type Measured } from '../number/measured';

/**
 * Whether a drink (% v/v with its uncertainty) meets a term: 'close' when the uncertainty at k = 2 reaches across the number.
 * `below` true: strictly less than; false: not more than. 'no number' when the rule has none.
 * Arithmetic; the uncertainty as in GUM 6.2.1.
 */
export function meetsTerm(
  abv: Measured,
  term: { maxAbv: number | null; below: boolean },
): 'yes' | 'no' | 'close' | 'no number' {
  if (term.maxAbv === null) return 'no number';
  const meets = term.below ? abv.value < term.maxAbv : abv.value <= term.maxAbv;
  if (expanded(abv) > 0 && Math.abs(abv.value - term.maxAbv) <= expanded(abv)) return 'close';
  return meets ? 'yes' : 'no';
}
