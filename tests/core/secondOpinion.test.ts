import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { atLeast, atMost, clopperPearson } from '../../src/core/number/binomial';
import { numberNeeded, testResult } from '../../src/core/sensory/discrimination';
import { chiSquaredTail, normalBound, normalTail } from '../../src/core/number/tails';

/** The part of the registry's jstat that is asked here; it brings no types. */
interface Statistics {
  binomial: { cdf: (x: number, n: number, p: number) => number };
  beta: { inv: (p: number, a: number, b: number) => number };
  chisquare: { cdf: (x: number, df: number) => number };
  normal: {
    inv: (p: number, mean: number, sd: number) => number;
    cdf: (x: number, mean: number, sd: number) => number;
  };
}
const { jStat } = createRequire(import.meta.url)('jstat') as { jStat: Statistics };

describe('a second opinion from a statistics library (jstat)', () => {
  test('binomial tails', () => {
    let worst = 0;
    for (let n = 1; n <= 100; n += 3)
      for (const p of [1 / 3, 0.5, 0.62])
        for (let x = 0; x <= n; x++) worst = Math.max(worst, Math.abs(atMost(x, n, p) - jStat.binomial.cdf(x, n, p)));
    console.info(`binomial against jstat: worst ${worst.toExponential(1)}`);
    expect(worst).toBeLessThan(1e-9);
  });

  test('Clopper–Pearson limits are quantiles of the beta distribution', () => {
    let worst = 0;
    for (const n of [5, 12, 36, 100])
      for (let x = 1; x < n; x++) {
        const { low, high } = clopperPearson(x, n, 0.95);
        worst = Math.max(worst, Math.abs(low - jStat.beta.inv(0.025, x, n - x + 1)));
        worst = Math.max(worst, Math.abs(high - jStat.beta.inv(0.975, x + 1, n - x)));
      }
    console.info(`Clopper–Pearson against jstat: worst ${worst.toExponential(1)}`);
    expect(worst).toBeLessThan(1e-7);
  });

  test('the smallest number right is where the library’s tail crosses the risk', () => {
    for (let tries = 6; tries <= 60; tries++)
      for (const risk of [0.05, 0.01]) {
        const needed = numberNeeded({ test: 'triangle', tries, risk })!;
        expect(1 - jStat.binomial.cdf(needed - 1, tries, 1 / 3)).toBeLessThanOrEqual(risk);
        expect(1 - jStat.binomial.cdf(needed - 2, tries, 1 / 3)).toBeGreaterThan(risk);
      }
    expect(testResult({ test: 'triangle', tries: 12, risk: 0.05 }, 8).p).toBeCloseTo(
      1 - jStat.binomial.cdf(7, 12, 1 / 3),
      9,
    );
    expect(atLeast(8, 12, 1 / 3)).toBeCloseTo(0.01875843226247128, 14);
  });

  test('chi-squared and normal', () => {
    let worst = 0;
    for (let df = 1; df <= 11; df++)
      for (let x = 0.25; x < 30; x += 0.5)
        worst = Math.max(worst, Math.abs(chiSquaredTail(x, df) - (1 - jStat.chisquare.cdf(x, df))));
    for (let z = -5; z <= 5; z += 0.25)
      worst = Math.max(worst, Math.abs(normalTail(z) - (1 - jStat.normal.cdf(z, 0, 1))));
    for (const p of [0.001, 0.025, 0.2, 0.5])
      worst = Math.max(worst, Math.abs(normalBound(p) + jStat.normal.inv(p, 0, 1)));
    console.info(`chi-squared and normal against jstat: worst ${worst.toExponential(1)}`);
    expect(worst).toBeLessThan(1e-8);
  });
});
