import { describe, expect, test } from 'vitest';
import { exact, measured, type Measured } from '../../../src/core/number/measured';
import { againstText } from '../../../src/workshop/drinkable/limitRules';

const text = (amount: Measured, max: number | null) => againstText({ amount, max, unit: 'mg/L' });
const weighed = (value: number, u: number) => measured(value, u, { id: 'scale', words: 'scale' });

describe('an amount beside its maximum', () => {
  test('both have three digits', () => {
    expect(text(exact(123.4), 125)).toBe('123 mg/L of 125 mg/L');
    expect(text(weighed(123.4, 0.1), 125)).toBe('123 ± 1 mg/L of 125 mg/L');
  });

  test('one that is above and would read alike has a digit more; at the maximum it has not', () => {
    expect(text(exact(153.4), 153)).toBe('153.4 mg/L of 153 mg/L');
    expect(text(exact(157.2), 153)).toBe('157 mg/L of 153 mg/L');
    expect(text(weighed(150, 0.1), 150)).toBe('150 ± 1 mg/L of 150 mg/L');
  });

  test('without a maximum it stands alone', () => {
    expect(text(exact(0.25), null)).toBe('0.25 mg/L');
  });
});
