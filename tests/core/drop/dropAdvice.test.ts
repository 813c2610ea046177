import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calibrateDrops, type Reading } from '../../../src/core/drop/drop';
import { outliers, planReadings, readingsStillWorth } from '../../../src/core/drop/dropAdvice';
import { seeded } from '../seeded';

const source = { id: 'cal', words: 'dropper A' };
const twenties = (...grams: number[]): Reading[] => grams.map((massG) => ({ drops: 20, massG }));
const pocket = { readabilityG: 0.01 };
const fine = { readabilityG: 0.001 };

test('clean sets of weighings raise a false alarm at most 5 times in 100 (Monte Carlo, 4000 sets each)', () => {
  const random = seeded(5);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  for (const n of [3, 6, 10])
    for (const spread of [0.01, 0.03, 0.055]) {
      let alarms = 0;
      const weighing = () => Math.round(100 * 0.4 * (1 + (spread / Math.sqrt(20)) * normal())) / 100; // a scale of 0.01 g
      for (let i = 0; i < 4000; i++)
        if (outliers(twenties(...Array.from({ length: n }, weighing)), pocket).length > 0) alarms++;
      expect(alarms / 4000, `${n} weighings of drops that scatter by ${spread}`).toBeLessThan(0.05 + 3 * 0.0035);
    }
});

test('two that agree do not hide a third that is double, and accuse none that is one step of the scale off', () => {
  expect(outliers(twenties(0.34, 0.35, 0.62), pocket).map(({ index }) => index)).toEqual([2]);
  expect(outliers(twenties(0.34, 0.35, 0.62), pocket)[0]!.ratio).toBeCloseTo(0.62 / 0.345, 10);
  expect(outliers(twenties(0.34, 0.35, 0.34), pocket)).toEqual([]);
  expect(outliers(twenties(0.34, 0.34, 0.36), pocket)).toEqual([]);
});

test('a miscount stands out and is named, and nothing is taken away', () => {
  const readings = twenties(0.316, 0.318, 0.315, 0.317, 0.349);
  const found = outliers(readings, fine);
  expect(found.map(({ index }) => index)).toEqual([4]);
  expect(found[0]!.distance).toBeGreaterThan(found[0]!.critical);
  expect(calibrateDrops(readings, fine, source).n).toBe(5);
});

test('honest scatter, equal readings and pairs give no warning', () => {
  expect(outliers(twenties(0.316, 0.322, 0.311, 0.319, 0.317), fine)).toEqual([]);
  expect(outliers(twenties(0.3, 0.3, 0.3), fine)).toEqual([]);
  expect(outliers(twenties(0.3, 0.9), fine)).toEqual([]);
});

test('a weighing of more drops is judged on its drops, not on its weight', () => {
  expect(outliers([...twenties(0.316, 0.318, 0.315), { drops: 60, massG: 0.95 }], fine)).toEqual([]);
});

test('the plan reaches the wanted ± with the fewest drops, and no smaller plan does', () => {
  const aim = { mgPerDrop: 20, perDropSpread: 0.05, scale: pocket };
  const plan = planReadings({ ...aim, wanted: 0.03 })!;
  expect(plan.relative).toBeLessThanOrEqual(0.03);
  expect(plan.readings).toBeGreaterThanOrEqual(3);
  const t = { 3: 4.303, 4: 3.182, 5: 2.776, 6: 2.571 } as const; // t(0.975; n − 1), printed
  for (const readings of [3, 4, 5, 6] as const)
    for (let drops = 5; drops * readings < plan.drops * plan.readings; drops += 5) {
      const relative = Math.hypot(
        (t[readings] * 0.05) / Math.sqrt(readings * drops),
        (2 * 10) / Math.sqrt(6) / drops / 20,
      );
      expect(relative, `${readings} × ${drops}`).toBeGreaterThan(0.0299);
    }
});

test('a coarse scale asks for more drops, a finer wish for more still, and the impossible is said', () => {
  const aim = { mgPerDrop: 20, perDropSpread: 0.05 };
  const total = (scale: { readabilityG: number }, wanted: number) => {
    const plan = planReadings({ ...aim, scale, wanted });
    return plan && plan.readings * plan.drops;
  };
  expect(total(pocket, 0.03)!).toBeGreaterThan(total(fine, 0.03)!);
  expect(total(fine, 0.02)!).toBeGreaterThan(total(fine, 0.03)!);
  expect(planReadings({ ...aim, scale: { readabilityG: 1 }, wanted: 0.01 })).toBeNull();
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 0.2, noNaN: true }),
      fc.double({ min: 5, max: 60, noNaN: true }),
      (wanted, mg) => {
        const plan = planReadings({ mgPerDrop: mg, perDropSpread: 0.05, scale: fine, wanted });
        expect(plan === null || plan.relative <= wanted).toBe(true);
      },
    ),
    { numRuns: 30 },
  );
});

test('one weighing is never enough; three that agree are', () => {
  const one = readingsStillWorth(calibrateDrops(twenties(0.4), fine, source), fine, 0.5);
  expect(one.enough).toBe(false);
  expect(one.moreReadings).toBe(2);
  const three = readingsStillWorth(calibrateDrops(twenties(0.4, 0.402, 0.399), fine, source), fine, 0.03);
  expect(three).toMatchObject({ enough: true, moreReadings: 0 });
});

test('where the step of the scale stands in the way, more drops are asked for, not more weighings', () => {
  const readings = twenties(0.4, 0.4, 0.41);
  const advice = readingsStillWorth(calibrateDrops(readings, pocket, source), pocket, 0.015);
  expect(advice.enough).toBe(false);
  expect(advice.moreReadings).toBeNull();
  expect(advice.dropsPerReading).toBeGreaterThan(20);
  const step = (2 * 10) / Math.sqrt(6) / ((1000 * 1.21) / 60); // mg over mg per drop, one drop
  expect(step / advice.dropsPerReading).toBeLessThan(0.015);
  expect(step / (advice.dropsPerReading - 1)).toBeGreaterThanOrEqual(0.015);
});

test('the number of further weighings promised is enough when they scatter as expected', () => {
  const calibration = calibrateDrops(twenties(0.4, 0.412, 0.391), fine, source);
  const { moreReadings } = readingsStillWorth(calibration, fine, 0.02);
  expect(moreReadings).toBeGreaterThan(0);
  expect(moreReadings).toBeLessThan(20);
});

test('wishes of nothing are refused in plain words', () => {
  expect(() => planReadings({ mgPerDrop: 20, perDropSpread: 0.05, scale: fine, wanted: 0 })).toThrow('above zero');
  expect(() => outliers(twenties(0.3, 0.3, 0.3), { readabilityG: 0 })).toThrow('above zero');
});
