import { describe, expect, test } from 'vitest';
import { everyPlan, randomInstance, weighed } from '../dropPlanEnumeration';
import { rescued, slip } from './slips';

const ASKS: [string, Parameters<typeof randomInstance>[2]][] = [
  ['one vial a line, counting noise', { objective: { kind: 'minimax', z: 1 } }],
  ['two vials a line', { objective: { kind: 'minimax', z: 0 }, limits: { maxStocksPerComponent: 2, maxDrops: 8 } }],
  ['fixed scale', { scale: { kind: 'fixed', mgPerPart: 0.4 } }],
  ['mass and ethanol', { limits: { maxTotalMassMg: 330, maxSolventMassMg: { ethanol: 150 } } }],
];

describe('rescue after a slip', () => {
  test.each(ASKS)('completes as well as trying every completion: %s', (_, ask) => {
    let completed = 0;
    for (let seed = 1; seed <= 14; seed++) {
      const walk = slip(seed, ask);
      if (!walk) continue;
      const { instance, counted, finished } = walk;
      const { complete } = rescued(instance, counted, finished);
      const left = Object.fromEntries(
        instance.components.flatMap(({ stocks }) => stocks.map((s) => [s.id, s] as const)),
      );
      const closed = new Set(
        instance.components
          .filter(({ id }) => finished.includes(id))
          .flatMap(({ stocks }) => stocks.map(({ id }) => id)),
      );
      let least = Infinity;
      for (const plan of everyPlan(instance)) {
        const holds = Object.keys(left).every((id) =>
          closed.has(id) ? plan[id] === (counted[id] ?? 0) : plan[id]! >= (counted[id] ?? 0),
        );
        const { objective, keeps } = weighed(instance, plan);
        if (holds && keeps) least = Math.min(least, objective);
      }
      expect(complete.ok).toBe(least < Infinity);
      if (!complete.ok) continue;
      completed++;
      expect(Math.abs(complete.objective - least)).toBeLessThan(1e-9);
      for (const [id, n] of Object.entries(counted)) {
        if (closed.has(id)) expect(complete.plan[id] ?? 0).toBe(n);
        else expect(complete.plan[id]).toBeGreaterThanOrEqual(n);
      }
    }
    expect(completed).toBeGreaterThan(3);
  });

  test('never takes a drop out, and never does worse than going on as planned within the limits', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const walk = slip(seed, {});
      if (!walk) continue;
      const { accept, complete, scaleUp } = rescued(walk.instance, walk.counted, walk.finished);
      if (accept.problems.length === 0 && complete.ok)
        expect(complete.objective).toBeLessThanOrEqual(accept.objective + 1e-9);
      for (const result of [accept, complete, scaleUp])
        if (result.ok)
          for (const [id, n] of Object.entries(walk.counted)) expect(result.plan[id]).toBeGreaterThanOrEqual(n);
      if (scaleUp.ok) expect(scaleUp.drops).toBeLessThanOrEqual(2 * walk.instance.limits.maxDrops);
      if (scaleUp.ok && complete.ok) expect(scaleUp.objective).toBeLessThanOrEqual(complete.objective + 1e-9);
    }
  });
});
