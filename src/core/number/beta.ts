import { continuedFraction, lnGamma } from './gamma';

/**
 * Regularised incomplete beta I_x(a, b), a probability from 0 to 1; a and b above 0. By Lentz's continued fraction.
 * Source: Abramowitz & Stegun 26.5.8.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(x, a, b)) / a : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** 1/(1 + d₁/(1 + d₂/(1 + …))), the fraction of A&S 26.5.8. */
function betaFraction(x: number, a: number, b: number): number {
  return continuedFraction((i) => {
    if (i === 0) return [1, 1];
    const m = i >> 1;
    const d = i % 2 === 0 ? m * (b - m) : -(a + m) * (a + b + m);
    return [(d * x) / ((a + i - 1) * (a + i)), 1];
  });
}
