/** Lanczos coefficients, g = 7, n = 9. Source: Godfrey's table as in Press et al., Numerical Recipes 3rd ed., 6.1 (relative error below 1e-14). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** ln Γ(x) for x of 1/2 and up, dimensionless. Source: Lanczos' approximation, with the coefficients above. */
export function lnGamma(x: number): number {
  const z = x - 1;
  const sum = LANCZOS.slice(1).reduce((total, c, i) => total + c / (z + i + 1), LANCZOS[0]!);
  const base = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(base) - base + Math.log(sum);
}

/**
 * The continued fraction a₀/(b₀ + a₁/(b₁ + …)), dimensionless; `term` gives [aᵢ, bᵢ], `a` being 0 where it ends.
 * Source: the modified Lentz method, Press et al., Numerical Recipes 3rd ed., 5.2.
 */
export function continuedFraction(term: (i: number) => readonly [number, number]): number {
  const [first, below] = term(0);
  let c = 1e300; // stands for infinity: nothing is above the first term
  let d = 1 / below;
  let value = first * d;
  for (let i = 1, step = 0; i < 2000 && Math.abs(step - 1) > 1e-16; i++) {
    const [a, b] = term(i);
    d = 1 / (b + a * d);
    c = b + a / c;
    step = c * d;
    value *= step;
  }
  return value;
}
