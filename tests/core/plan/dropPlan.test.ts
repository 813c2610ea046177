import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { tradeOff } from '../../../src/core/plan/dropFront';
import type { PlanInstance } from '../../../src/core/plan/dropInstance';
import { judgePlan } from '../../../src/core/plan/dropJudge';
import { bestPlan } from '../../../src/core/plan/dropPlan';
import { everyPlan, randomInstance, weighed } from '../dropPlanEnumeration';
import { plainly } from '../../../src/core/text/refusal';

vi.setConfig({ testTimeout: 60_000 }); // trying every plan takes seconds on a busy machine

interface Proven extends PlanInstance {
  readonly id: string;
  readonly optimum: {
    readonly objective: number;
    readonly drops: number | null;
    readonly plan: Record<string, number>;
    readonly front: { drops: number; objective: number }[] | null;
  };
}

/** Thirty-six instances with optima proved twice, by other programs than this (branch and bound, a scan of all critical scales, HiGHS). */
const { instances } = JSON.parse(readFileSync(new URL('../../reference/dropPlans.json', import.meta.url), 'utf8')) as {
  instances: Proven[];
};

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

describe('the best whole-drop plan', () => {
  test.each(instances.map((each) => [each.id, each] as const))(
    'is the proven optimum, with the fewest drops, on %s',
    (_, instance) => {
      const answer = bestPlan(instance);
      if (!answer.ok) throw new Error(plainly(answer.why));
      const judged = judgePlan(instance, answer.plan);
      expect(judged.problems).toEqual([]);
      expect(answer.objective).toBeCloseTo(weighed(instance, answer.plan).objective, 12);
      expect(Math.abs(answer.objective - instance.optimum.objective)).toBeLessThan(1e-9);
      if (instance.optimum.drops !== null) expect(answer.drops).toBe(instance.optimum.drops);
    },
  );

  test('finds every step of the proven staircases, and none besides', () => {
    for (const instance of instances.filter(({ optimum }) => optimum.front)) {
      const list = tradeOff(instance);
      if (!list.ok) throw new Error(plainly(list.why));
      expect(list.points.map(({ drops }) => drops)).toEqual(instance.optimum.front!.map(({ drops }) => drops));
      list.points.forEach((point, at) =>
        expect(Math.abs(point.objective - instance.optimum.front![at]!.objective)).toBeLessThan(1e-9),
      );
    }
  });

  test.each(MODES)('and the staircase are those of trying every plan there is: %s', (_, ask) => {
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

  test('is no worse than any plan drawn at random', () => {
    const instance = randomInstance(7, { lines: 6, vials: 4, cap: 60 });
    const best = bestPlan(instance);
    if (!best.ok) throw new Error(plainly(best.why));
    for (let seed = 100; seed < 160; seed++) {
      const other = bestPlan({ ...instance, scale: { kind: 'fixed', mgPerPart: seed / 100 } });
      if (other.ok) expect(judgePlan(instance, other.plan).objective).toBeGreaterThanOrEqual(best.objective - 1e-12);
    }
  });
});

describe('the trade-off list', () => {
  const list = tradeOff(instances[4]!); // eight lines, 1 : 1742

  test('marks the steps that cut the error by a quarter, and always the first and the last', () => {
    if (!list.ok) throw new Error(plainly(list.why));
    const worth = list.points.filter((point) => point.worth);
    // Reference list of this instance: 8, 10, 13, 14, 26, 48, 53 drops with 62, 46, 33, 22, 13, 9.3, 8.8 %.
    expect(worth.map(({ drops }) => drops)).toEqual([8, 10, 13, 14, 26, 48, 53]);
    expect(worth.map(({ objective }) => (100 * objective).toPrecision(2))).toEqual([
      '62',
      '46',
      '33',
      '22',
      '13',
      '9.3',
      '8.8',
    ]);
  });

  test('recommends one point: the first worthwhile one whose rounding is within its counting noise', () => {
    if (!list.ok) throw new Error(plainly(list.why));
    const balanced = list.points.map(
      ({ lines, worth }) =>
        worth && Math.max(...lines.map((l) => Math.abs(l.rounding))) <= Math.max(...lines.map((l) => l.counting)),
    );
    const first = balanced.indexOf(true) >= 0 ? balanced.indexOf(true) : list.points.length - 1;
    expect(list.points.map(({ recommended }, at) => recommended === (at === first))).not.toContain(false);
  });
});
