import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { tradeOff } from '../../../src/core/plan/tradeOff';
import type { PlanInstance } from '../../../src/core/plan/instance';
import { judgePlan } from '../../../src/core/plan/judge';
import { bestPlan } from '../../../src/core/plan/bestPlan';
import { randomInstance, weighed } from '../dropPlanEnumeration';
import { plainly } from '../../../src/core/text/refusal';

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
