import { expect, test } from 'vitest';
import { cholesky } from '../../../src/core/number/cholesky';
import { Refusal } from '../../../src/core/text/refusal';

const matrix = [
  [4, 12, -16],
  [12, 37, -43],
  [-16, -43, 98],
]; // the textbook example: L = [2; 6 1; −8 5 3]

test('solves and inverts the textbook example', () => {
  const { solve, inverse } = cholesky(matrix);
  const x = solve([1, 2, 3]);
  matrix.forEach((row, i) => expect(row.reduce((sum, one, j) => sum + one * x[j]!, 0)).toBeCloseTo([1, 2, 3][i]!, 10));
  const printed = [
    [49.36111, -13.55556, 2.11111],
    [-13.55556, 3.77778, -0.55556],
    [2.11111, -0.55556, 0.11111],
  ];
  inverse().forEach((row, i) => row.forEach((one, j) => expect(one).toBeCloseTo(printed[i]![j]!, 5)));
});

test('what is not positive definite is refused', () => {
  expect(() =>
    cholesky([
      [1, 2],
      [2, 1],
    ]),
  ).toThrow(Refusal);
});
