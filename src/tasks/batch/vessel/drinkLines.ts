import { CONCENTRATE, WATER } from '../../../core/drink/batchPlan';
import type { Weighed } from '../../../records/kind/batch';
import { pure, type Planned } from '../plan/goods';
import type { Plan } from '../plan/planParts';

/** A line of the drink: what goes in, where, and how many g for one time the plan. */
export interface DrinkLine extends Planned {
  readonly id: string;
  readonly into: Weighed['into'];
}

/** The syrup in the order it is made, the concentrate last, and the water that it is thrown with; or the concentrate after that water. */
export function drinkLines(plan: Plan, concentrate: number, isInSyrup = true): DrinkLine[] {
  const into = plan.water > 0 || plan.late.length > 0 ? 'syrup' : 'drink';
  const line = (one: Planned, where: DrinkLine['into']) => ({ ...one, id: `s.${one.goods.id}`, into: where });
  const syrup = plan.syrup.map((one) => line(one, into));
  const own = { goods: pure(CONCENTRATE, 'the concentrate'), mass: concentrate };
  const late = plan.late.map((one): DrinkLine => ({ ...one, id: `d.${one.goods.id}`, into: 'drink' }));
  const water: DrinkLine = { id: `d.${WATER}`, into: 'drink', goods: pure(WATER, 'water'), mass: plan.water };
  const rest = plan.water > 0 ? [water, ...late] : late;
  return isInSyrup || into === 'drink' ? [...syrup, line(own, into), ...rest] : [...syrup, ...rest, line(own, 'drink')];
}
