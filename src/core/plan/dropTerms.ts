import type { Plan, PlanComponent, PlanInstance, PlanStock } from './dropInstance';

/** One vial in the arithmetic of its line: what one more drop of it brings. */
export interface Term {
  readonly stockId: string;
  /** mg of neat material per part in one drop. */
  readonly g: number;
  /** (z · g · rsd)², variance of one drop times z², (mg per part)². */
  readonly w: number;
  /** Drops that may be added. */
  readonly most: number;
  /** What one drop takes of each cap: mg of the trial, mg of a solvent. */
  readonly costs: readonly number[];
}

/** One line: what is already in the vial (nothing, unless a slip is repaired) and what may be added. */
export interface Line {
  readonly componentId: string;
  /** Already counted: mg per part, variance times z², drops. */
  readonly rho: number;
  readonly variance: number;
  readonly drops: number;
  /** Drops that must still be added. */
  readonly need: number;
  /** Vials that may give on their own, strongest drop first. */
  readonly singles: readonly Term[];
  /** The same for the hot loop, four numbers a vial: g, w, 1/(2g²), most. */
  readonly flat: Float64Array;
  /** Pairs of vials that may give together, stronger drop first. */
  readonly pairs: readonly (readonly [Term, Term])[];
}

/** An instance made ready for search. */
export interface Problem {
  readonly lines: readonly Line[];
  readonly cap: number;
  /** Caps in mg left for the drops to be added: total mass, then solvents. Empty where none is set. */
  readonly caps: readonly number[];
  /** What each of them limits: 'mass' or the solvent. */
  readonly capNames: readonly string[];
  /** Ends of the scale, mg per part: 0 and Infinity where it is free. */
  readonly scaleMin: number;
  readonly scaleMax: number;
}

/** Drops already in the vial, and the lines that get no more. */
export interface Counted {
  readonly drops: Plan;
  readonly finished: ReadonlySet<string>;
}

const CAP_SLACK = 1e-9; // relative slack of the mass caps: grams are sums of doubles

/**
 * The instance as terms. Vials of strength zero or without drops are left out: they can give nothing.
 * What is already counted is a lower bound: it is put into each line's base, and only additions are free. Arithmetic.
 */
export function prepare(instance: PlanInstance, counted?: Counted): Problem {
  const { limits, scale } = instance;
  const solvents = Object.keys(limits.maxSolventMassMg);
  const caps = [limits.maxTotalMassMg ?? Infinity, ...solvents.map((name) => limits.maxSolventMassMg[name]!)];
  const kept = caps.flatMap((cap, at) => (cap < Infinity ? [at] : []));
  const use = (stock: PlanStock) => {
    const all = [stock.mgPerDrop, ...solvents.map((name) => (stock.solvent === name ? solventMg(stock) : 0))];
    return kept.map((at) => all[at]!);
  };
  const left = kept.map((at) => caps[at]! * (1 + CAP_SLACK));
  for (const { stocks } of instance.components)
    for (const stock of stocks)
      for (const [at, cost] of use(stock).entries()) left[at]! -= cost * (counted?.drops[stock.id] ?? 0);
  return {
    lines: instance.components.map((component) => line(instance, component, { counted, use })),
    cap: limits.maxDrops,
    caps: left,
    capNames: kept.map((at) => ['mass', ...solvents][at]!),
    scaleMin: scale.kind === 'fixed' ? scale.mgPerPart : scale.kind === 'range' ? scale.min : 0,
    scaleMax: scale.kind === 'fixed' ? scale.mgPerPart : scale.kind === 'range' ? scale.max : Infinity,
  };
}

function solventMg(stock: PlanStock): number {
  return stock.mgPerDrop * (1 - stock.strength);
}

interface Setting {
  readonly counted: Counted | undefined;
  readonly use: (stock: PlanStock) => number[];
}

function line(instance: PlanInstance, component: PlanComponent, { counted, use }: Setting): Line {
  const { z } = instance.objective;
  const had = (stock: PlanStock) => counted?.drops[stock.id] ?? 0;
  const base = { rho: 0, variance: 0, drops: 0 };
  const terms = component.stocks.map((stock): Term & { started: boolean } => {
    const g = (stock.strength * stock.mgPerDrop) / component.parts;
    const w = (z * g * stock.rsd) ** 2;
    base.rho += had(stock) * g;
    base.variance += had(stock) * w;
    base.drops += had(stock);
    const most = Math.max(0, Math.min(stock.availableDrops ?? Infinity, instance.limits.maxDrops) - had(stock));
    return { stockId: stock.id, g, w, most, costs: use(stock), started: had(stock) > 0 };
  });
  const closed = counted?.finished.has(component.id) ?? false;
  const open = closed ? [] : terms.filter(({ g, most }) => g > 0 && most > 0).sort((a, b) => b.g - a.g);
  const started = terms.filter((term) => term.started).length;
  const fresh = Math.max(0, instance.limits.maxStocksPerComponent - started); // vials that may still be opened
  const allowed = (used: (Term & { started: boolean })[]) => used.filter((term) => !term.started).length <= fresh;
  const two = started > 1 || instance.limits.maxStocksPerComponent > 1;
  const singles = open.filter((term) => allowed([term]));
  return {
    componentId: component.id,
    ...base,
    need: closed ? 0 : Math.max(0, instance.limits.minDropsPerComponent - base.drops),
    singles,
    flat: Float64Array.from(singles.flatMap(({ g, w, most }) => [g, w, 1 / (2 * g * g), most])),
    pairs: two ? pairsOf(open).filter(allowed) : [],
  };
}

function pairsOf<T>(items: readonly T[]): [T, T][] {
  return items.flatMap((a, at) => items.slice(at + 1).map((b): [T, T] => [a, b]));
}
