import { beforeEach, describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/core/number/measured';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Batch } from '../../../src/records/kind/batch';
import { batch } from '../../../src/tasks/batch/task';
import { WATER } from '../../../src/core/drink/batchPlan';
import { massAt } from '../../../src/tasks/batch/vessel/pour';
import { makingOf } from '../../../src/tasks/batch/progress';
import { costLines } from '../../../src/workshop/made/cost';
import { acidPerLitre } from '../../../src/workshop/made/measured';
import { recipeOf, runOf, stepOf, weighAll } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
  takeIn([scale('Fine', 0.001, 200), scale('Large', 1, 5000)]);
});

const scale = (name: string, readabilityG: number, capacityG: number) =>
  newRecord('scale', { id: name, name, readabilityG, capacityG });
const said = (typed: Record<string, string>, key: string) =>
  stepOf(runOf({ ...clearPlan, ...typed }), key).more!.join(' ');
const slots = (typed: Record<string, string>) => recipeOf(runOf({ ...clearPlan, ...typed })).card!.slots!;

describe('200 L on a bench scale', () => {
  const tank = { litres: '200' };

  test('what the fine scale does not carry goes on the large one, and what that does not carry in parts', () => {
    const { vessel, syrup } = makingOf(runOf({ ...clearPlan, litres: '2000' }))!;
    const scaleOf = (id: string) => [...vessel.pours, ...syrup.pours].find(({ goods }) => goods.id === id)!.scale;
    expect(scaleOf('propylene-glycol')).toBe('coarse'); // 1.9 kg of 0.2
    expect(scaleOf('vanillin')).toBe('fine'); // 10 g
    const water = said(tank, 'd.water');
    expect(water).toContain('This scale carries 5000 g: weigh it in 34 parts and add them up.');
    expect(water).toContain('Tare the scale before each part.');
    expect(water).toMatch(/By volume: ‹16\d\.\d L› at 20 °C\./);
  });

  test('parts err each by itself', () => {
    const run = runOf({ ...clearPlan, ...tank, 'mass.d.water': '160000', 'mass.s.water': '4000' });
    const [whole, once] = ['d.water', 's.water'].map((key) => massAt(run, key, { of: 'water', scale: 'coarse' })!);
    expect(standardUncertainty(whole!) / standardUncertainty(once!)).toBeCloseTo(Math.sqrt(160_000 / 5000), 6);
  });
});

test('each weighing says how the scale is used: tare, what is in it by then, and when that is too much', () => {
  expect(said({}, 'c.vanillin')).toContain('Put the empty vessel on the scale and tare it.');
  expect(said({}, 'c.maltol')).toMatch(/Tare the scale; without that it shows ‹0\.3\d+ g›\./);
  expect(said({ litres: '100', dose: '2000', dosage: '3' }, 'c.propylene-glycol')).toContain(
    'In a cup of its own, tared',
  );
});

describe('a drink of a quarter of a litre', () => {
  const glass = { litres: '0.25', dose: '500', dosage: '20', although: 'a test' };

  test('has what is little of it diluted with its own water, and comes out as it was planned', () => {
    const run = weighAll({ ...clearPlan, ...glass, acidity: '0.3' });
    const made = batch.keep(run)[0] as Batch;
    expect(Object.keys(run.typed)).toContain('mass.w.citric-acid.thin');
    const acid = made.weighed.find(({ id }) => id === 'citric-acid')!;
    expect((acid.massG.value * acid.share!) / made.drink.litres.value).toBeCloseTo(0.3, 2);
    expect(made.drink.litres.value).toBeCloseTo(0.25, 3);
    expect(acidPerLitre(made).value).toBeCloseTo(0.3, 2);
    expect(costLines(made).find(({ id }) => id === 'citric-acid')).toMatchObject({
      name: 'citric acid, anhydrous',
      amount: expect.closeTo(0.075, 3),
    });
    expect(made.weighed.every(({ massG }) => massG.value >= 0.082)).toBe(true);
  });

  test('is refused on a pocket scale, and says what would do', () => {
    const { wrong, mend } = slots({ ...glass, fine: '0.01' })['fine']!;
    expect(wrong).toMatch(
      /^Too little for the scale, diluted or not: .* Make [\d.]+ L or more, take a scale of 0\.0001 g/,
    );
    expect(slots({ ...glass, fine: '0.01', ...mend!.type })['fine']!.wrong).toBeUndefined();
    expect(slots({ ...glass, fine: '0.001' })['fine']!.wrong).toBeUndefined();
  });
});

test('a solid is not diluted in an oil to be weighed, which holds hardly any of it, but in the water of the emulsion', () => {
  const cloudy = { make: 'emulsion', agent: 'none', dosage: '5', litres: '5', fine: '0.01', dose: '100' };
  const { pours } = makingOf(runOf({ ...clearPlan, ...cloudy }))!.vessel;
  const { goods, tooSmall } = pours.find(({ stock }) => stock?.from.id === 'vanillin')!;
  expect(tooSmall).toBe(false);
  expect(goods.contents.map(({ material }) => material)).toEqual(['vanillin', WATER]);
  expect(goods.contents[0]!.strength.value).toBeLessThanOrEqual(0.02);
});
