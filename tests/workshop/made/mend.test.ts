import { beforeEach, describe, expect, test } from 'vitest';
import { isApart } from '../../../src/records/union/apart';
import { joinRecords } from '../../../src/records/union/joinRecords';
import type { Batch } from '../../../src/records/kind/batch';
import { takeIn } from '../../../src/records/shelf';
import { exact, standardUncertainty } from '../../../src/core/number/measured';
import { batch as task } from '../../../src/tasks/batch/task';
import { partsOfBatch } from '../../../src/workshop/drinkable/partsOfDrink';
import { bottleNumbers, filledOf } from '../../../src/workshop/made/bottles';
import { costOfBatch } from '../../../src/workshop/made/cost';
import { besidePlan, refractometerExpects } from '../../../src/workshop/made/measured';
import { inDrink, isLess, measuredOff, mendedWith, mendingFor } from '../../../src/workshop/made/mend';
import { phMending } from '../../../src/workshop/made/mendPh';
import { withFact } from '../../../src/workshop/made/since';
import { duesUntil, trialsOf } from '../../../src/workshop/made/trials';
import { weighAll } from '../../tasks/batch/batchRuns';
import { batchShelf, clearPlan } from '../../tasks/batch/batchShelf';

let made: Batch;
beforeEach(() => {
  takeIn(batchShelf());
  made = task.keep(weighAll(clearPlan))[0] as Batch; // 20 L, 10 °Brix, 2 g/L of citric acid
});

const reading = (
  of: 'brix' | 'litres' | 'pH' | 'acid',
  value: number,
  u: number,
  by?: 'refractometer' | 'density',
) => ({
  fact: 'reading' as const,
  of,
  value,
  u,
  ...(by ? { by } : {}),
});
const rowOf = (batch: Batch, of: string) => besidePlan(batch).find((one) => one.of === of)!;

describe('a batch that is measured', () => {
  test('shows the acid beside its sugar on a refractometer, and is as planned where the sugar is', () => {
    expect(refractometerExpects(made)).toBeCloseTo(10 + 0.8 * (0.2 / 1.0381), 1);
    const batch = withFact(made, reading('brix', refractometerExpects(made), 0.05, 'refractometer'));
    expect(rowOf(batch, 'brix').measured!.value).toBeCloseTo(10, 2);
    expect(rowOf(batch, 'brix').alsoShows).toBeCloseTo(0.15, 1);
    expect(measuredOff(batch)).toEqual([]);
  });

  test('by density its sugar is what makes it that dense, alcohol counted', () => {
    const strong: Batch = { ...made, drink: { ...made.drink, abv: exact(20) } };
    const batch = withFact(strong, reading('brix', 4, 0.05, 'density'));
    expect(rowOf(batch, 'brix').measured!.value).toBeGreaterThan(8); // 20 % ABV makes it lighter by about 6 °Brix
  });

  test('its gauge means what the drink holds, and the pH to expect is that of what was weighed', () => {
    const fizzy = task.keep(weighAll({ ...clearPlan, gas: '3' }))[0] as Batch;
    const { gaugeBar, atC } = fizzy.drink.gas!;
    const batch = withFact(fizzy, { fact: 'reading', of: 'gas', value: gaugeBar, u: 0.01, atC });
    expect(rowOf(batch, 'gas').measured!.value).toBeCloseTo(3, 2);
    expect(rowOf(made, 'pH').planned).toBeCloseTo(2.61, 1);
  });

  test('too sweet it takes water; added it is among the weighings, and the drink is reckoned again', () => {
    const batch = withFact(made, reading('brix', 10.5, 0.05));
    expect(measuredOff(batch)).toEqual(['sugar']);
    const { water } = mendingFor(batch, { held: ['sugar'], spirit: 96, isWaterMissing: false });
    const mass = made.drink.litres.value * 1000 * made.drink.densityGPerMl.value;
    expect(water.value).toBeCloseTo(mass * 0.05, -1); // density at 10.5 °Brix is another
    const added = mendedWith(batch, [{ id: 'water', massG: exact(1000), plannedG: water.value }], 96);
    expect(added.drink.brix.value).toBeCloseTo((made.drink.brix.value * mass) / (mass + 1000), 6);
    expect(added.reached[0]!.mgPerKg.value).toBeCloseTo((made.reached[0]!.mgPerKg.value * mass) / (mass + 1000), 6);
    expect(
      added.weighed.reduce((sum, { into, massG }) => sum + (into === 'concentrate' ? 0 : massG.value), 0),
    ).toBeCloseTo(added.drink.litres.value * 1000 * added.drink.densityGPerMl.value, 3);
    expect(rowOf(added, 'brix').measured).toBeNull(); // what was measured before no longer counts
    expect(partsOfBatch(added).parts.find(({ id }) => id === 'linalool')!.mgPerKg.value).toBeLessThan(15);
  });

  test('less and sweeter because water is missing, all of it comes back with water alone', () => {
    const short = made.drink.litres.value * 0.95;
    const batch = withFact(withFact(made, reading('litres', short, 0.02)), reading('brix', 10 / 0.95, 0.02));
    expect(isLess(batch)).toBe(true);
    const held = inDrink(batch);
    const { water, adds } = mendingFor(batch, { held, spirit: 96, isWaterMissing: true });
    expect(water.value / 1000).toBeCloseTo(0.05 * 20, 0);
    expect(adds.acid!.value).toBeLessThan(0.6); // of 40 g: the density of the denser drink
    const taken = mendingFor(batch, { held, spirit: 96, isWaterMissing: false });
    expect(taken.adds.acid!.value).toBeGreaterThan(1); // the same drink, only sweeter: acid is diluted too
  });

  test('what two devices wrote down of it is joined, and nothing is kept beside', () => {
    const [one, other] = [
      { ...withFact(made, reading('pH', 3.1, 0.02)), written: '2026-01-02' },
      { ...withFact(made, reading('brix', 10, 0.05)), written: '2026-01-03' },
    ];
    const both = joinRecords(one, other) as Batch;
    expect(both.since!.map((fact) => fact.fact === 'reading' && fact.of).sort()).toEqual(['brix', 'pH']);
    expect(isApart(both)).toBe(false);
    expect(joinRecords(other, one)).toEqual(both);
  });
});

describe('a pH that was measured', () => {
  const measuredAs = (ph: number, u = 0.02, asked = {}) =>
    withFact({ ...made, asked: { ...made.asked, ...asked } }, reading('pH', ph, u));

  test('is brought down to its target with acid, as much as a litre of the same drink takes', () => {
    const ph = phMending(measuredAs(2.8, 0.02, { 'ph.target': '2.61' }))!;
    expect(ph).toMatchObject({ id: 'acid', now: 2.8, target: 2.61 });
    // by hand, K = 8.5e-4 with activities: 0.9 g/L has pH 2.80 (c = h + h²/K, h = 1.58 mmol/L), so 1.1 is missing of 2 g/L. Or a base binds
    // 2.1 mmol/L of what 10.4 mmol/L ionise (35 %) beyond h: at 2.61 17.5 mmol/L are needed, 1.4 g/L more; with its second proton a little more
    expect(ph.massG.value / 20).toBeGreaterThan(1.05);
    expect(ph.massG.value / 20).toBeLessThan(1.25);
    expect(ph.upToG / 20).toBeGreaterThan(1.35);
    expect(ph.upToG / 20).toBeLessThan(1.55);
    expect(standardUncertainty(ph.massG)).toBeGreaterThan(0.5);
  });

  test('too low takes a buffer salt; added, it is among the weighings, and that pH no longer counts', () => {
    const batch = measuredAs(2.61, 0.02, { 'ph.target': '3.2' });
    const ph = phMending(batch)!;
    expect(ph.id).toBe('salt');
    const mended = mendedWith(batch, [{ id: 'salt', massG: exact(ph.massG.value), plannedG: ph.massG.value }], 96);
    expect(mended.weighed.at(-1)).toMatchObject({ id: 'trisodium-citrate', corrects: true });
    expect(phMending(mended)).toBeNull();
    const again = withFact(mended, { ...reading('pH', 3.2, 0.02), at: '9999' } as never);
    expect(phMending(again)).toBeNull();
  });

  test('is left alone within its ±, where acid was titrated, and where nothing was meant', () => {
    expect(phMending(measuredAs(2.64, 0.02, { 'ph.target': '2.61' }))).toBeNull();
    expect(phMending(measuredAs(2.8))).toBeNull(); // what is computed is known within 0.2
    const titrated = withFact(measuredAs(2.9, 0.02, { 'ph.target': '2.61' }), reading('acid', 2, 0.02));
    expect(phMending(titrated)).toBeNull();
    expect(phMending({ ...measuredAs(3.5), keeping: undefined } as never)).toBeNull();
  });
});

describe('a batch that is filled and tried', () => {
  test('counts its bottles, numbers them on, and says how much is in none', () => {
    const once = withFact(made, { fact: 'filled', first: 1, count: 40, ml: 330 });
    const twice = withFact(once, { fact: 'filled', first: filledOf(once).next, count: 10, ml: 500 });
    const { count, litres, rest, next } = filledOf(twice);
    expect([count, litres, next]).toEqual([50, 18.2, 51]);
    expect(rest.value).toBeCloseTo(1.8, 1);
    expect(bottleNumbers({ ...twice, code: 'B7' }, 41, 50)).toBe('B7-041 to B7-050');
  });

  test('a trial is due day by day until it ends; bottles put aside on their day until they are gone', () => {
    const begun = withFact(made, {
      fact: 'trial',
      sort: 'warm',
      under: '35 °C',
      begun: '2026-01-01',
      dues: ['2026-01-08', '2026-01-15'],
    });
    const trial = begun.since![0]!.id;
    takeIn([begun]);
    const due = (day: string) => duesUntil(day).map((one) => one.day);
    expect([due('2026-01-07'), due('2026-01-09')]).toEqual([[], ['2026-01-08']]);
    const seen = withFact(begun, { fact: 'seen', trial, due: '2026-01-08', state: 'slightly off', words: 'flat' });
    const kept = withFact(seen, { fact: 'retained', from: 1, to: 2, where: '4 °C, dark', until: '2026-01-10' });
    takeIn([kept]);
    expect(due('2026-02-01')).toEqual(['2026-01-10', '2026-01-15']);
    const over = withFact(kept, { fact: 'verdict', trial, passed: false, words: '' });
    takeIn([withFact(over, { fact: 'gone', of: kept.since!.at(-1)!.id })]);
    expect(due('2026-02-01')).toEqual([]);
    expect(trialsOf(over)[0]!.verdict!.passed).toBe(false);
  });

  test('costs what its bottles cost, and the rest by the prices that were said; what has none is named', () => {
    expect(costOfBatch(made).open).toContain('sugar');
    expect(costOfBatch(made).open).not.toContain('work');
    const neat = made.uses.reduce((sum, { massG }) => sum + massG, 0);
    expect(costOfBatch(made).all).toBeCloseTo(2 * neat, 6);
    const filled = withFact(made, { fact: 'filled', first: 1, count: 50, ml: 330 });
    takeIn([
      {
        id: 'settings',
        kind: 'settings',
        v: 1,
        made: '',
        from: [],
        theme: 'system',
        hand: 'right',
        basis: '% w/v',
        prices: { sugar: 1, bottle: 0.5, work: 40, duty: 12 },
      } as never,
    ]);
    const sugar = made.weighed.find(({ id }) => id === 'sugar')!.massG.value;
    const { all, perLitre, perBottle } = costOfBatch(filled);
    expect(all).toBeCloseTo(2 * neat + sugar / 1000 + 25 + 40, 6);
    expect(perBottle).toBeCloseTo(perLitre * 0.33, 9);
    const strong = { ...filled, drink: { ...filled.drink, litres: exact(20), abv: exact(25) } };
    expect(costOfBatch(strong).all - all).toBeCloseTo(20 * 0.25 * 12, 9); // a litre of pure alcohol at 12
  });
});
