import { balanced, baseToPh, type Sour } from '../../../core/acid/solution';
import { brixAcidRatio, sourDrink, titratable } from '../../../core/acid/weighed';
import type { Mixture } from '../../../core/drink/mixture';
import { sourGoods } from '../../../tables/keeping/acidity';
import { outcome } from '../../../workshop/attempt';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { oncePerRun } from '../../engine/oncePerRun';
import { asked } from '../plan/asked';
import { amountIn, keepAsked } from '../plan/keepAsked';
import type { Goods } from '../plan/goods';
import { planOf } from '../plan/plan';
import type { Plan } from '../plan/planParts';

/** How sour the drink is: pH as measured, else computed, g/L of titratable acid as citric, and the ratio of °Brix to acid. */
export interface Acidity {
  readonly sour: Sour;
  readonly ph: number;
  readonly isMeasured: boolean;
  readonly computed: number;
  readonly acidGPerL: number;
  readonly ratio: number;
}

/** Strongest drink for which a pH computed in water is said, % ABV. Our choice: alcohol makes acids weaker, about 0.1 in 10 %. */
export const MOST_ABV = 15;

/** g/L of titratable acid below which the water alone makes the pH, so that none is said. Our choice: a twentieth of a mild drink's. */
export const HARDLY = 0.05;

/** How sour the drink is as it is planned; null until there is a plan, or where activities are not known. */
export const acidityOf = oncePerRun((run: RunState): Acidity | null => {
  const plan = outcome(() => planOf(run)).value;
  if (!plan) return null;
  const measured = answer(run, keepAsked(run).ph);
  const sour = drinkSour(run, plan);
  const all = outcome(() => ({ ph: balanced(sour).ph, acidGPerL: titratable(sour) })).value;
  if (!all) return null;
  const { brix } = plan.batch.drink;
  return {
    sour,
    ph: measured ?? all.ph,
    isMeasured: measured !== null,
    computed: all.ph,
    acidGPerL: all.acidGPerL,
    ratio: brixAcidRatio(brix * 100, all.acidGPerL, plan.drink.densityGPerMl),
  };
});

/** The same of the drink as it was weighed, with its litres; null where activities are not known. pH and g/L as citric. */
export function weighedAcidity(run: RunState, { mass, contents }: Mixture, litres: number) {
  const sour = sourOf(perLitre([{ mass: mass.value, goods: { contents } }], litres), inWater(run));
  return outcome(() => ({ ph: balanced(sour).ph, acidGPerL: titratable(sour) })).value;
}

/** Alkalinity of the water, mg/L, and volumes of gas. */
function inWater(run: RunState): { alkalinity: number; volumes: number } {
  return { alkalinity: amountIn(run, keepAsked(run).alkalinity), volumes: answer(run, asked(run).volumes) ?? 0 };
}

/** What is sour in the planned drink, with `more` g/L of something in place of what is planned of it. */
export function drinkSour(run: RunState, plan: Plan, more: Readonly<Record<string, number>> = {}): Sour {
  const litres = plan.batch.drink.volume / 1000;
  const held = perLitre([...plan.syrup, ...plan.concentrate, ...plan.late], litres);
  return sourOf({ ...held, ...more }, inWater(run));
}

/** The same as it was measured: what the list does not name counts as cations or, below zero, as strong acid, so that its pH is that of the trial. */
export function measuredSour(run: RunState, plan: Plan, more: Readonly<Record<string, number>> = {}): Sour {
  const [sour, measured] = [drinkSour(run, plan, more), answer(run, keepAsked(run).ph)];
  if (measured === null) return sour;
  return { ...sour, cations: sour.cations + baseToPh(drinkSour(run, plan), measured) };
}

/** g of something, and what is in it. */
interface Held {
  readonly mass: number;
  readonly goods: Pick<Goods, 'contents'>;
}

/** g of each thing that is sour, by id, in a litre. */
function perLitre(all: readonly Held[], litres: number): Record<string, number> {
  const grams: Record<string, number> = {};
  for (const { goods, mass } of all)
    for (const { material, strength } of goods.contents)
      if (material in sourGoods) grams[material] = (grams[material] ?? 0) + (mass * strength.value) / litres;
  return grams;
}

/** What is sour in a litre that holds so many g of each, by id. */
export function sourOf(
  grams: Readonly<Record<string, number>>,
  { alkalinity, volumes }: { alkalinity: number; volumes: number },
): Sour {
  const goods = Object.entries(grams).map(([id, gramsPerL]) => ({ goods: sourGoods[id]!, gramsPerL }));
  return sourDrink({ goods, alkalinityMgPerL: alkalinity, volumes });
}
