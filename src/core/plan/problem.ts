import { drawer, type Drawer } from './draw';
import type { Plan, PlanComponent, PlanInstance, PlanStock } from './instance';
import type { Line, Term } from './line';

/** An instance that makes sense, made ready for search. */
export interface Problem {
  readonly ok: true;
  readonly instance: PlanInstance;
  readonly counted: Counted;
  readonly lines: readonly Line[];
  /** Drops of the whole trial, those already counted too. */
  readonly cap: number;
  /** Caps in mg left for the drops to be added: total mass, then solvents. Empty where none is set. */
  readonly masses: readonly number[];
  /** What each of them limits: 'mass' or the solvent. */
  readonly massNames: readonly string[];
  /** Ends of the scale, mg per part: 0 and Infinity where it is free. */
  readonly scaleMin: number;
  readonly scaleMax: number;
  readonly drawer: Drawer;
}

/** Drops already in the vial, and the lines that get no more. */
export interface Counted {
  readonly drops: Plan;
  readonly finished: ReadonlySet<string>;
}

/** Relative slack of the mass caps: grams are sums of doubles. */
export const CAP_SLACK = 1e-9;

/**
 * The instance as terms. Vials of strength zero or without drops are left out: they can give nothing.
 * What is already counted is a lower bound: it is put into each line's base, and only additions are free. No vial is asked
 * for more than `most` drops, the largest cap that will be searched. Arithmetic.
 */
export function prepare(instance: PlanInstance, counted: Counted, most: number): Problem {
  const { limits, scale } = instance;
  const solvents = Object.keys(limits.maxSolventMassMg);
  const caps = [limits.maxTotalMassMg ?? Infinity, ...solvents.map((name) => limits.maxSolventMassMg[name]!)];
  const kept = caps.flatMap((cap, at) => (cap < Infinity ? [at] : []));
  const use = (stock: PlanStock) => {
    const all = [stock.mgPerDrop, ...solvents.map((name) => (stock.solvent === name ? solventMg(stock) : 0))];
    return kept.map((at) => all[at]!);
  };
  const masses = kept.map((at) => caps[at]! * (1 + CAP_SLACK));
  for (const { stocks } of instance.components)
    for (const stock of stocks)
      for (const [at, cost] of use(stock).entries()) masses[at]! -= cost * (counted.drops[stock.id] ?? 0);
  const lines = instance.components.map((component) => lineOf(component, instance, { counted, most, use }));
  return {
    ok: true,
    instance,
    counted,
    lines,
    cap: limits.maxDrops,
    masses,
    massNames: kept.map((at) => ['mass', ...solvents][at]!),
    scaleMin: scale.kind === 'fixed' ? scale.mgPerPart : scale.kind === 'range' ? scale.min : 0,
    scaleMax: scale.kind === 'fixed' ? scale.mgPerPart : scale.kind === 'range' ? scale.max : Infinity,
    drawer: drawer(lines, masses),
  };
}

function solventMg(stock: PlanStock): number {
  return stock.mgPerDrop * (1 - stock.strength);
}

interface Setting {
  readonly counted: Counted;
  readonly most: number;
  readonly use: (stock: PlanStock) => number[];
}

function lineOf(
  component: PlanComponent,
  { limits, objective: { z } }: PlanInstance,
  { counted, most, use }: Setting,
): Line {
  const had = (stock: PlanStock) => counted.drops[stock.id] ?? 0;
  const base = { rho: 0, variance: 0, drops: 0 };
  const terms = component.stocks.map((stock): Term & { started: boolean } => {
    const g = (stock.strength * stock.mgPerDrop) / component.parts;
    const w = (z * g * stock.rsd) ** 2;
    base.rho += had(stock) * g;
    base.variance += had(stock) * w;
    base.drops += had(stock);
    const left = Math.max(0, Math.min(stock.availableDrops ?? Infinity, most) - had(stock));
    return { stockId: stock.id, g, w, most: left, costs: use(stock), started: had(stock) > 0 };
  });
  const closed = counted.finished.has(component.id);
  const open = closed ? [] : terms.filter((term) => term.g > 0 && term.most > 0).sort((a, b) => b.g - a.g);
  const started = terms.filter((term) => term.started).length;
  const fresh = Math.max(0, limits.maxStocksPerComponent - started); // vials that may still be opened
  const allowed = (used: (Term & { started: boolean })[]) => used.filter((term) => !term.started).length <= fresh;
  const two = started > 1 || limits.maxStocksPerComponent > 1;
  const singles = open.filter((term) => allowed([term]));
  return {
    componentId: component.id,
    ...base,
    need: closed ? 0 : Math.max(0, limits.minDropsPerComponent - base.drops),
    singles,
    flat: Float64Array.from(singles.flatMap(({ g, w, most }) => [g, w, 1 / (2 * g * g), most])),
    pairs: two ? pairsOf(open).filter(allowed) : [],
  };
}

function pairsOf<T>(items: readonly T[]): [T, T][] {
  return items.flatMap((a, at) => items.slice(at + 1).map((b): [T, T] => [a, b]));
}
