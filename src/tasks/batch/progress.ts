import { CONCENTRATE, SUGAR } from '../../core/drink/batchPlan';
import { ethanolDensity } from '../../core/liquid/ethanol';
import { densityWithin } from '../../core/drink/densityWithin';
import { exact, over, scaled, times, type Measured } from '../../core/number/measured';
import { mixtureOf, shareIn, type Mixture } from '../../core/drink/mixture';
import { massFraction, PPM, REFERENCE_TEMPERATURE } from '../../core/number/units';
import type { Bottle } from '../../records/kind/material';
import { bottlesOf, carriersOf } from '../../workshop/thing/carrier';
import type { RunState } from '../engine/fold';
import { judgeBetween } from '../shared/judgeBetween';
import type { Judgement, Part } from '../../workshop/drinkable/judging';
import type { Source } from '../../workshop/sources';
import { pouredBefore } from './plan/begun';
import { concentrateVessel } from './vessel/concentrate';
import { answered, spareFactor } from './plan/drinkAsked';
import { drinkLines } from './vessel/drinkLines';
import { drinkVessel } from './vessel/drinkVessel';
import { ETHANOL, massOf, type Goods } from './plan/goods';
import { planOf, isPlain } from './plan/plan';
import type { Plan } from './plan/planParts';
import { oncePerRun } from '../engine/oncePerRun';
import { leastOf, mixedOf, type Pour } from './vessel/pour';
import type { Vessel } from './vessel/vessel';

/** A batch under way: the plan, as large as rescues have made it, and what is weighed of it. */
export interface Making {
  readonly plan: Plan;
  readonly vessel: Vessel;
  /** Syrup and drink. */
  readonly syrup: Vessel;
  /** The concentrate as it is, null until all of it is weighed. */
  readonly concentrate: Mixture | null;
  /** g of it that the drink needs. */
  readonly neededG: number;
  /** g of it that went into drinks that were given up. */
  readonly before: Measured;
  /** g of it that are there for this drink. */
  readonly there: number;
}

/** A finished drink in numbers: °Brix, % ABV, g/mL, L, and everything in it, mg/kg. */
export interface Made {
  readonly mixture: Mixture;
  readonly brix: Measured;
  readonly abv: Measured;
  /** Names of the solvents in it of which no one has said how much alcohol they hold: then the alcohol of the drink is not known. */
  readonly unknown: readonly string[];
  /** The most alcohol that it may have, % ABV. */
  readonly mostAbv: number;
  readonly densityGPerMl: Measured;
  readonly litres: Measured;
  readonly reached: readonly { material: string; name: string; mgPerKg: Measured; mgPerL: Measured }[];
  readonly parts: readonly Part[];
}

/** The batch under way; null until plan and scale are known. @throws Refusal when it cannot be made */
export const makingOf = oncePerRun((run: RunState): Making | null => {
  const least = leastOf(run);
  const first = planOf(run);
  if (!first || least === null) return null;
  const vessel = concentrateVessel(run, first, least);
  const plan = vessel.drink === 1 ? first : planOf(run, vessel.drink)!;
  const concentrate = mixedOf(vessel.pours);
  const timesNeeded = (spareFactor(run) * vessel.factor) / vessel.drink;
  const made = concentrate?.mass.value ?? massOf(plan.concentrate) * timesNeeded;
  const before = pouredBefore(run);
  const [neededG, there] = [made / timesNeeded, Math.max(0, made - before.value)];
  const syrup = drinkVessel(run, plan, { needed: neededG, there });
  return { plan, vessel, syrup, concentrate, neededG, before, there };
});

/** The drink as it was weighed; null until the last thing is in. */
export function madeOf({ plan, syrup, concentrate }: Making): Made | null {
  return concentrate && drinkFrom(plan, mixedOf(poured(syrup.pours, concentrate)));
}

/** The drink as it becomes if the rest is weighed as planned; null until the concentrate is there. */
export function expectedDrink({ plan, syrup, concentrate }: Making): Made | null {
  return concentrate && drinkFrom(plan, mixedOf(poured(syrup.pours, concentrate), true));
}

/** The drink as it is planned. */
export function plannedDrink(plan: Plan): Made {
  const concentrate = mixtureOf(
    plan.concentrate.map(({ goods, mass }) => ({ mass: exact(mass), contents: goods.contents })),
  );
  const lines = drinkLines(plan, concentrate.mass.value).map(({ goods, mass }) => ({
    goods,
    target: mass,
    mass: null,
  }));
  return drinkFrom(plan, mixedOf(poured(lines, concentrate), true))!;
}

/** mg of the whole formula per kg of drink. */
export function doseIn({ reached }: Made): number {
  return reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0);
}

/** The concentrate as what is in it. */
function poured<P extends Pick<Pour, 'goods'>>(pours: readonly P[], { contents }: Mixture): P[] {
  return pours.map((pour) => (pour.goods.id === CONCENTRATE ? { ...pour, goods: { ...pour.goods, contents } } : pour));
}

/** What the rules say of it. */
export function judgeDrink(run: RunState, plan: Plan, made: Made): Judgement | null {
  const drink = { abv: made.abv.value, density: made.densityGPerMl.value };
  return judgeBetween(answered(run, plan.emulsion !== null), { parts: made.parts, drink, most: made.mostAbv });
}

function drinkFrom(plan: Plan, mixture: Mixture | null): Made | null {
  if (!mixture) return null;
  const [sugar, ethanol] = [shareIn(mixture, SUGAR), shareIn(mixture, ETHANOL)];
  const densityGPerMl = densityWithin(sugar, ethanol);
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  const unknown = new Map(
    [...plan.concentrate, ...plan.syrup, ...plan.late]
      .flatMap(({ goods }) => goods.unknown ?? [])
      .map((one) => [one.id, one.name]),
  );
  const most = [...unknown.keys()].reduce((sum, id) => sum + shareIn(mixture, id).value, ethanol.value);
  const inIt = (id: string) => scaled(shareIn(mixture, id), PPM);
  return {
    mixture,
    densityGPerMl,
    brix: scaled(sugar, 100),
    abv: scaled(times(ethanol, densityGPerMl), 100 / pure),
    unknown: [...unknown.values()],
    mostAbv: (100 * most * densityGPerMl.value) / pure,
    litres: scaled(over(mixture.mass, densityGPerMl), 1 / 1000), // mL per L
    reached: plan.recipe.lines.map(({ material, name }) => ({
      material,
      name,
      mgPerKg: inIt(material),
      mgPerL: times(inIt(material), densityGPerMl),
    })),
    parts: partsOf(plan, mixture),
  };
}

/** Everything in the drink that is judged. */
function partsOf(plan: Plan, mixture: Mixture): Part[] {
  const goods = [...plan.concentrate, ...plan.syrup, ...plan.late].map((one) => one.goods);
  const brought = goods.flatMap(({ source }) => (source?.vial ? carriersOf(source.vial) : []));
  return mixture.contents.flatMap(({ material: id, strength }): Part[] => {
    if (isPlain(id)) return [];
    const known = goods.find((one) => one.id === id);
    const mgPerKg = scaled(strength, PPM);
    if (known) return [partOf(known, mgPerKg)];
    const { name = id, cas } = brought.find((one) => one.id === id) ?? {};
    return [{ id, name, mgPerKg, carrier: true, ...(cas === undefined ? {} : { cas }) }]; // what came along in a vial
  });
}

function partOf({ id, name, cas, source, beside }: Goods, mgPerKg: Measured): Part {
  return {
    id,
    name,
    mgPerKg,
    ...(cas === undefined ? {} : { cas }),
    ...(source ? { bottles: bottlesBehind(source, id) } : {}),
    ...(beside === 'fixed' ? { fixed: true } : {}),
    ...(beside === 'carrier' ? { carrier: true } : {}),
  };
}

/** The bottles that a material comes from: their certificates count. */
function bottlesBehind({ bottle, vial }: Source, material: string): Bottle[] {
  if (bottle) return [bottle];
  return vial ? bottlesOf(vial).filter((one) => one.material === material) : [];
}
