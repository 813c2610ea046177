import { CONCENTRATE, SUGAR, WATER } from '../../core/drink/batchPlan';
import { gram } from '../../core/number/units';
import type { Rescue } from '../../core/drink/weighList';
import type { Weighed } from '../../records/kind/batch';
import type { RunState } from '../engine/fold';
import { keyNow, timesBegun } from './plan/begun';
import { pure, SPIRIT, type Planned } from './plan/goods';
import type { Plan } from './plan/planParts';
import { intoSyrup } from './plan/stages';
import { leastOf, massAt, scaleFor, stepOf, type Pour } from './pour';
import { filled, rescueOf, type Vessel } from './vessel';

/** A line of the drink: what goes in, where, and how many g for one time the plan. */
export interface DrinkLine extends Planned {
  readonly id: string;
  readonly into: Weighed['into'];
}

/** g of the concentrate that the drink asks for, and that there are. */
interface Supply {
  readonly needed: number;
  readonly there: number;
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

/** Syrup and drink as far as they are weighed, rescued as was chosen. */
export function drinkVessel(run: RunState, plan: Plan, supply: Supply): Vessel {
  const lines = drinkLines(plan, supply.needed, intoSyrup(run));
  return filled(run, lines, (line, so) => nextPour(run, line, { ...so, lines, there: supply.there }));
}

function nextPour(
  run: RunState,
  { id, into, goods, mass }: DrinkLine,
  so: Vessel & { lines: readonly DrinkLine[]; there: number },
): Pour {
  const { lines, there, factor, pours } = so;
  const target = goods.id === CONCENTRATE ? Math.min(factor * mass, there) : factor * mass;
  const scale = scaleFor(run, target, [SUGAR, WATER, SPIRIT].includes(goods.id) ? 'coarse' : 'fine');
  const of = id === `d.${WATER}` ? 'the water that it is thrown with' : goods.name;
  const key = keyNow(id, timesBegun(run, 'drink'));
  const pour = { key, id, into, goods, scale, target, mass: massAt(run, key, { of, scale }) } as const;
  const planned = lines.map((one) => ({ id: one.id, mass: gram(factor * one.mass) }));
  const rescue = rescueOf(run, pour, { planned, pours });
  return {
    ...pour,
    stock: null,
    again: false,
    tooSmall: target < (leastOf(run, scale) ?? 0),
    rescue: rescue && within(run, rescue, { pours: [...pours, pour], there }),
  };
}

/** No more of the concentrate is asked for than is left; less than a step of the scale is nothing. */
function within(
  run: RunState,
  rescue: Rescue,
  so: { pours: readonly Pick<Pour, 'id' | 'goods' | 'mass'>[]; there: number },
): Rescue {
  const own = so.pours.filter(({ goods }) => goods.id === CONCENTRATE);
  const left = so.there - own.reduce((sum, { mass }) => sum + (mass?.value ?? 0), 0);
  const rest = left < stepOf(run, 'fine') ? 0 : left;
  const add = rescue.add.map((one) =>
    own.some(({ id }) => id === one.id) ? { id: one.id, mass: gram(Math.min(one.mass, rest)) } : one,
  );
  return { ...rescue, add };
}
