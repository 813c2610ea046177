import { CONCENTRATE, SUGAR, WATER } from '../../../core/drink/batchPlan';
import { gram } from '../../../core/number/units';
import type { Rescue } from '../../../core/drink/weighList';
import type { RunState } from '../../engine/fold';
import { keyNow, timesBegun } from '../plan/begun';
import { pure, SPIRIT } from '../plan/goods';
import type { Plan } from '../plan/planParts';
import { drinkLines } from './drinkLines';
import { withStocks, type WeighedLine } from './drinkStocks';
import { leastOf, massAt, scaleFor, stepOf, type Pour, type Stock } from './pour';
import { stockOf } from './stock';
import { intoSyrup } from '../plan/stages';
import { filled, rescueOf, type Vessel } from './vessel';

/** g of the concentrate that the drink asks for, and that there are. */
interface Supply {
  readonly needed: number;
  readonly there: number;
}

/** Syrup and drink as far as they are weighed, rescued as was chosen. */
export function drinkVessel(run: RunState, plan: Plan, supply: Supply): Vessel {
  const lines = withStocks(run, drinkLines(plan, supply.needed, intoSyrup(run)));
  const bases = new Map(lines.map(({ id, onScale }) => [id, onScale])); // of a stock that came out stronger less is drawn
  return filled(run, lines, (line, so) => nextPour(run, line, { ...so, bases, there: supply.there }));
}

function nextPour(run: RunState, line: WeighedLine, so: Vessel & { bases: Map<string, number>; there: number }): Pour {
  const { id, into, goods } = line;
  const { bases, there, factor, pours } = so;
  const stock = stockIn(run, line);
  if (stock) bases.set(id, line.mass / stock.share.value);
  const whole = factor * bases.get(id)!;
  const target = goods.id === CONCENTRATE ? Math.min(whole, there) : whole;
  const scale = scaleFor(run, target, [SUGAR, WATER, SPIRIT].includes(goods.id) ? 'coarse' : 'fine');
  const of = id === `d.${WATER}` ? 'the water that it is thrown with' : goods.name;
  const key = keyNow(id, timesBegun(run, 'drink'));
  const pour = { key, id, into, scale, target, mass: massAt(run, key, { of, scale }) } as const;
  const planned = [...bases].map(([one, mass]) => ({ id: one, mass: gram(factor * mass) }));
  const rescue = rescueOf(run, pour, { planned, pours });
  const now = { ...pour, goods: stock?.goods ?? goods };
  return {
    ...now,
    stock,
    again: false,
    tooSmall: target < (leastOf(run, scale) ?? 0),
    rescue: rescue && within(run, rescue, { pours: [...pours, now], there }),
  };
}

/** What is diluted with water to be weighed; null where nothing has to be. */
function stockIn(run: RunState, { goods, diluted }: WeighedLine): Stock | null {
  const key = keyNow(`w.${goods.id}`, timesBegun(run, 'drink'));
  return stockOf(run, key, diluted, { from: goods, carrier: pure(WATER, 'water') });
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
