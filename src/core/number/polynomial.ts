/**
 * Σ a_k x^k, k from 0, by Horner's scheme (arithmetic); the unit is that of the coefficients. Any finite numbers; 0 for no
 * coefficients.
 */
export function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, a) => sum * x + a, 0);
}
