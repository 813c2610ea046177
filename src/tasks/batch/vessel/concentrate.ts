import { WATER, type PlannedMass } from '../../../core/drink/batchPlan';
import { gram } from '../../../core/number/units';
import { weighList, type WeighList, type WeighStep } from '../../../core/drink/weighList';
import { find } from '../../../records/shelf';
import { emulsifiers } from '../../../tables/emulsion/emulsifiers';
import type { RunState } from '../../engine/fold';
import { keyNow, timesBegun } from '../plan/begun';
import { spareFactor } from '../plan/drinkAsked';
import { EMULSION_WATER, type Goods } from '../plan/goods';
import { isOfOil, isOfOneVessel } from '../plan/phases';
import type { Plan as Plan } from '../plan/planParts';
import { isWeighedAsBefore } from '../plan/weighedAsBefore';
import { strongestStock } from '../plan/strongestStock';
import { massAt, scaleFor, type Pour } from './pour';
import { stockOf } from './stock';
import { filled, rescueOf, type Vessel } from './vessel';

/** A list, and the id of what each is diluted with: it fills up its vessel. */
interface Filling {
  readonly list: WeighList;
  readonly fillOf: (id: string) => string;
}

interface Weighing extends Filling {
  readonly run: RunState;
  readonly goods: (id: string) => Goods;
}

/** g of each step at factor 1, as it stands now: a stock that came out stronger is drawn less of. */
type Bases = ReadonlyMap<string, number>;

/** The concentrate, smallest first, rescued as was chosen. */
export function concentrateVessel(run: RunState, plan: Plan, least: number): Vessel {
  const { list, fillOf } = listOf(run, plan, { least, times: spareFactor(run) });
  const goods = (id: string) => plan.concentrate.find((one) => one.goods.id === id)!.goods;
  const bases = new Map<string, number>();
  return filled(run, list.steps, (step, so) => nextPour({ run, list, fillOf, goods }, step, { ...so, bases }));
}

function nextPour(weighing: Weighing, step: WeighStep, so: Vessel & { bases: Map<string, number> }): Pour {
  const { run, list, fillOf, goods } = weighing;
  const { bases, factor, pours } = so;
  const { id } = step;
  const fill = fillOf(id);
  const times = timesBegun(run, 'concentrate');
  const stock = stockOf(run, keyNow(`t.${id}`, times), step.diluted, { from: goods(id), carrier: goods(fill) });
  const base = id === fill ? step.mass + shift(weighing, id, bases) : stock ? step.neat / stock.share.value : step.mass;
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

/** What the filling material gains because stocks of its vessel were drawn on less than planned, g. */
function shift({ list, fillOf }: Filling, fill: string, bases: Bases): number {
  const own = list.steps.filter(({ id, diluted }) => diluted && fillOf(id) === fill);
  return own.reduce((sum, { id, mass }) => sum + mass - (bases.get(id) ?? mass), 0);
}

/** The list for the scale, `times` what the drink needs, and what fills up each vessel. */
function listOf(run: RunState, plan: Plan, how: { least: number; times: number }): Filling {
  const { least, times } = how;
  const parts = plan.concentrate.map(({ goods, mass }) => ({ id: goods.id, mass: gram(mass * times) }));
  if (plan.emulsion) return isOfOneVessel(run) ? oneVessel(plan, parts, least) : twoVessels(plan, parts, least);
  const carrier = parts.at(-1)!.id;
  const most = isWeighedAsBefore(run) ? undefined : mostIn(plan, carrier);
  return { list: weighList(parts, carrier, { least: gram(least), ...(most && { most }) }), fillOf: () => carrier };
}

/** Oils and weighting agent in one vessel, which the largest liquid oil fills; water, what is dissolved in it, and the gum in the other. */
function twoVessels(plan: Plan, parts: readonly PlannedMass[], least: number): Filling {
  const emulsifier = emulsifiers.find(({ id }) => parts.some((one) => one.id === id))!;
  const isWet = (id: string) => id === EMULSION_WATER || (isMaterial(plan, id) && !isOfOil(id));
  const oils = parts.filter(({ id }) => !isWet(id) && id !== emulsifier.id);
  const fill = largestLiquid(plan, isWet);
  const scale = { least: gram(least) };
  const wet = weighList(
    parts.filter(({ id }) => isWet(id)),
    EMULSION_WATER,
    { ...scale, most: mostIn(plan, WATER) },
  );
  const gum = weighList(
    parts.filter(({ id }) => id === emulsifier.id),
    emulsifier.id,
    scale,
  );
  const steps = [...weighList(oils, fill, { ...scale, most: mostIn(plan, fill) }).steps, ...wet.steps, ...gum.steps];
  return { list: { steps, least: scale.least }, fillOf: (id) => (isWet(id) ? EMULSION_WATER : fill) };
}

/** What of each may be diluted in a carrier, g/g: what dissolves. */
function mostIn({ concentrate }: Plan, carrier: string): (id: string) => number {
  return (id) => strongestStock(concentrate.find(({ goods }) => goods.id === id)!.goods, carrier);
}

/** As runs of older versions have it: all of it in one vessel, the water phase after the oils. */
function oneVessel(plan: Plan, parts: readonly PlannedMass[], least: number): Filling {
  const isWet = (id: string) => id === EMULSION_WATER || emulsifiers.some((one) => one.id === id);
  const fill = largestLiquid(plan, () => false);
  const list = weighList(
    parts.filter(({ id }) => !isWet(id)),
    fill,
    { least: gram(least) },
  );
  const rest = parts
    .filter(({ id }) => isWet(id))
    .map(({ id, mass }): WeighStep => ({ id, mass, neat: mass, enough: mass >= least, diluted: null }));
  return { list: { ...list, steps: [...list.steps, ...rest] }, fillOf: () => fill };
}

function isMaterial({ concentrate }: Plan, id: string): boolean {
  return id !== EMULSION_WATER && concentrate.some(({ goods }) => goods.id === id && goods.source !== null);
}

/** The oil that the others are diluted with: the largest that is liquid. */
function largestLiquid({ concentrate }: Plan, isWet: (id: string) => boolean): string {
  const oils = concentrate.filter(
    ({ goods: { id, source } }) => source !== null && id !== EMULSION_WATER && !isWet(id),
  );
  const liquid = oils.filter(({ goods }) => find('material', goods.id)?.form !== 'solid');
  return [...(liquid.length > 0 ? liquid : oils)].sort((one, two) => two.mass - one.mass)[0]!.goods.id;
}
