import { problemOf } from './ask';
import { bestPlan } from './bestPlan';
import type { PlanAnswer, PlanComponent, PlanInstance, PlanStock } from './instance';
import { smallestError } from './search';

/** What a drop of the dilution to be made will be like: of its solvent, from the dropper at hand. */
export type NewDrop = Pick<PlanStock, 'mgPerDrop' | 'rsd' | 'solvent'>;

export interface NextDilution {
  readonly componentId: string;
  /** Mass fraction, 1, 2 or 5 times a power of ten. */
  readonly strength: number;
  /** The new vial's id in the plan. */
  readonly stockId: string;
  /** Objective with the shelf as it is; null where that allows no plan. */
  readonly before: number | null;
  /** The best plan with the new vial. */
  readonly after: PlanAnswer;
}

const WEAKEST = 1e-6; // our choice, mass fraction: 1 ppm is the weakest dilution worth a vial
const LADDER = [5, 2, 1]; // 1-2-5 in each decade (common practice)
const NEW = 'new'; // stock id of the vial to be made, made unique by the line's id

/**
 * The one dilution that would improve this formula's plan most: which material, at which strength of a 1-2-5 ladder below the
 * strongest vial on hand (below neat where there is none), and the plan with it. Null where none would.
 *
 * Our own, exact over the ladder. The optimum without line i and with its fewest drops taken from the limit bounds every plan
 * with any new vial of i from below; a line whose bound is no better than the best so far is skipped whole. The others are
 * solved, each only as far as it takes to see that it is no better. Equal gains: the line, then the stronger dilution, that
 * comes first.
 */
export function nextDilution(instance: PlanInstance, drop: NewDrop): NextDilution | null {
  const now = bestPlan(instance);
  const before = now.ok ? now.objective : null;
  const bounds = instance.components
    .map((component) => ({ component, bound: smallestOf(without(instance, component)) }))
    .sort((one, two) => one.bound - two.bound);
  let error = before ?? Infinity;
  let best: { component: PlanComponent; stock: PlanStock } | null = null;
  for (const { component, bound } of bounds)
    for (const strength of ladderBelow(component)) {
      if (bound >= error) break;
      const stock = { ...drop, id: `${NEW} ${component.id}`, strength, availableDrops: null };
      const found = smallestOf(withStock(instance, component, stock), error);
      if (found < error) [best, error] = [{ component, stock }, found];
    }
  if (!best) return null;
  const { component, stock } = best;
  const after = bestPlan(withStock(instance, component, stock));
  return after.ok ? { componentId: component.id, strength: stock.strength, stockId: stock.id, before, after } : null;
}

/** The smallest error, if it is below `below`; Infinity where it is not, or where there is no plan; 0 without a line. */
function smallestOf(instance: PlanInstance, below = Infinity): number {
  if (instance.components.length === 0) return 0;
  const problem = problemOf(instance);
  const found = problem.ok ? smallestError(problem, problem.cap, { below }) : null;
  return found?.error ?? Infinity;
}

function withStock(instance: PlanInstance, component: PlanComponent, stock: PlanStock): PlanInstance {
  const components = instance.components.map((each) =>
    each === component ? { ...each, stocks: [...each.stocks.filter(({ strength }) => strength > 0), stock] } : each,
  );
  return { ...instance, components };
}

/** The other lines, within what a new vial of this line leaves them at the least. */
function without(instance: PlanInstance, component: PlanComponent): PlanInstance {
  const components = instance.components.filter((each) => each !== component);
  const maxDrops = instance.limits.maxDrops - instance.limits.minDropsPerComponent;
  return { ...instance, components, limits: { ...instance.limits, maxDrops } };
}

function ladderBelow({ stocks }: PlanComponent): number[] {
  const strongest = stocks.reduce((most, { strength }) => Math.max(most, strength), 0) || 1;
  const ladder: number[] = [];
  for (let decade = -1; 10 ** decade >= WEAKEST * (1 - 1e-9); decade--)
    for (const step of LADDER) ladder.push(Number(`${step}e${decade}`));
  return ladder.filter((strength) => strength < strongest * (1 - 1e-9));
}
