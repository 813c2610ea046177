import { expect, test } from 'vitest';
import { tradeOff } from '../../../src/core/plan/tradeOff';
import type { PlanInstance } from '../../../src/core/plan/instance';
import { judgePlan } from '../../../src/core/plan/judge';
import { bestPlan } from '../../../src/core/plan/bestPlan';
import { everyPlan, randomInstance, weighed } from '../dropPlanEnumeration';

const MODES: [string, Parameters<typeof randomInstance>[2]][] = [0, 1, 2].flatMap((z) => {
  const objective = { kind: 'minimax', z } as const;
  const fixed = { kind: 'fixed', mgPerPart: 0.4 } as const;
  const range = { kind: 'range', min: 0.2, max: 0.9 } as const;
  const limits = { maxTotalMassMg: 300, maxSolventMassMg: { ethanol: 110 } };
  return [
    [`z ${z}, free`, { objective }],
    [`z ${z}, fixed scale`, { objective, scale: fixed }],
    [`z ${z}, scale in a range`, { objective, scale: range }],
    [`z ${z}, two drops a line`, { objective, limits: { minDropsPerComponent: 2 } }],
    [`z ${z}, two vials a line`, { objective, limits: { maxStocksPerComponent: 2 } }],
    [
      `z ${z}, two vials a line, two drops, scale in a range`,
      { objective, scale: range, limits: { maxStocksPerComponent: 2, minDropsPerComponent: 2 } },
    ],
    [`z ${z}, mass and ethanol`, { objective, limits }],
    [
      `z ${z}, mass and ethanol, two vials, fixed scale`,
      { objective, scale: fixed, limits: { ...limits, maxStocksPerComponent: 2 } },
    ],
  ];
});

/** The staircase by enumeration: smallest objective for each number of drops, then only the steps. */
function enumerated(instance: PlanInstance): { drops: number; objective: number; sum: number }[] {
  const best = new Map<number, { drops: number; objective: number; sum: number }>();
  for (const plan of everyPlan(instance)) {
    const { keeps, ...found } = weighed(instance, plan);
    if (!keeps) continue;
    const known = best.get(found.drops);
    const equal = known && Math.abs(found.objective - known.objective) <= 1e-10;
    if (!known || (equal ? found.sum < known.sum : found.objective < known.objective)) best.set(found.drops, found);
  }
  const steps: { drops: number; objective: number; sum: number }[] = [];
  for (const each of [...best.values()].sort((a, b) => a.drops - b.drops))
    if (each.objective < (steps.at(-1)?.objective ?? Infinity) - 1e-10) steps.push(each);
  return steps;
}

test.each(MODES)('the best plan and the staircase are those of trying every plan there is: %s', (_, ask) => {
  for (let seed = 1; seed <= 9; seed++) {
    const size =
      ask!.limits?.maxStocksPerComponent === 2
        ? { lines: 2, vials: 3, cap: 9 }
        : { lines: 2 + (seed % 2), vials: 2, cap: 10 };
    const instance = randomInstance(seed, size, ask);
    const steps = enumerated(instance);
    const [answer, list] = [bestPlan(instance), tradeOff(instance)];
    expect(answer.ok).toBe(steps.length > 0);
    expect(list.ok).toBe(answer.ok);
    if (!answer.ok || !list.ok) continue;
    const { objective, drops, sum } = steps.at(-1)!;
    expect(Math.abs(answer.objective - objective)).toBeLessThan(1e-9);
    expect(answer.drops).toBe(drops);
    expect(judgePlan(instance, answer.plan).problems).toEqual([]);
    expect(weighed(instance, answer.plan).sum).toBeCloseTo(sum, 8);
    expect(list.points.map((point) => point.drops)).toEqual(steps.map((step) => step.drops));
    list.points.forEach((point, at) => expect(Math.abs(point.objective - steps[at]!.objective)).toBeLessThan(1e-9));
  }
});
