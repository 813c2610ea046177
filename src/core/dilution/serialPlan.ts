/**
 * Serial dilution: how to come from what is on the shelf to a strength that no single step reaches well.
 *
 * Fewest steps, then least mass made in all. Strengths between come from a 1-2-5 ladder,
 * batches from the smallest that the step and the next one allow, times a few factors (our choices, so "least" is among these), and of
 * what the scale can show and the vial can hold.
 * Every plan's ± comes from dilutionOf, step by step, so a dropper used twice is right or wrong twice.
 */
import { DRAWABLE, ladder, type Step } from './intermediate';
import { dilutionOf } from './dilution';
import { massOfDrops } from '../drop/drop';
import { expanded, measured, type Measured } from '../number/measured';
import { gram, massFraction, MG_PER_G, type Gram, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** Something on the shelf: strength g/g, g left, and mg per drop if it can be dropped. */
export interface Stock {
  readonly id: string;
  readonly strength: Measured;
  readonly available: Gram;
  readonly mgPerDrop?: Measured;
  /** The strongest dilution of it that stays dissolved, g/g, where one is known; those between are no stronger. */
  readonly dissolves?: MassFraction;
}

/** By scale: standard uncertainty of a net mass and the least mass to weigh (smallestMass), g; `step`: what is taken is a whole number of these, g. */
export interface ByScale {
  readonly by: 'scale';
  readonly uncertainty: Gram;
  readonly least: Gram;
  readonly step?: Gram;
}

/** By drops: mg per drop of the dilutions made, spread of one drop (share), least and most drops to count in a step, uncertainty of the solvent, g. */
export interface ByDrops {
  readonly by: 'drops';
  readonly mgPerDrop: Measured;
  readonly perDropSpread: number;
  readonly leastDrops: number;
  readonly mostDrops: number;
  readonly solventUncertainty: Gram;
}

/** What is wanted: strength g/g, g of it, the most and the least that a vial between is filled with, g, and the relative ± at k = 2 to stay within (share). */
export interface Target {
  readonly target: MassFraction;
  readonly batch: Gram;
  readonly vial: Gram;
  readonly leastBetween?: Gram;
  readonly within: number;
}

/** One step of a plan; `drops` where the source is counted. */
export interface PlannedStep extends Step {
  readonly from: MassFraction;
  readonly drops: number | null;
}

/** A way down: the stock to start from, the steps, the strength reached (g/g), g made in all, g of pure material used. */
export interface SerialPlan {
  readonly stock: Stock;
  readonly steps: readonly PlannedStep[];
  readonly strength: Measured;
  readonly made: Gram;
  readonly used: Gram;
}

/** More steps than four are not looked for: each adds its uncertainty, and four steps of 1:100 span eight decades. Our choice. */
const MOST_STEPS = 4;

/** Batches of a vial between that are tried, as multiples of the smallest possible. Our choice. */
const GROWTH = [1, 1.15, 1.3, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6.5, 8, 10, 12];

/**
 * The best plan, or null when none on the ladder stays within the wanted uncertainty in four steps. By scale the final
 * batch is exactly `batch`; by drops, or in whole steps of the scale, it is the largest that these give without exceeding it.
 * First-order propagation (GUM 5.1.2). Vials of the target strength or weaker are passed over.
 * @throws Refusal when target, batch, vial or uncertainty is not above zero
 */
export function serialPlan(wanted: Target, shelf: readonly Stock[], means: ByScale | ByDrops): SerialPlan | null {
  for (const [name, value] of Object.entries(wanted))
    if (!(value > 0 && Number.isFinite(value)))
      throw new Refusal('{name} is more than zero, not {value}', { name, value });
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    let best: SerialPlan | null = null;
    for (const stock of shelf.filter(({ strength }) => strength.value > wanted.target))
      for (const between of choose(strengthsBetween(stock, wanted.target), steps - 1))
        best = bestOfChain({ wanted, means, stock, levels: [stock.strength.value, ...between, wanted.target] }, best);
    if (best) return best;
  }
  return null;
}

function strengthsBetween({ strength, dissolves = massFraction(1) }: Stock, target: MassFraction): MassFraction[] {
  return ladder(massFraction(strength.value), target).filter((w) => w <= dissolves);
}

/** A stock and the strengths to pass through, stock first, target last. */
interface Chain {
  readonly wanted: Target;
  readonly means: ByScale | ByDrops;
  readonly stock: Stock;
  readonly levels: readonly number[];
}

function bestOfChain(chain: Chain, best: SerialPlan | null): SerialPlan | null {
  const last = chain.levels.length - 1;
  const end = stepOf(chain, last, { atMost: chain.wanted.batch });
  if (!end || !reachable(chain, end)) return best;
  let found = best;
  function grow(k: number, after: readonly PlannedStep[], made: number): void {
    if (found && made >= found.made * (1 - 1e-9)) return; // equal goes to the stock named first
    if (k === 0) {
      found = finished(chain, after) ?? found;
      return;
    }
    const { leastBetween = 0 } = chain.wanted;
    const least = stepOf(chain, k, { atLeast: Math.max(leastBetween, after[0]!.source / DRAWABLE) });
    for (const factor of least ? GROWTH : []) {
      const step = stepOf(chain, k, { atLeast: (least!.source + least!.solvent) * factor });
      if (step && total([step]) <= chain.wanted.vial) grow(k - 1, [step, ...after], made + total([step]));
    }
  }
  grow(last - 1, [end], total([end]));
  return found;
}

/** Larger batches are surer: when even the largest vials between do not do, the chain is not worth searching. */
function reachable(chain: Chain, end: PlannedStep): boolean {
  let steps: readonly PlannedStep[] = [end];
  for (let k = chain.levels.length - 2; k > 0; k--) {
    const step = stepOf(chain, k, { atMost: chain.wanted.vial, orFewer: true });
    if (!step || total([step]) * DRAWABLE < steps[0]!.source) return false;
    steps = [step, ...steps];
  }
  return relative(strengthOf(chain, steps)) <= chain.wanted.within;
}

/** A batch (g) at least or at most so large; `orFewer`: one that takes too many drops is made smaller. */
type Size = { readonly atLeast: number } | { readonly atMost: number; readonly orFewer?: true };

/** Step k of the chain with a batch of that size; null where the least transfer, or the most drops, do not allow it. */
function stepOf(chain: Chain, k: number, size: Size): PlannedStep | null {
  const [from, to] = [chain.levels[k - 1]!, chain.levels[k]!];
  const { means } = chain;
  const drop = dropOf(chain, k);
  if (means.by === 'drops' && drop === null) return null;
  const unit = (drop ? drop.value / MG_PER_G : 1) * (from / to); // g made per drop, or per g of source
  let count = 'atMost' in size ? size.atMost / unit : size.atLeast / unit;
  const whole = drop ? 1 : means.by === 'scale' ? (means.step ?? 0) : 0;
  if (whole)
    count =
      whole * ('atMost' in size ? Math.floor((count / whole) * (1 + 1e-9)) : Math.ceil((count / whole) * (1 - 1e-9)));
  if (means.by === 'drops' && 'orFewer' in size) count = Math.min(count, means.mostDrops);
  const least = means.by === 'drops' ? means.leastDrops : means.least;
  if ('atMost' in size && count < least * (1 - 1e-9)) return null;
  count = Math.max(count, least);
  if (means.by === 'drops' && count > means.mostDrops) return null;
  const source = count * unit * (to / from);
  return {
    source: gram(source),
    solvent: gram(count * unit - source),
    strength: massFraction(to),
    from: massFraction(from),
    drops: drop ? count : null,
  };
}

function finished(chain: Chain, steps: readonly PlannedStep[]): SerialPlan | null {
  if (steps[0]!.source > chain.stock.available) return null;
  const strength = strengthOf(chain, steps);
  if (relative(strength) > chain.wanted.within) return null;
  const used = steps[0]!.source * chain.stock.strength.value;
  return { stock: chain.stock, steps, strength, made: gram(total(steps)), used: gram(used) };
}

function strengthOf(chain: Chain, steps: readonly PlannedStep[]): Measured {
  const { means } = chain;
  return steps.reduce((strength, step, i) => {
    const [id, words] = [`step ${i + 1}`, `step ${i + 1}: what is taken`];
    const drop = dropOf(chain, i + 1);
    const mass =
      means.by === 'drops'
        ? massOfDrops({ drops: step.drops!, mgPerDrop: drop!, perDropSpread: means.perDropSpread, id, words })
        : measured(step.source, means.uncertainty, { id, words });
    const uncertainty = means.by === 'drops' ? means.solventUncertainty : means.uncertainty;
    const solvent = measured(step.solvent, uncertainty, { id: `${id} solvent`, words: `step ${i + 1}: solvent` });
    return dilutionOf([{ mass, strength }], solvent).strength;
  }, chain.stock.strength);
}

function dropOf({ means, stock }: Chain, k: number): Measured | null {
  if (means.by === 'scale') return null;
  return k === 1 ? (stock.mgPerDrop ?? null) : means.mgPerDrop;
}

/** Every way to pick `n` of a falling list, order kept. */
function choose<T>(list: readonly T[], n: number): T[][] {
  if (n === 0) return [[]];
  return list.flatMap((first, i) => choose(list.slice(i + 1), n - 1).map((rest) => [first, ...rest]));
}

function total(steps: readonly Step[]): number {
  return steps.reduce((sum, { source, solvent }) => sum + source + solvent, 0);
}

function relative(strength: Measured): number {
  return expanded(strength) / strength.value;
}
