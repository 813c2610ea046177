import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ladder } from '../../../src/core/dilution/intermediate';
import { budget, exact, expanded, measured } from '../../../src/core/number/measured';
import { serialPlan, type ByDrops, type ByScale, type Stock } from '../../../src/core/dilution/serialPlan';
import { smallestMass } from '../../../src/core/dilution/smallestMass';
import { gram, massFraction } from '../../../src/core/number/units';
import { relativeUncertainty } from '../uncertainty';

const neat: Stock = { id: 'neat', strength: exact(1), available: gram(100) };
const scale = (doubt: number, least: number): ByScale => ({
  by: 'scale',
  uncertainty: gram(doubt),
  least: gram(least),
});
const wanted = (target: number, batch: number, within = 0.06) => ({
  target: massFraction(target),
  batch: gram(batch),
  vial: gram(10),
  within, // k = 2
});
const milligrams = (plan: ReturnType<typeof serialPlan>) =>
  plan!.steps.map(({ source, solvent }) => [Math.round(source * 1000), Math.round(solvent * 1000)]);

describe('serial dilution by scale', () => {
  // Check values: an exhaustive search written apart from this code (1-2-5 ladder, one reading per net mass, u ≤ 3 %).
  test.each([
    // s g, least g, target, batch g, [source, solvent] mg per step, relative u in %
    [0.001, 0.2, 0.01, 5, [[200, 800], [250, 4750]], 0.56], // prettier-ignore
    [0.001, 0.2, 0.001, 10, [[200, 3800], [200, 9800]], 0.68], // prettier-ignore
    [0.005, 0.5, 0.01, 5, [[500, 4500], [500, 4500]], 1.28], // prettier-ignore
    [0.005, 0.2, 0.001, 10, [[300, 5700], [200, 9800]], 2.92], // prettier-ignore
  ])('s = %d g, least %d g, to %d: %d g in the steps of the separate search', (s, least, target, batch, steps, u) => {
    const plan = serialPlan(wanted(target, batch), [neat], scale(s, least));
    expect(milligrams(plan)).toEqual(steps);
    expect(100 * relativeUncertainty(plan!.strength)).toBeCloseTo(u, 2);
  });

  test('one step of 0.1 g on a 0.01 g scale is ±8 %; two steps of 1 g are ±1 % (0.41 d as s, k = 2)', () => {
    const readings = { readability: gram(0.01), repeatability: gram(0) };
    const rough = serialPlan(wanted(0.01, 10, 0.09), [neat], scale(0.0041, smallestMass(readings, 0.1)));
    expect(rough!.steps).toHaveLength(1);
    expect(expanded(rough!.strength) / 0.01).toBeCloseTo(0.0812, 4); // 0.082 · (1 − m/M): less than the 8.2 % of m alone
    const fine = serialPlan(wanted(0.01, 10, 0.012), [neat], scale(0.0041, smallestMass(readings, 0.01)));
    expect(fine!.steps).toHaveLength(2);
    expect(expanded(fine!.strength) / 0.01).toBeLessThanOrEqual(0.012);
    expect(Math.min(...fine!.steps.map(({ source }) => source))).toBeGreaterThanOrEqual(0.82 - 1e-9);
  });

  test('a vial on the shelf that saves a step is taken, unless it holds too little', () => {
    const tenth: Stock = { id: '10 %', strength: exact(0.1), available: gram(5) };
    const means = scale(0.001, 0.2);
    expect(serialPlan(wanted(0.01, 5), [neat, tenth], means)!.stock.id).toBe('10 %');
    expect(serialPlan(wanted(0.01, 5), [neat, tenth], means)!.steps).toHaveLength(1);
    expect(serialPlan(wanted(0.01, 5), [neat, { ...tenth, available: gram(0.1) }], means)!.stock.id).toBe('neat');
  });

  test('when nothing on the shelf is stronger, or the ± cannot be kept, there is no plan', () => {
    const weak: Stock = { id: 'weak', strength: exact(0.001), available: gram(5) };
    const vague: Stock = { ...neat, strength: measured(0.9, 0.09, { id: 'P', words: 'purity' }) };
    expect(serialPlan(wanted(0.01, 5), [weak], scale(0.001, 0.2))).toBeNull();
    expect(serialPlan(wanted(0.01, 5), [vague], scale(0.001, 0.2))).toBeNull();
    expect(() => serialPlan(wanted(0, 5), [neat], scale(0.001, 0.2))).toThrow('target is more than zero');
  });

  test('plans conserve mass, draw only what is there, keep the limits, and need no more steps than physics asks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 0.3, noNaN: true }),
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        fc.double({ min: 2, max: 10, noNaN: true }),
        (target, least, batch) => {
          const plan = serialPlan(wanted(target, batch, 0.5), [neat], scale(least / 1000, least));
          const floor = Math.ceil(Math.log(1 / target) / Math.log(10 / least) - 1e-9);
          if (!plan) return;
          expect(plan.steps.length).toBeGreaterThanOrEqual(floor);
          let strength = 1;
          plan.steps.forEach((step, k) => {
            strength *= step.source / (step.source + step.solvent);
            expect(step.strength).toBeCloseTo(strength, 12);
            expect(step.source).toBeGreaterThanOrEqual(least * (1 - 1e-9));
            expect(step.source + step.solvent).toBeLessThanOrEqual(10 * (1 + 1e-9));
            const next = plan.steps[k + 1];
            if (next) expect(next.source).toBeLessThanOrEqual(0.9 * (step.source + step.solvent) * (1 + 1e-9));
          });
          expect(strength / target).toBeCloseTo(1, 9);
          expect(plan.strength.value / target).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('no way in the same number of steps makes less (every bridge and 400 batches of it tried forwards)', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 0.02, noNaN: true }), (target) => {
        const [least, batch, vial] = [0.2, 8, 10];
        const plan = serialPlan(wanted(target, batch, 0.5), [neat], scale(0.0002, least));
        const single = batch * target >= least;
        let smallest = single ? batch : Infinity;
        for (const w of single ? [] : ladder(massFraction(1), massFraction(target)))
          for (let i = 0; i <= 400; i++) {
            const between = least + ((vial - least) * i) / 400;
            const [first, second] = [between * w, (batch * target) / w];
            if (first >= least && second >= least && second <= 0.9 * between)
              smallest = Math.min(smallest, between + batch);
          }
        if (smallest < Infinity) {
          expect(plan!.steps.length).toBe(single ? 1 : 2);
          expect(plan!.made).toBeLessThanOrEqual(smallest + 1e-9);
        } else if (plan) expect(plan.steps.length).toBeGreaterThan(1);
      }),
      { numRuns: 60 },
    );
  });
});

describe('serial dilution by drops', () => {
  const means: ByDrops = {
    by: 'drops',
    mgPerDrop: exact(24),
    perDropSpread: 0.05,
    leastDrops: 10,
    mostDrops: 1000,
    solventUncertainty: gram(0.01),
  };
  const dropped: Stock = { ...neat, mgPerDrop: exact(24) };

  test('ten drops of 24 mg or more a step reach 1 % in two steps and 0.1 % in three, as the separate search found', () => {
    expect(serialPlan(wanted(0.01, 10), [dropped], means)!.steps).toHaveLength(2);
    expect(serialPlan(wanted(0.001, 10), [dropped], means)!.steps).toHaveLength(3);
    expect(serialPlan(wanted(0.0001, 10), [dropped], means)!.steps).toHaveLength(3);
  });

  test('drops are whole, the final batch does not overfill, and every strength is met', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 0.2, noNaN: true }),
        fc.integer({ min: 3, max: 12 }),
        (target, leastDrops) => {
          const plan = serialPlan(wanted(target, 9, 0.3), [dropped], { ...means, leastDrops });
          if (!plan) return;
          const last = plan.steps.at(-1)!;
          expect(last.source + last.solvent).toBeLessThanOrEqual(9 + 1e-9);
          for (const { drops, source, solvent, from, strength } of plan.steps) {
            expect(Number.isInteger(drops) && drops! >= leastDrops).toBe(true);
            expect(source).toBeCloseTo(drops! * 0.024, 12);
            expect((source * from) / (source + solvent)).toBeCloseTo(strength, 12);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('one dropper used in both steps is one source of doubt, nearly twice as large', () => {
    const mgPerDrop = measured(24, 0.24, { id: 'dropper', words: 'calibration' }); // 1 %
    const plan = serialPlan(wanted(0.001, 10, 0.3), [{ ...dropped, mgPerDrop }], {
      ...means,
      mgPerDrop,
      leastDrops: 5,
    });
    expect(plan!.steps).toHaveLength(2);
    const [w1, w2] = plan!.steps.map((step) => step.source / (step.source + step.solvent));
    const shared = budget(plan!.strength).find(({ id }) => id === 'dropper')!;
    expect(shared.u / plan!.strength.value).toBeCloseTo(0.01 * (1 - w1! + (1 - w2!)), 9);
  });

  test('what has no drop mass, a solid, is not dropped', () => {
    expect(serialPlan(wanted(0.01, 10), [neat], means)).toBeNull();
  });

  test('with few drops a way is found wherever the same search without that limit finds one within it, and as light', () => {
    const drop = (mg: number, u: number) => measured(mg, u * mg, { id: 'dropper', words: 'calibration' });
    const stock = (mg: number, u: number): Stock => ({ ...neat, strength: exact(0.98), mgPerDrop: drop(mg, u) });
    const counted = (mg: number, u: number, mostDrops: number): ByDrops => ({
      by: 'drops',
      mgPerDrop: drop(mg, u),
      perDropSpread: 0.055,
      leastDrops: 3,
      mostDrops,
      solventUncertainty: gram(0.05),
    });
    let compared = 0;
    for (const [mg, u] of [
      [12, 0.02],
      [16, 0.01],
      [25, 0.03],
    ] as const)
      for (const target of [0.05, 0.01, 0.005, 0.001, 0.0001])
        for (const batch of [2, 5, 15]) {
          const aim = { ...wanted(target, batch, 0.1), vial: gram(30) };
          const free = serialPlan(aim, [stock(mg, u)], counted(mg, u, 1000));
          if (!free || free.steps.some(({ drops }) => drops! > 100)) continue;
          const plan = serialPlan(aim, [stock(mg, u)], counted(mg, u, 100))!;
          expect([target, batch, plan?.steps.length]).toEqual([target, batch, free.steps.length]);
          expect(plan.made).toBeLessThanOrEqual(free.made * (1 + 1e-9));
          compared++;
        }
    expect(compared).toBeGreaterThan(20);
    // It was said not to exist: 5 g of 0.5 % from neat 98 % by drops of 12 mg ± 2 %, within ± 10 %.
    const found = serialPlan({ ...wanted(0.005, 5, 0.1), vial: gram(30) }, [stock(12, 0.02)], counted(12, 0.02, 100))!;
    expect(found.steps.map(({ drops }) => drops! <= 100)).toEqual([true, true]);
    expect(2 * relativeUncertainty(found.strength)).toBeLessThanOrEqual(0.1);
  });
});

describe('amounts that scale and vial can do', () => {
  const means: ByScale = { ...scale(0.0041, 0.16), step: gram(0.01) };

  test('what is taken is a whole number of steps of the scale, and the batch no more than that less', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 0.02, noNaN: true }), (target) => {
        const plan = serialPlan({ ...wanted(target, 10, 0.5), leastBetween: gram(2) }, [neat], means);
        if (!plan) return;
        for (const { source, solvent, from, strength } of plan.steps) {
          expect(Math.abs(source / 0.01 - Math.round(source / 0.01))).toBeLessThan(1e-6);
          expect((source * from) / (source + solvent)).toBeCloseTo(strength, 12);
        }
        for (const step of plan.steps.slice(0, -1)) expect(step.source + step.solvent).toBeGreaterThanOrEqual(2 - 1e-9);
        const last = plan.steps.at(-1)!;
        expect(last.source + last.solvent).toBeGreaterThan(10 - (0.01 * last.from) / last.strength - 1e-9);
        expect(last.source + last.solvent).toBeLessThanOrEqual(10 + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test('no dilution between is stronger than what stays dissolved: vanillin to 10 %, not to one half', () => {
    const plan = (dissolves?: number) => {
      const stock = dissolves === undefined ? neat : { ...neat, dissolves: massFraction(dissolves) };
      return serialPlan(wanted(0.01, 10, 0.2), [stock], scale(0.0041, 0.16))!;
    };
    expect(plan().steps[0]!.strength).toBeGreaterThan(0.1);
    expect(plan(0.1).steps[0]!.strength).toBeLessThanOrEqual(0.1);
  });
});
