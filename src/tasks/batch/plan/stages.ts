/** What is asked of each liquid of the batch: of its carrier, of the syrup before it is thrown, and of the drink. */
import { CONCENTRATE, SUGAR, WATER } from '../../../core/drink/batchPlan';
import type { Verdict } from '../../../core/liquid/cosolvency';
import { judgeStage, type Solute, type Stage } from '../../../core/liquid/stage';
import type { Batch } from '../../../records/kind/batch';
import { find } from '../../../records/shelf';
import { acids, preservatives } from '../../../tables/syrupAdditives';
import { outcome } from '../../../workshop/attempt';
import { freeAcid, mediumOf, solutesOf, solventIn, solventSolutes } from '../../../workshop/liquidStage';
import { solventsOnHand } from '../../../workshop/onHand';
import { answer } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { oncePerRun } from '../../engine/oncePerRun';
import { ofThisRecipe } from './asked';
import { madeAgain, timesBefore } from './before';
import { fields } from './fields';
import { EMULSION_WATER, ETHANOL, type Planned } from './goods';
import { planOf } from './plan';
import type { Plan } from './planParts';

export type StageName = 'concentrate' | 'syrup' | 'drink';

/** The answer for one of them. */
export interface StageAt {
  readonly name: StageName;
  readonly stage: Stage;
}

/** All stages of a batch that are known, in the order in which it is made. */
export const stagesOf = oncePerRun((run: RunState): readonly StageAt[] => {
  const plan = outcome(() => planOf(run)).value;
  if (!plan) return [];
  const isThrown = plan.water > 0;
  const concentrate = plan.emulsion ? [] : [{ name: 'concentrate' as const, stage: concentrateStage(plan) }];
  const syrup = isThrown ? [{ name: 'syrup' as const, stage: syrupStage(plan, intoSyrup(run)) }] : [];
  return [...concentrate, ...syrup, { name: 'drink', stage: drinkStage(plan) }];
});

/** Whether the concentrate goes into the syrup, or into the drink once it is thrown. */
export function intoSyrup(run: RunState): boolean {
  return answer(run, intoField(run)) === 'syrup';
}

/** As then where it is made exactly again, and into the syrup as in runs of older versions; else where it stays dissolved. */
export function intoField(run: RunState): Field<'syrup' | 'drink'> {
  const then = answer(run, fields.exactly) === null ? undefined : madeAgain(run);
  const isOlder = 'recipe' in run.done || 'what' in run.done;
  const usual = then ? intoThen(then) : isOlder ? 'syrup' : usualInto(run);
  return asBefore(ofThisRecipe(run), fields.into, timesBefore(run).same, usual);
}

function intoThen({ weighed }: Batch): 'syrup' | 'drink' {
  const isThrown = weighed.some(({ into }) => into === 'syrup');
  return isThrown && weighed.find(({ id }) => id === CONCENTRATE)?.into === 'drink' ? 'drink' : 'syrup';
}

/** Into the drink where the syrup holds less of it than the drink does. */
const usualInto = oncePerRun((run: RunState): 'syrup' | 'drink' => {
  const plan = outcome(() => planOf(run)).value;
  if (!plan || plan.water === 0 || plan.emulsion) return 'syrup';
  const isWorse = rankOf(syrupStage(plan, true).verdict) > rankOf(drinkStage(plan).verdict);
  return isWorse ? 'drink' : 'syrup';
});

/** 0 where it dissolves, 2 where it does not. */
export function rankOf(verdict: Verdict): number {
  return ['dissolves', 'try it', 'stays cloudy'].indexOf(verdict);
}

function concentrateStage({ concentrate }: Plan): Stage {
  const ml = concentrate.reduce((sum, { goods, mass }) => sum + mass / densityOf(goods.id), 0);
  return stageOf(concentrate, { ml, isCarrier: true, hasAcid: false });
}

/** The syrup as it is before it is thrown. Of an emulsion only what its water holds is dissolved. */
function syrupStage(plan: Plan, hasConcentrate: boolean): Stage {
  const { syrup } = plan.batch;
  const parts = hasConcentrate && !plan.emulsion ? [...plan.concentrate, ...plan.syrup] : plan.syrup;
  return stageOf(parts, { ml: syrup.mass / syrup.density, isCarrier: false, hasAcid: hasAcid(plan) });
}

function drinkStage(plan: Plan): Stage {
  const water = { goods: { id: WATER, name: WATER, source: null, contents: WATER_ONLY }, mass: plan.water };
  const dissolved = plan.emulsion ? plan.syrup : [...plan.concentrate, ...plan.syrup];
  return stageOf([...dissolved, water], { ml: plan.batch.drink.volume, isCarrier: false, hasAcid: hasAcid(plan) });
}

const WATER_ONLY = [{ material: WATER, strength: { value: 1, sources: [] } }];

function hasAcid({ syrup }: Plan): boolean {
  return syrup.some(({ goods }) => acids.some(({ id }) => id === goods.id));
}

/** g/mL at 20 °C of a solvent or material; what no one has looked up counts as the mean of aroma materials. */
function densityOf(id: string): number {
  const known = solventsOnHand().find((one) => one.id === id)?.density ?? find('material', id)?.density;
  return known?.gPerMl ?? 0.95;
}

interface LiquidOf {
  readonly ml: number;
  /** The carrier itself is the liquid; in syrup and drink it is one of the things that are asked of the water. */
  readonly isCarrier: boolean;
  /** An acid sets the acids of preservatives free. */
  readonly hasAcid: boolean;
}

/** What all of that asks of the liquid it makes together. */
function stageOf(parts: readonly Planned[], liquid: LiquidOf): Stage {
  const { ml } = liquid;
  const grams = new Map<string, number>();
  for (const { goods, mass } of parts)
    for (const { material, strength } of goods.contents)
      grams.set(material, (grams.get(material) ?? 0) + mass * strength.value);
  const of = (...ids: readonly string[]) => ids.reduce((sum, id) => sum + (grams.get(id) ?? 0), 0);
  const solvents = solventsOnHand().filter(({ id }) => grams.has(id) && id !== 'water');
  const held = solvents.map(({ id, density, abv }) => solventIn(id, grams.get(id)!, density.gPerMl, abv));
  const medium = mediumOf({
    ml,
    grams: [...grams.values()].reduce((sum, one) => sum + one, 0),
    waterG: of(WATER, EMULSION_WATER) + held.reduce((sum, one) => sum + one.waterG, 0),
    ethanolG: of(ETHANOL) + held.reduce((sum, one) => sum + one.ethanolG, 0),
    sugarG: of(SUGAR),
    solvents: held.flatMap((one) => one.solvents),
  });
  const perL = (id: string) => (grams.get(id)! * 1e6) / ml; // g per mL to mg per L
  const solutes = [...grams.keys()].flatMap((id) => solutesIn(parts, id, { ...liquid, mgPerL: perL(id) }));
  return judgeStage(solutes, medium);
}

/** What one thing in it asks: a material, a solvent that does not mix with water, the free acid of a preservative in an acid liquid. */
function solutesIn(parts: readonly Planned[], id: string, so: LiquidOf & { mgPerL: number }): Solute[] {
  const salt = preservatives.find((one) => one.id === id);
  if (salt && so.hasAcid) {
    const { acidMolarMass, molarMass } = salt.preservative;
    return freeAcid(id, salt.acid, (so.mgPerL * acidMolarMass) / molarMass);
  }
  const solvent = solventsOnHand().find((one) => one.id === id);
  if (solvent) return so.isCarrier ? [] : solventSolutes(id, solvent.name, so.mgPerL);
  const name = parts.find(({ goods }) => goods.id === id)?.goods.name;
  return find('material', id) && name ? solutesOf(id, name, so.mgPerL) : [];
}
