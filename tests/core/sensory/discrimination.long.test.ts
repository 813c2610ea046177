import { describe, expect, test } from 'vitest';
import { triesNeeded } from '../../../src/core/sensory/discrimination';
import reference from '../../reference/discrimination.json';

describe('before you start', () => {
  test('tries needed: every cell of an independent computation, triangle and duo-trio, first and stable', () => {
    let compared = 0;
    for (const [kind, { values }] of [
      ['triangle', reference.triangleTries],
      ['duo-trio', reference.duoTrioTries],
    ] as const)
      for (const [risk, table] of Object.entries(values))
        for (const [missed, row] of Object.entries(table))
          for (const [share, { first_n: first, stable_n: stable }] of Object.entries(row)) {
            const needed = triesNeeded({ test: kind, risk: Number(risk) }, Number(share), 1 - Number(missed));
            expect([kind, risk, missed, share, needed]).toEqual([kind, risk, missed, share, { first, stable }]);
            compared++;
          }
    console.info(`tries needed, first and stable: ${compared} cells, 0 differ`);
    expect(compared).toBe(120);
  });

  test('a difference almost no one tells needs more tries than anyone has', () => {
    expect(triesNeeded({ test: 'triangle', risk: 0.05 }, 0.01, 0.8)).toBeNull();
  });
});
