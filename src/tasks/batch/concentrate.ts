import { gram } from '../../core/number/units';
import { weighList, type WeighList, type WeighStep } from '../../core/drink/weighList';
import { find } from '../../records/shelf';
import { gumArabic } from '../../tables/syrupAdditives';
import type { RunState } from '../engine/fold';
import { keyNow, timesBegun } from './plan/begun';
import { spareFactor } from './plan/drinkAsked';
import { EMULSION_WATER, type Goods } from './plan/goods';
import type { Plan as Plan } from './plan/planParts';
import { isWeighedAsBefore } from './plan/weighedAsBefore';
import { strongestStock } from './plan/strongestStock';
import { massAt, scaleFor, type Pour } from './pour';
import { stockOf } from './stock';
import { filled, rescueOf, type Vessel } from './vessel';

interface Weighing {
  readonly run: RunState;
  readonly list: WeighList;
  /** Id of what the others are diluted with; it fills up. */
  readonly fill: string;
  readonly goods: (id: string) => Goods;
}

/** g of each step at factor 1, as it stands now: a stock that came out stronger is drawn less of. */
type Bases = ReadonlyMap<string, number>;

/** The concentrate, smallest first, rescued as was chosen. */
export function concentrateVessel(run: RunState, plan: Plan, least: number): Vessel {
  const { list, fill } = listOf(plan, { least, times: spareFactor(run), isOlder: isWeighedAsBefore(run) });
  const goods = (id: string) => plan.concentrate.find((one) => one.goods.id === id)!.goods;
  const bases = new Map<string, number>();
  return filled(run, list.steps, (step, so) => nextPour({ run, list, fill, goods }, step, { ...so, bases }));
}

function nextPour(weighing: Weighing, step: WeighStep, so: Vessel & { bases: Map<string, number> }): Pour {
  const { run, list, fill, goods } = weighing;
  const { bases, factor, pours } = so;
  const { id } = step;
  const times = timesBegun(run, 'concentrate');
  const stock = stockOf(run, keyNow(`t.${id}`, times), step.diluted, { from: goods(id), carrier: goods(fill) });
  const base = id === fill ? step.mass + shift(list, bases) : stock ? step.neat / stock.share.value : step.mass;
  bases.set(id, base);
  const key = keyNow(`c.${id}`, times);
  const scale = scaleFor(run, factor * base);
  const pour = {
    key,
    id,
    scale,
    target: factor * base,
    mass: massAt(run, key, { of: goods(id).name, scale }),
  };
  const planned = list.steps.map((one) => ({ id: one.id, mass: gram(factor * (bases.get(one.id) ?? one.mass)) }));
  return {
    ...pour,
    into: 'concentrate',
    stock,
    again: false,
    tooSmall: !step.enough,
    goods: stock?.goods ?? goods(id),
    rescue: rescueOf(run, pour, { planned, pours }),
  };
}

/** What the filling material gains because stocks were drawn on less than planned, g. */
function shift(list: WeighList, bases: Bases): number {
  return list.steps.reduce((sum, { id, mass, diluted }) => sum + (diluted ? mass - (bases.get(id) ?? mass) : 0), 0);
}

/** The list for the scale, `times` what the drink needs, and what fills up: the carrier, or for an emulsion its largest liquid oil; its water phase comes after its oils. */
function listOf(
  { concentrate, emulsion }: Plan,
  how: { least: number; times: number; isOlder: boolean },
): { list: WeighList; fill: string } {
  const { least, times } = how;
  const parts = concentrate.map(({ goods, mass }) => ({ id: goods.id, mass: gram(mass * times) }));
  const wet = emulsion ? [gumArabic.id, EMULSION_WATER] : [];
  const dry = parts.filter(({ id }) => !wet.includes(id));
  const oils = emulsion ? concentrate.filter(({ goods }) => goods.source !== null && !wet.includes(goods.id)) : [];
  const liquid = oils.filter(({ goods }) => find('material', goods.id)?.form !== 'solid');
  const largest = [...(liquid.length > 0 ? liquid : oils)].sort((one, two) => two.mass - one.mass)[0];
  const fill = largest?.goods.id ?? parts.at(-1)!.id;
  const goods = (id: string) => concentrate.find((one) => one.goods.id === id)!.goods;
  const list = weighList(dry, fill, {
    least: gram(least),
    ...(how.isOlder ? {} : { most: (id: string) => strongestStock(goods(id), fill) }),
  });
  const rest = parts
    .filter(({ id }) => wet.includes(id))
    .map(({ id, mass }): WeighStep => ({ id, mass, neat: mass, enough: mass >= least, diluted: null }));
  return { list: { ...list, steps: [...list.steps, ...rest] }, fill };
}
