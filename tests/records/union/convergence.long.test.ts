import { expect, test } from 'vitest';
import { amountsChecked, History } from './days';

const HISTORIES = Number(process.env['HISTORIES'] ?? 700) / 4; // of each of four sorts; `npm run bench -- convergence` tries 2,200

test.each([
  [2, false],
  [2, true],
  [3, false],
  [3, true],
])('%i devices, wrong clocks: %s: hundreds of histories', async (devices, wrongClocks) => {
  amountsChecked.count = 0;
  for (let i = 0; i < HISTORIES; i++)
    await new History({ seed: 1000 + i, devices, wrongClocks, acts: 30 + (i % 60) }).play().meet().check();
  expect(amountsChecked.count).toBeGreaterThan(HISTORIES);
});
