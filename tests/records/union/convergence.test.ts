import { expect, test } from 'vitest';
import { amountsChecked, History } from './days';

test.each([
  [2, false],
  [2, true],
  [3, false],
  [3, true],
])(
  '%i devices, wrong clocks: %s: after any days and exchanges all hold the same, and what the book on paper says',
  async (devices, wrongClocks) => {
    amountsChecked.count = 0;
    for (let seed = 1; seed <= 12; seed++) await new History({ seed, devices, wrongClocks }).play().meet().check();
    expect(amountsChecked.count).toBeGreaterThan(20);
  },
);
