import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { PlanInstance } from '../../src/core/plan/instance';
import { bestPlan } from '../../src/core/plan/bestPlan';
import { formsFor, milpOptimum } from '../bench/dropPlanMilp';
import { randomInstance } from './dropPlanEnumeration';

const limits = { maxTotalMassMg: 450, maxSolventMassMg: { ethanol: 160 } };
const fixed = { kind: 'fixed', mgPerPart: 0.4 } as const;
const range = { kind: 'range', min: 0.2, max: 0.9 } as const;
const worst = (z: number) => ({ kind: 'minimax', z }) as const;

const CASES: [string, 'counts' | 'oneHot' | 'log', Parameters<typeof randomInstance>[2]][] = [
  ['rounding alone, free scale, counts', 'counts', { objective: worst(0) }],
  ['rounding alone, two vials a line', 'counts', { objective: worst(0), limits: { maxStocksPerComponent: 2 } }],
  ['rounding alone, mass and ethanol', 'counts', { objective: worst(0), limits }],
  [
    'rounding alone, mass, ethanol, two vials, two drops',
    'counts',
    { objective: worst(0), limits: { ...limits, maxStocksPerComponent: 2, minDropsPerComponent: 2 } },
  ],
  ['rounding alone, fixed scale', 'counts', { objective: worst(0), scale: fixed }],
  ['rounding alone, scale in a range', 'counts', { objective: worst(0), scale: range }],
  ['counting noise, free scale, logarithms', 'log', { objective: worst(1) }],
  ['counting noise twice, mass and ethanol, logarithms', 'log', { objective: worst(2), limits }],
  ['counting noise, fixed scale, mass and ethanol', 'oneHot', { objective: worst(1), scale: fixed, limits }],
  ['counting noise, scale in a range', 'oneHot', { objective: worst(1), scale: range }],
];

describe('a general solver', () => {
  test.each(CASES)('finds no better plan and no other optimum: %s', async (_, form, ask) => {
    let compared = 0;
    for (let seed = 1; seed <= 3; seed++) {
      const instance = randomInstance(1000 + seed, { lines: 3 + seed, vials: 3, cap: 24 }, ask);
      const [own, other] = [bestPlan(instance), await milpOptimum(instance, 200, form)];
      expect(own.ok).toBe(other !== null);
      if (other && !other.finished) continue; // out of time says nothing
      compared++;
      if (!own.ok || !other) continue;
      expect(Math.abs(own.objective - other.objective)).toBeLessThan(1e-6);
    }
    expect(compared).toBeGreaterThanOrEqual(2);
  });

  test('finds no better plan and no other optimum on the proven instances', async () => {
    const file = new URL('../reference/dropPlans.json', import.meta.url);
    const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: PlanInstance[] };
    let compared = 0;
    for (const instance of instances) {
      const [own, other] = [bestPlan(instance), await milpOptimum(instance, 2, formsFor(instance)[0]!)];
      if (!own.ok || !other) throw new Error('it has a plan');
      expect(other.objective).toBeGreaterThan(own.objective - 1e-6); // out of time, it is the best found until then
      if (!other.finished) continue;
      expect(Math.abs(own.objective - other.objective)).toBeLessThan(1e-6);
      compared++;
    }
    console.info(`proven instances: ${compared} compared, the others took longer than 2 s`);
    expect(compared).toBeGreaterThan(5);
  });
});
