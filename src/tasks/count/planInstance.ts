import type { PlanComponent, PlanInstance, PlanScale, PlanStock } from '../../core/plan/instance';
import { REFERENCE_TEMPERATURE } from '../../core/number/units';
import { waterDensity } from '../../core/liquid/water';
import { find, list } from '../../records/shelf';
import { answer } from '../engine/answers';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import type { RunState } from '../engine/fold';
import { ANY, dropperOf, fields, wayOf } from './fields';
import { pickedMaterials, pickedStocks } from './picked';
import { targetsIn } from './rounds';
import { dropOfStock, holdsOnly, leftDrops, stockOf, stocksOnHand, strengthOf, whyNotTaken, type Stock } from './stock';

/** One line of what is asked for: parts by mass of neat material. */
export interface TargetLine {
  readonly material: string;
  readonly name: string;
  readonly parts: number;
}

/** The lines asked for: those of the formula, typed ones, or the neat material that drops typed by hand were meant to bring. */
export function targetLines(run: RunState): TargetLine[] {
  const way = wayOf(run);
  if (way === 'hand') return handLines(run);
  if (way === 'materials')
    return pickedMaterials(run).flatMap(({ id, name }) => {
      const parts = answer(run, fields.parts(id));
      return parts === null ? [] : [{ material: id, name, parts }];
    });
  const lines = find('formula', way)?.lines ?? [];
  return lines.map(({ material, name, share }) => ({ material, name, parts: share }));
}

/** The plan that is asked for. In a count by hand each line has only the vials picked, for the repair of slips. */
export function instanceOf(run: RunState): PlanInstance {
  const hand = wayOf(run) === 'hand';
  const planned = hand ? handDrops(run) : 0;
  const allowed = hand ? pickedStocks(run) : stocksOnHand();
  return {
    components: targetLines(run).map((target) => componentOf(run, target, allowed)),
    limits: {
      maxDrops: hand ? 4 * planned : (answer(run, fields.most) ?? 1), // our choice: a repair by hand may go to four times the drops
      minDropsPerComponent: 1,
      maxStocksPerComponent: hand || answer(run, fields.mix) === '2' ? 2 : 1,
      maxTotalMassMg: null,
      maxSolventMassMg: {},
    },
    scale: scaleOf(run),
    objective: { kind: 'minimax', z: 1 }, // rounding plus one standard deviation of counting
  };
}

function componentOf(run: RunState, { material, name, parts }: TargetLine, allowed: readonly Stock[]): PlanComponent {
  const stocks = allowed.filter(
    (stock) => holdsOnly(stock, material) && (wayOf(run) === 'hand' || mayGoIn(run, stock)),
  );
  const taken = wayOf(run) === 'hand' ? stocks : byThemselves(run, material, stocks);
  return { id: material, name, parts, stocks: taken.map((stock) => planStock(stock, dropperOf(run))) };
}

/** The one that was chosen for the line; else those that may be taken by themselves, and those of the plan already; all where that leaves none. */
function byThemselves(run: RunState, material: string, stocks: readonly Stock[]): readonly Stock[] {
  const own = answer(run, fields.stock(material)) ?? ANY;
  if (own !== ANY && stocks.some(({ id }) => id === own)) return stocks.filter(({ id }) => id === own);
  const chosen = targetsIn(answer(run, fields.plan) ?? '').map(({ id }) => id);
  const fit = stocks.filter((stock) => whyNotTaken(stock) === null || chosen.includes(stock.id));
  return fit.length > 0 ? fit : stocks;
}

/** What is to be said of the stocks of a plan that are not taken by themselves: there is no other. A sentence each. */
export function notByThemselves(ids: readonly string[]): string[] {
  return ids.flatMap((id) => {
    const stock = stockOf(id);
    const why = stock && whyNotTaken(stock);
    return why ? [`${stock.tag} is ${why}.`] : [];
  });
}

function planStock(stock: Stock, dropper: string): PlanStock {
  const { mgPerDrop, spread } = dropOfStock(stock, dropper);
  return {
    id: stock.id,
    strength: Math.min(1, strengthOf(stock)),
    mgPerDrop: mgPerDrop.value,
    rsd: spread,
    availableDrops: leftDrops(stock, dropper),
    solvent: stock.solvent?.id ?? 'none',
  };
}

/** Whether a stock may be used: into what is tasted goes only what is fit for drinks, all the way down. */
function mayGoIn(run: RunState, { smellOnly }: Stock): boolean {
  return answer(run, fields.purpose) === 'smell' || !smellOnly;
}

/** The vials and bottles of a material that may not be used, because they are smell only. */
export function smellOnlyOf(run: RunState, material: string): string[] {
  return stocksOnHand().flatMap((stock) => (holdsOnly(stock, material) && !mayGoIn(run, stock) ? stock.tag : []));
}

/** mg of neat material per part: free, unless all of the trial goes into one drink. */
function scaleOf(run: RunState): PlanScale {
  const ppm = drinkPpm(run);
  if (ppm === null) return { kind: 'free' };
  const parts = targetLines(run).reduce((sum, target) => sum + target.parts, 0);
  return { kind: 'fixed', mgPerPart: (ppm * drinkG(run)!) / 1000 / parts }; // mg/kg · g / 1000 is mg
}

/** mg of all neat material per kg of the drink that the trial is for; null where it is for none. */
function drinkPpm(run: RunState): number | null {
  return wayOf(run) !== 'hand' && answer(run, fields.purpose) === 'drink' && drinkG(run) !== null
    ? answer(run, fields.ppm)
    : null;
}

/** Mass of the finished drink, g; null where the trial is for none. */
export function drinkG(run: RunState): number | null {
  const volumeMl = answer(run, fields.drinkMl);
  if (wayOf(run) === 'hand' || answer(run, fields.purpose) !== 'drink' || volumeMl === null) return null;
  const base = find('base', answer(run, fields.base) ?? '');
  return volumeMl * (base?.densityGPerMl ?? waterDensity(REFERENCE_TEMPERATURE));
}

function handDrops(run: RunState): number {
  return pickedStocks(run).reduce((sum, stock) => sum + (answer(run, fields.planned(stock.id)) ?? 0), 0);
}

/** Lines of drops typed by hand, mg; none where a vial holds more than one material, since no line can then be mended alone. */
function handLines(run: RunState): TargetLine[] {
  const lines = new Map<string, TargetLine>();
  for (const stock of pickedStocks(run)) {
    const mg = (answer(run, fields.planned(stock.id)) ?? 0) * dropOfStock(stock, dropperOf(run)).mgPerDrop.value;
    if (stock.contents.length > 1) return [];
    const { material, name, strength } = stock.contents[0]!;
    const parts = (lines.get(material)?.parts ?? 0) + mg * strength.value;
    lines.set(material, { material, name, parts });
  }
  return [...lines.values()];
}

/** A bottle, else the strongest vial, neither empty nor past its date, that a new dilution of a material can be made from; fit for drinks where that is needed. */
export function sourceFor(run: RunState, material: string): string | undefined {
  const nose = answer(run, fields.purpose) === 'smell';
  const bottle = list('bottle').find(
    (one) => one.material === material && (nose || !isSmellOnly(one)) && whyNotByItself(one) === null,
  );
  const vials = stocksOnHand()
    .filter(
      (stock) => stock.solvent && holdsOnly(stock, material) && mayGoIn(run, stock) && whyNotTaken(stock) === null,
    )
    .sort((a, b) => strengthOf(b) - strengthOf(a));
  return bottle?.id ?? vials[0]?.id;
}
