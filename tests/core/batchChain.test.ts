/**
 * From four liked materials to 20 L: weighed, judged, broken by an oil's constituent, brought back by the reverse answer,
 * once clear and once as an emulsion.
 */
import { describe, expect, test } from 'vitest';
import {
  CONCENTRATE,
  planBatch,
  SUGAR,
  total,
  WATER,
  type BatchPlan,
  type PlannedMass,
} from '../../src/core/drink/batchPlan';
import { concentrateFor } from '../../src/core/drink/concentrate';
import { emulsionFor } from '../../src/core/drink/emulsion';
import { worstConstituents, type DrinkMaterial } from '../../src/core/limits/exposure';
import { drinkDensity } from '../../src/core/drink/finishedDrink';
import { sharesOf } from '../../src/core/drink/formula';
import { ceilings } from '../../src/core/limits/highestDose';
import { checkDrink } from '../../src/core/limits/limits';
import { exact, scaled } from '../../src/core/number/measured';
import { mixtureOf, shareIn, type Addition, type Mixture } from '../../src/core/drink/mixture';
import { smallestMass } from '../../src/core/dilution/smallestMass';
import { gram, gramPerMl, massFraction, millilitre } from '../../src/core/number/units';
import { rescueList, weighList } from '../../src/core/drink/weighList';
import { intakes } from '../../src/tables/adi';
import { constituents } from '../../src/tables/constituents';
import { bansEu, limitsEu } from '../../src/tables/limitsEu';
import { concerns } from '../../src/tables/concernThresholds';

const cas: Record<string, string> = {
  'cedar leaf oil': '8007-20-3',
  linalool: '78-70-6',
  maltol: '118-71-8',
  vanillin: '121-33-5',
};
const formula = sharesOf([
  { material: 'cedar leaf oil', share: 2 },
  { material: 'linalool', share: 5 },
  { material: 'maltol', share: 2 },
  { material: 'vanillin', share: 1 },
]);
const litres = 20;
const drink = millilitre(litres * 1000);

function planFor(mgPerL: number, carrier = 'propylene glycol'): { plan: BatchPlan; parts: PlannedMass[] } {
  const made = concentrateFor(formula, { mgPerL, gramsPerL: 1, drink });
  const parts = [...made.lines, { id: carrier, mass: made.carrier }];
  return { parts, plan: planOf(parts) };
}
function planOf(parts: readonly PlannedMass[]): BatchPlan {
  return planBatch({
    drink,
    brix: massFraction(0.1),
    throw: { parts: 5, by: 'volume' },
    acid: { id: 'citric acid', acid: { molarMass: 192.124, protons: 3 }, citricPerL: 2 },
    preservatives: [],
    concentrate: { parts, ethanol: gram(0) },
  });
}
const neat = (id: string, mass: number): Addition => ({
  mass: exact(mass),
  contents: [{ material: id, strength: exact(1) }],
});
/** What the glass holds when the concentrate was weighed like this and the rest as planned. */
function glass(plan: BatchPlan, weighed: readonly PlannedMass[]): Mixture {
  const concentrate = mixtureOf(weighed.map(({ id, mass }) => neat(id, mass)));
  const syrup = plan.syrup.parts.map(({ id, mass }) =>
    id === CONCENTRATE ? { ...concentrate, mass: exact(mass) } : neat(id, mass),
  );
  return mixtureOf([mixtureOf(syrup), neat(WATER, plan.water)]);
}
function judge(mixture: Mixture, traits: 'cloudy'[] = []) {
  const materials = formula.map(({ id }): DrinkMaterial => {
    const published = constituents.filter((row) => row.oil.includes(cas[id]!));
    return {
      id,
      name: id,
      cas: [cas[id]!],
      mgPerKg: scaled(shareIn(mixture, id), 1e6), // mg per kg
      constituents: worstConstituents({ published, certificate: [] }),
      natural: id.endsWith('oil'),
    };
  });
  return checkDrink({
    materials,
    drink: { alcoholic: true, abv: 15, density: gramPerMl(1.038), traits },
    drinker: { drinkKgPerDay: 0.3, bodyKg: 60 },
    jurisdiction: 'EU',
    rules: { bans: bansEu, limits: limitsEu, intakes, concerns, cramer: () => null, needless: [] },
  });
}

describe('20 L of a clear drink', () => {
  const high = planFor(120);

  test('the dose is over the thujone limit through its cedar leaf oil, and the reverse answer brings it just under', () => {
    const findings = judge(glass(high.plan, high.parts));
    const over = findings.find(({ what }) => what === 'thujone (alpha and beta)')!;
    expect(over.state).toBe('over'); // 120 mg/L × 20 % × 58 %
    const mgPerKg = 120 / high.plan.drink.density;
    const ceiling = ceilings(findings, mgPerKg).find(({ finding }) => finding === over)!;
    expect(ceiling.binding).toBe('cedar leaf oil');
    const lower = planFor(120 * ceiling.times);
    const again = judge(glass(lower.plan, lower.parts)).find(({ what }) => what === over.what)!;
    expect(again.amount.value).toBeCloseTo(10, 4);
    const safe = planFor(120 * ceiling.times * 0.75);
    expect(judge(glass(safe.plan, safe.parts)).find(({ what }) => what === over.what)!.state).toBe('within');
  });

  test('one weighing overshot and rescued: every ppm is as planned, in a little more drink', () => {
    const least = smallestMass({ readability: gram(0.001), repeatability: gram(0) }, 0.01);
    const list = weighList(high.parts, 'propylene glycol', { least });
    expect(list.steps.every(({ enough }) => enough)).toBe(true);
    const linalool = list.steps.find(({ id }) => id === 'linalool')!;
    const rescue = rescueList(list, [{ id: 'linalool', mass: gram(1.05 * linalool.mass) }])!;
    expect(rescue.factor).toBeCloseTo(1.05, 12);
    const weighed = list.steps.map(({ id, mass }) => ({ id, mass: gram(rescue.factor * mass) }));
    const [asPlanned, rescued] = [glass(high.plan, high.parts), glass(high.plan, weighed)];
    for (const { id } of formula) expect(shareIn(rescued, id).value / shareIn(asPlanned, id).value).toBeCloseTo(1, 12);
  });

  test('kept as it is, only the overshot material is off, and the glass says by how much', () => {
    const weighed = high.parts.map(({ id, mass }) => ({ id, mass: gram(id === 'linalool' ? 1.05 * mass : mass) }));
    const ratio = (id: string) =>
      shareIn(glass(high.plan, weighed), id).value / shareIn(glass(high.plan, high.parts), id).value;
    expect(ratio('linalool')).toBeCloseTo(1.05, 2);
    expect(ratio('maltol')).toBeLessThan(1);
    expect(ratio('maltol')).toBeGreaterThan(0.996);
  });
});

describe('20 L of an emulsified drink', () => {
  const density = drinkDensity({ brix: massFraction(0.1), ethanol: massFraction(0) });
  const neatMass = total(concentrateFor(formula, { mgPerL: 60, gramsPerL: 1, drink }).lines);
  const made = emulsionFor({
    oil: { mass: neatMass, density: gramPerMl(0.9) },
    agent: { density: gramPerMl(1.08), capMgPerL: 100 },
    drink: { volume: drink, density },
    gramsPerL: 1,
    gumRatio: 1.5,
  });
  const parts = [
    ...formula.map(({ id, share }) => ({ id, mass: gram(neatMass * share) })),
    { id: 'ester gum', mass: made.agent },
    { id: 'gum arabic', mass: made.gum },
    { id: 'water of the emulsion', mass: made.water },
  ];

  test('the emulsion is the concentrate: its mass is the dosage, and the drink holds 60 mg/L of the formula', () => {
    expect(total(parts)).toBeCloseTo(litres, 9); // 1 g/L
    const plan = planOf(parts);
    const inDrink = glass(plan, parts);
    const flavour = formula.reduce((sum, { id }) => sum + shareIn(inDrink, id).value, 0);
    expect(flavour * plan.drink.density * 1e6).toBeCloseTo(60, 9);
    expect(shareIn(inDrink, 'ester gum').value * plan.drink.density * 1e6).toBeLessThanOrEqual(100 * (1 + 1e-12));
    expect(shareIn(inDrink, SUGAR).value).toBeCloseTo(0.1, 12);
  });
});
