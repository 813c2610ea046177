import { Refusal } from '../text/refusal';

/**
 * Solves A·x = b and inverts A for a symmetric positive definite square A of plain numbers (rows of equal length), any units
 * that fit.
 * Source: Cholesky decomposition A = L·Lᵀ.
 * @throws Refusal when A is not positive definite
 */
export function cholesky(a: readonly (readonly number[])[]): {
  solve: (b: readonly number[]) => number[];
  inverse: () => number[][];
  /** ln of the determinant of A. */
  lnDeterminant: () => number;
} {
  const n = a.length;
  const l = a.map(() => new Float64Array(n));
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!;
      if (i === j && !(sum > 0)) throw new Refusal('these verdicts do not tell the vials apart');
      l[i]![j] = i === j ? Math.sqrt(sum) : sum / l[j]![j]!;
    }
  const solve = (b: readonly number[]): number[] => {
    const x = [...b];
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) x[i]! -= l[i]![k]! * x[k]!;
      x[i]! /= l[i]![i]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      for (let k = i + 1; k < n; k++) x[i]! -= l[k]![i]! * x[k]!;
      x[i]! /= l[i]![i]!;
    }
    return x;
  };
  return {
    solve,
    inverse: () => a.map((_, i) => solve(a.map((_, j) => (i === j ? 1 : 0)))),
    lnDeterminant: () => 2 * l.reduce((sum, row, i) => sum + Math.log(row[i]!), 0),
  };
}
