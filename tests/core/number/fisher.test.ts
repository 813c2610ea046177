import jstat from 'jstat';
import { expect, test } from 'vitest';
import { fisherTail } from '../../../src/core/number/fisher';
import { Refusal } from '../../../src/core/text/refusal';

const { jStat } = jstat;

test('F is that of every printed table at 5 %: 161.4, 4.96, 4.10, 3.33', () => {
  for (const [f, above, below] of [
    [161.448, 1, 1],
    [4.9646, 1, 10],
    [4.1028, 2, 10],
    [3.3258, 5, 10],
  ] as const)
    // prettier-ignore
    expect(fisherTail(f, above, below)).toBeCloseTo(0.05, 5);
});

test('with two degrees of freedom above it has a closed form: (1 + 2f/below)^(−below/2)', () => {
  for (const f of [0, 0.3, 1, 4, 40])
    for (const below of [1, 4, 9])
      expect(fisherTail(f, 2, below)).toBeCloseTo((1 + (2 * f) / below) ** (-below / 2), 12);
});

test('a statistics library from the registry gives the same F', () => {
  let worst = 0;
  for (const above of [1, 3, 8])
    for (const below of [1, 4, 20])
      for (const f of [0.1, 1, 3, 10])
        worst = Math.max(worst, Math.abs(fisherTail(f, above, below) - (1 - jStat.centralF.cdf(f, above, below))));
  console.info(`residual F against jStat max ${worst.toExponential(1)} of 36 values`);
  expect(worst).toBeLessThan(1e-7);
});

test('a negative ratio or no degree of freedom is refused', () => {
  expect(() => fisherTail(-1, 1, 1)).toThrow('0 or more');
  expect(() => fisherTail(1, 0, 1)).toThrow(Refusal);
});
