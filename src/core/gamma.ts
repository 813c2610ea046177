/** Lanczos coefficients, g = 7, n = 9. Source: Godfrey's table as in Press et al., Numerical Recipes 3rd ed., 6.1 (relative error below 1e-14). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * Natural logarithm of the gamma function, dimensionless.
 * @throws RangeError unless x > 0
 */
export function lnGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`ln Γ is given here for numbers above zero, not for ${x}`);
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x);
  const z = x - 1;
  const sum = LANCZOS.slice(1).reduce((total, c, i) => total + c / (z + i + 1), LANCZOS[0]!);
  const base = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(base) - base + Math.log(sum);
}

/**
 * Regularised upper incomplete gamma Q(a, x): series below a + 1, Lentz continued fraction above. Dimensionless.
 * Valid: a > 0, x ≥ 0. Source: Abramowitz & Stegun 6.5.29 and 6.5.31.
 * @throws RangeError outside
 */
export function upperGamma(a: number, x: number): number {
  if (!(a > 0 && x >= 0))
    throw new RangeError(`the incomplete gamma function needs a > 0 and x ≥ 0, not ${a} and ${x}`);
  if (x === 0) return 1;
  const front = Math.exp(a * Math.log(x) - x - lnGamma(a));
  return x < a + 1 ? 1 - front * series(a, x) : front * fraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < 1000 && term > sum * 1e-17; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let k = 1, step = 0; k < 1000 && Math.abs(step - 1) > 1e-16; k++) {
    const an = -k * (k - a);
    b += 2;
    d = 1 / (an * d + b);
    c = b + an / c;
    step = c * d;
    value *= step;
  }
  return value;
}
