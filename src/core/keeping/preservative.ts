/** A weak acid that keeps: −log of its constant at 25 °C. */
export interface Preserving {
  readonly pKa: number;
}

/**
 * Share (0 to 1) of a preservative that is the free acid at a pH, and alone works: 1/(1 + 10^(pH − pKa)), by definition of the
 * constant, activities left out as in the published tables. Check: benzoic (4.19) 60.77 % at pH 4, 13.41 % at 5; sorbic (4.76)
 * 85.19 % and 36.53 %. A much-copied table (93.5, 59.3, 12.8, 1.44 % at pH 3 to 6) says 4.19 and is of 4.163.
 */
export function activeShare({ pKa }: Preserving, ph: number): number {
  return 1 / (1 + 10 ** (ph - pKa));
}
