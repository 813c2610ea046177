import { gram } from '../../core/units';
import { rescueList, weighList, type WeighList, type WeighStep } from '../../core/weighList';
import { find } from '../../records/shelf';
import { gumArabic } from '../../tables/syrupAdditives';
import { valueOf } from '../fields';
import type { RunState } from '../fold';
import { fields } from './fields';
import { EMULSION_WATER, type Goods } from './goods';
import type { Idea } from './idea';
import { massAt, type Pour } from './pour';
import { stockOf } from './stock';

/** The concentrate as far as it is weighed: `factor` is how many times the plan it has become. */
export interface Vessel {
  readonly pours: readonly Pour[];
  readonly factor: number;
}

interface Weighing {
  readonly run: RunState;
  readonly list: WeighList;
  /** Id of what the others are thinned with; it fills up. */
  readonly fill: string;
  readonly goods: (id: string) => Goods;
  readonly tolerance: number;
  /** Half a step of the scale, g: no more can be asked of a hand. */
  readonly halfStep: number;
}

/** g of each step at factor 1, as it stands now: a stock that came out stronger is drawn less of. */
type Bases = ReadonlyMap<string, number>;

/** g of concentrate to make per g that the drink needs. */
export function spareFactor(run: RunState): number {
  return 1 + (valueOf(run, fields.spare) ?? 0) / 100;
}

/** The concentrate, smallest first, rescued as was chosen. */
export function concentrateVessel(run: RunState, idea: Idea, least: number): Vessel {
  const { list, fill } = listOf(idea, { least, times: spareFactor(run) });
  const goods = (id: string) => idea.concentrate.find((one) => one.goods.id === id)!.goods;
  const tolerance = (valueOf(run, fields.tolerance) ?? 0) / 100;
  const halfStep = (valueOf(run, fields.fine) ?? 0) / 2;
  const weighing = { run, list, fill, goods, tolerance, halfStep };
  const bases = new Map<string, number>();
  let pours: Pour[] = [];
  let factor = 1;
  for (const step of list.steps) {
    const pour = nextPour(weighing, step, { bases, factor, pours });
    pours = [...pours, pour];
    if (!pour.rescue || run.typed[`over.${pour.key}`] !== 'scale') continue;
    const weighed = new Set(pours.map((one) => one.goods.id));
    factor *= pour.rescue.factor;
    const more = pour.rescue.add.filter(({ id, mass }) => weighed.has(id) && mass > 0);
    pours = [...pours, ...more.map((add) => addition(weighing, pours, { ...add, cause: step.id }))];
  }
  return { pours, factor };
}

function nextPour(
  weighing: Weighing,
  step: WeighStep,
  so: { bases: Map<string, number>; factor: number; pours: readonly Pour[] },
): Pour {
  const { run, list, fill, goods, tolerance, halfStep } = weighing;
  const stock = stockOf(run, step, { from: goods(step.id), carrier: goods(fill) });
  const base = step.id === fill ? step.mass + shift(list, so.bases) : stock ? step.neat / stock.share.value : step.mass;
  so.bases.set(step.id, base);
  const key = `c.${step.id}`;
  const target = so.factor * base;
  const mass = massAt(run, key);
  const isOver = mass !== null && mass.value - target > Math.max(tolerance * target, halfStep);
  const now = {
    ...list,
    steps: list.steps.map((one) => ({ ...one, mass: gram(so.factor * (so.bases.get(one.id) ?? one.mass)) })),
  };
  const weighed = [...so.pours, { goods: { id: step.id }, mass }].map((one) => ({
    id: one.goods.id,
    mass: gram(one.mass?.value ?? 0),
  }));
  return {
    ...{ key, into: 'concentrate', scale: 'fine', target, mass, stock, again: false, tooSmall: !step.enough },
    goods: stock?.goods ?? goods(step.id),
    rescue: isOver ? rescueList(now, weighed) : null,
  };
}

/** What the filling material gains because stocks were drawn on less than planned, g. */
function shift(list: WeighList, bases: Bases): number {
  return list.steps.reduce((sum, { id, mass, thinned }) => sum + (thinned ? mass - (bases.get(id) ?? mass) : 0), 0);
}

/** More of an earlier one, so that its share comes back. */
function addition({ run }: Weighing, pours: readonly Pour[], add: { id: string; mass: number; cause: string }): Pour {
  const first = pours.find(({ goods }) => goods.id === add.id)!;
  const key = `c.${add.id}.${add.cause}`;
  const mass = massAt(run, key);
  return { ...first, key, target: add.mass, mass, stock: null, tooSmall: false, again: true, rescue: null };
}

/** The list for the scale, `times` what the drink needs, and what fills up: the carrier, or for an emulsion its largest liquid oil; its water phase comes after its oils. */
function listOf(
  { concentrate, emulsion }: Idea,
  how: { least: number; times: number },
): { list: WeighList; fill: string } {
  const { least, times } = how;
  const parts = concentrate.map(({ goods, mass }) => ({ id: goods.id, mass: gram(mass * times) }));
  const wet = emulsion ? [gumArabic.id, EMULSION_WATER] : [];
  const dry = parts.filter(({ id }) => !wet.includes(id));
  const oils = emulsion ? concentrate.filter(({ goods }) => goods.source !== null) : [];
  const liquid = oils.filter(({ goods }) => find('material', goods.id)?.form !== 'solid');
  const largest = [...(liquid.length > 0 ? liquid : oils)].sort((one, two) => two.mass - one.mass)[0];
  const fill = largest?.goods.id ?? parts.at(-1)!.id;
  const list = weighList(dry, fill, { least: gram(least) });
  const rest = parts
    .filter(({ id }) => wet.includes(id))
    .map(({ id, mass }): WeighStep => ({ id, mass, neat: mass, enough: mass >= least, thinned: null }));
  return { list: { ...list, steps: [...list.steps, ...rest] }, fill };
}
