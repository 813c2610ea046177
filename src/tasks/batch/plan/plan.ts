import { CONCENTRATE, planBatch, SUGAR, WATER, type BatchPlan, type PlannedMass } from '../../../core/drink/batchPlan';
import { concentrateFor } from '../../../core/drink/concentrate';
import { gram, massFraction, millilitre } from '../../../core/number/units';
import { acids, preservatives } from '../../../tables/syrupAdditives';
import { syrupExtras } from '../../../tables/keeping/syrupExtras';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { asked } from './asked';
import { carrierBottleOf } from './carrierBottle';
import { emulsionGoods, isEmulsion } from './emulsion';
import { extrasFor } from './extras';
import {
  acidGoods,
  carrierGoods,
  ETHANOL,
  ethanolIn,
  massOf,
  OWN_ACID,
  pure,
  SPIRIT,
  type Goods,
  type Planned,
} from './goods';
import { broughtIn, ownPlanned } from './ingredients';
import { spiritChosen } from './spiritBottle';
import { oncePerRun } from '../../engine/oncePerRun';
import type { Basis, Plan } from './planParts';
import { recipeOf } from './recipe';
import { carrierOf, drinkOf, materialsOf } from './drinkAsked';
import { Refusal } from '../../../core/text/refusal';

/** Materials and their masses. @throws Refusal when the dosage cannot hold them */
export function basisOf(run: RunState, factor = 1): Basis | null {
  return factor === 1 ? basisAsAsked(run) : basisTimes(run, factor);
}

const basisAsAsked = oncePerRun((run: RunState) => basisTimes(run, 1));

function basisTimes(run: RunState, factor: number): Basis | null {
  const recipe = recipeOf(run);
  const drink = drinkOf(run);
  const gramsPerL = answer(run, asked(run).dosage);
  const materials = recipe && materialsOf(run, recipe);
  if (!recipe || !drink || !materials || gramsPerL === null) return null;
  const ml = drink.litres * 1000 * factor;
  const mgPerL = drink.mgPerKg * drink.densityGPerMl;
  const formula = recipe.lines.map(({ material, share }) => ({ id: material, share: massFraction(share) }));
  const made = concentrateFor(formula, { mgPerL, gramsPerL, drink: millilitre(ml) });
  const lines = materials.map((goods, i) => ({
    goods,
    mass: made.lines[i]!.mass / goods.source!.strength.value,
  }));
  return { recipe, drink, materials, gramsPerL, lines, ml };
}

/** The batch, `factor` times what was asked for; null until it is known. @throws Refusal when it cannot be made so */
export function planOf(run: RunState, factor = 1): Plan | null {
  return factor === 1 ? onceAsAsked(run) : planTimes(run, factor);
}

const onceAsAsked = oncePerRun((run: RunState) => planTimes(run, 1));

function planTimes(run: RunState, factor: number): Plan | null {
  const basis = basisOf(run, factor);
  if (!basis) return null;
  const filled = factor === 1 ? concentrateOf(run) : concentrateFrom(run, basis);
  if (!filled) return null;
  const own = ownPlanned(run, factor);
  if (!own) return null;
  const spirit = spiritOf(run, basis, [...filled.concentrate, ...own]);
  const [early, late] = [own.filter(({ into }) => into === 'syrup'), own.filter(({ into }) => into === 'drink')];
  const parts = { early: [...filled.concentrate, ...spirit, ...early], late };
  const batch = batchPlanOf(run, basis, { ...parts, brought: broughtIn(own, filled.concentrate) });
  const { recipe, drink, gramsPerL } = basis;
  const syrup = [...syrupGoods(batch), ...spirit, ...early];
  return { recipe, drink, gramsPerL, ...filled, syrup, late, water: batch.water, batch };
}

/** The concentrate: in its carrier, or as an emulsion; null until it is known. @throws Refusal when it has no room */
export const concentrateOf = oncePerRun((run: RunState) => {
  const basis = basisOf(run);
  return basis && concentrateFrom(run, basis);
});

function concentrateFrom(run: RunState, basis: Basis): Pick<Plan, 'concentrate' | 'emulsion'> | null {
  return isEmulsion(run) ? emulsionGoods(run, basis) : clearGoods(run, basis);
}

function clearGoods(run: RunState, basis: Basis): Pick<Plan, 'concentrate' | 'emulsion'> | null {
  const solvent = carrierOf(run);
  if (!solvent) return null;
  const whole = (basis.gramsPerL * basis.ml) / 1000; // mL per L
  const carrier = whole - massOf(basis.lines);
  if (!(carrier >= 0))
    throw new Refusal(
      'what is weighed from vials is already {dosed} g per litre of drink: dose more than {gramsPerL} g/L',
      { dosed: { value: (1000 * massOf(basis.lines)) / basis.ml, figures: 3 }, gramsPerL: basis.gramsPerL },
    );
  return {
    concentrate: [...basis.lines, { goods: carrierGoods(solvent, carrierBottleOf(run)), mass: carrier }],
    emulsion: null,
  };
}

/** The spirit that brings the drink to its strength, beside what carriers bring. */
function spiritOf(run: RunState, { drink, ml }: Basis, concentrate: readonly Planned[]): Planned[] {
  const goods = drink.abv === 0 ? null : spiritChosen(run);
  if (!goods) return [];
  const brought = concentrate.reduce((sum, one) => sum + one.mass * ethanolIn(one.goods), 0);
  const missing = drink.make.ethanol * ml * drink.densityGPerMl - brought;
  return missing > 0 ? [{ goods, mass: missing / ethanolIn(goods) }] : [];
}

interface Poured {
  readonly early: readonly Planned[];
  readonly late: readonly Planned[];
  readonly brought: ReturnType<typeof broughtIn>;
}

function batchPlanOf(run: RunState, { drink, ml }: Basis, { early, late, brought }: Poured): BatchPlan {
  const now = asked(run);
  const acid = acids.find(({ id }) => id === answer(run, now.acid));
  const amounts = {
    'sodium-benzoate': answer(run, now.benzoate),
    'potassium-sorbate': answer(run, now.sorbate),
  };
  const ethanol = [...early, ...late].reduce((sum, one) => sum + one.mass * ethanolIn(one.goods), 0);
  return planBatch({
    drink: millilitre(ml),
    brix: drink.make.brix,
    throw: { parts: answer(run, now.parts) ?? 0, by: answer(run, now.by) ?? 'volume' },
    acid: acid ? { id: acid.id, acid: acid.acid, citricPerL: answer(run, now.acidity) ?? 0 } : null,
    preservatives: preservatives.map(({ id, preservative }) => ({
      id,
      preservative,
      acidMgPerL: amounts[id as keyof typeof amounts] ?? 0,
    })),
    brought,
    also: extrasFor(run, ml / 1000),
    concentrate: {
      parts: early.map(({ goods, mass }): PlannedMass => ({ id: goods.id, mass: gram(mass) })),
      ethanol: gram(ethanol),
    },
  });
}

function syrupGoods({ syrup }: BatchPlan): Planned[] {
  return syrup.parts.filter(({ id }) => id !== CONCENTRATE).map(({ id, mass }) => ({ goods: syrupPart(id), mass }));
}

function syrupPart(id: string): Goods {
  if (id === SUGAR) return pure(SUGAR, 'sugar');
  if (id === WATER) return pure(WATER, 'water');
  const acid = acids.find((one) => one.id === id);
  if (acid) return acidGoods(acid);
  const known = [...preservatives, ...syrupExtras].find((one) => one.id === id)!;
  return pure(id, known.name, { cas: known.cas, beside: 'fixed' });
}

/** True for what is no part of the flavour: it is not judged. */
export function isPlain(id: string): boolean {
  return [SUGAR, WATER, ETHANOL, SPIRIT, OWN_ACID].includes(id);
}
