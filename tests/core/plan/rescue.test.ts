import { describe, expect, test } from 'vitest';
import { roundEveryLine } from './byHand';
import { nextDilution } from '../../../src/core/plan/nextDilution';
import { bestPlan } from '../../../src/core/plan/bestPlan';
import { randomInstance } from '../dropPlanEnumeration';
import { rescued, SIZE } from './slips';
import { plainly } from '../../../src/core/text/refusal';

describe('rescue after a slip', () => {
  test('without a slip goes on as planned', () => {
    const instance = randomInstance(3, SIZE, {});
    const best = bestPlan(instance);
    if (!best.ok) throw new Error(plainly(best.why));
    const first = best.lines[0]!;
    const rescue = rescued(instance, { [first.stockIds[0]!]: first.drops }, [first.componentId]);
    expect(rescue.better).toBe('accept');
    expect(rescue.accept.objective).toBeCloseTo(best.objective, 12);
  });

  test('goes on with a wrong vial that is already in the trial', () => {
    const instance = randomInstance(5, { lines: 2, vials: 2, cap: 20 }, {});
    const best = bestPlan(instance);
    if (!best.ok) throw new Error(plainly(best.why));
    const line = instance.components[0]!;
    const wrong = line.stocks.find(({ id }) => !best.plan[id])!;
    const { complete } = rescued(instance, { [wrong.id]: 1 }, []);
    if (!complete.ok) throw new Error(plainly(complete.why));
    expect(complete.lines[0]!.stockIds).toEqual([wrong.id]);
  });
});

describe('the dilution to make next', () => {
  const drop = { mgPerDrop: 16, rsd: 0.05, solvent: 'ethanol' };

  test('is the best of all single dilutions on the ladder, and its gain is that of the new plan', () => {
    let improved = 0;
    for (let seed = 1; seed <= 8; seed++) {
      const instance = randomInstance(seed, { lines: 3, vials: 2, cap: 15 }, {});
      const now = bestPlan(instance);
      if (!now.ok) continue;
      const next = nextDilution(instance, drop);
      let least = now.objective;
      for (const component of instance.components)
        for (let decade = -1; decade >= -6; decade--)
          for (const step of [1, 2, 5]) {
            const strength = Number(`${step}e${decade}`);
            if (strength >= Math.max(...component.stocks.map((s) => s.strength))) continue;
            const stock = { ...drop, id: 'trial', strength, availableDrops: null };
            const components = instance.components.map((c) =>
              c === component ? { ...c, stocks: [...c.stocks, stock] } : c,
            );
            const plan = bestPlan({ ...instance, components });
            if (plan.ok) least = Math.min(least, plan.objective);
          }
      expect(next?.after.objective ?? now.objective).toBeCloseTo(least, 9);
      if (next) improved++;
      if (next) expect(next.after.plan[next.stockId]).toBeGreaterThan(0);
    }
    expect(improved).toBeGreaterThan(3);
  });

  test('makes a formula possible that has no vial for one of its lines', () => {
    const instance = randomInstance(2, { lines: 3, vials: 2, cap: 20 }, {});
    const components = instance.components.map((c, at) => (at === 1 ? { ...c, stocks: [] } : c));
    const next = nextDilution({ ...instance, components }, drop);
    expect(next?.componentId).toBe(components[1]!.id);
    expect(next?.before).toBeNull();
  });
});

describe('rounding every line by hand', () => {
  test('keeps the limits and is never better than the best plan', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const instance = randomInstance(seed, { lines: 5, vials: 3, cap: 40 }, {});
      const [hand, best] = [roundEveryLine(instance), bestPlan(instance)];
      if (!hand || !best.ok) continue;
      expect(hand.problems).toEqual([]);
      expect(hand.objective).toBeGreaterThanOrEqual(best.objective - 1e-12);
    }
  });
});

describe('what cannot be planned', () => {
  const good = randomInstance(4, { lines: 3, vials: 2, cap: 30 }, {});
  const [line] = good.components;
  const withLine = (change: object) => ({
    ...good,
    components: good.components.map((c) => (c === line ? { ...c, ...change } : c)),
  });
  const withLimits = (change: object) => ({ ...good, limits: { ...good.limits, ...change } });

  test.each([
    [
      'a line without a vial',
      withLine({ stocks: [] }),
      'c0',
      'No vial on the shelf holds c0.',
      'Make a dilution of c0, or take it out of the formula.',
    ],
    [
      'a line whose vials have strength zero',
      withLine({ stocks: line!.stocks.map((s) => ({ ...s, strength: 0 })) }),
      'c0',
      'Every vial of c0 has strength zero.',
      'Make a dilution of c0 that holds some of it.',
    ],
    [
      'a line whose vials are empty',
      withLine({ name: 'Citral', stocks: line!.stocks.map((s) => ({ ...s, availableDrops: 0 })) }),
      'c0',
      'Citral needs at least 1 drop and its vials can give 0.',
      'Make more of Citral.',
    ],
    [
      'a limit below one drop a line',
      withLimits({ maxDrops: 2 }),
      null,
      'These materials need 3 drops, and the limit leaves 2.',
      'Allow 3 drops, or take a material out.',
    ],
    [
      'a strength above one',
      withLine({ stocks: [{ ...line!.stocks[0]!, strength: 1.2 }] }),
      'c0',
      'The strength of vial c0s0 is not between 0 and 100 %.',
      'Correct the strength of vial c0s0.',
    ],
    [
      'a formula without lines',
      { ...good, components: [] },
      null,
      'The formula has no material.',
      'Put a material into the formula.',
    ],
  ] as const)('names the line and the remedy: %s', (_, instance, componentId, why, remedy) => {
    const plan = bestPlan(instance);
    if (plan.ok) throw new Error('there is a plan');
    expect({ ...plan, why: plainly(plan.why), remedy: plainly(plan.remedy) }).toEqual({
      ok: false,
      componentId,
      why,
      remedy,
    });
  });

  test('says how much mass would do, and that is enough', () => {
    const refused = bestPlan(withLimits({ maxTotalMassMg: 20 }));
    if (refused.ok) throw new Error('20 mg hold three drops');
    const [, wanted] = /need (\d+) mg in all/.exec(plainly(refused.why))!;
    expect(bestPlan(withLimits({ maxTotalMassMg: Number(wanted) })).ok).toBe(true);
    expect(bestPlan(withLimits({ maxTotalMassMg: Number(wanted) - 1 })).ok).toBe(false);
  });

  test('a vial of strength zero beside a good one is passed over', () => {
    const zero = { ...line!.stocks[0]!, id: 'zero', strength: 0 };
    expect(bestPlan(withLine({ stocks: [...line!.stocks, zero] }))).toEqual(bestPlan(good));
  });
});

test('a line finished without a drop is refused by name, not with a crash', () => {
  const instance = randomInstance(5, SIZE, {});
  const [first] = instance.components;
  const rescue = rescued(instance, {}, [first!.id]);
  expect(rescue.complete).toMatchObject({ ok: false, componentId: first!.id });
  expect(rescue.complete.ok ? '' : plainly(rescue.complete.why)).toContain('finished without a drop');
});
