import type { Plan, PlanComponent, PlanInstance } from '../../../src/core/plan/instance';
import { judgePlan, type PlanJudgement } from '../../../src/core/plan/judge';

const WISHED_DROPS = 5; // a careful hand takes the vial that asks for about five drops (common practice, no source)
const SCALES = 200; // our choice: scales tried from the largest down
const DECADES = 6; // our choice: how far below the largest

/**
 * What a careful hand does without a plan (common practice, no source), for comparison: at the largest scale that keeps the
 * limits, take for every line the vial that asks for about five drops, and round. Null where that never keeps the limits. Not
 * an optimum of anything.
 */
export function roundEveryLine(instance: PlanInstance): PlanJudgement | null {
  const { components, scale } = instance;
  const terms = components.flatMap(({ stocks, parts }) =>
    stocks.map(({ strength, mgPerDrop }) => (strength * mgPerDrop) / parts),
  );
  const largest = Math.max(...terms, 0) * instance.limits.maxDrops; // mg per part: beyond it no line fits
  const scales =
    scale.kind === 'fixed'
      ? [scale.mgPerPart]
      : Array.from({ length: SCALES }, (_, i) => largest * 10 ** ((-DECADES * i) / (SCALES - 1)));
  const [min, max] = scale.kind === 'range' ? [scale.min, scale.max] : [0, Infinity];
  for (const s of scales) {
    const plan = roundedAt(instance, Math.min(max, Math.max(min, s)));
    const judged = plan && judgePlan(instance, plan);
    if (judged?.problems.length === 0) return judged;
  }
  return null;
}

function roundedAt({ components, limits }: PlanInstance, scale: number): Plan | null {
  const plan: Record<string, number> = {};
  for (const component of components) {
    const stock = vialOfAboutFive(component, scale);
    if (!stock) return null;
    const n = Math.max(limits.minDropsPerComponent, Math.round(stock.asks));
    if (n > limits.maxDrops) return null;
    plan[stock.id] = n;
  }
  return plan;
}

function vialOfAboutFive({ stocks, parts }: PlanComponent, scale: number): { id: string; asks: number } | null {
  const away = ({ asks }: { asks: number }) => Math.abs(Math.log(asks / WISHED_DROPS));
  return stocks
    .filter(({ strength }) => strength > 0)
    .map(({ id, strength, mgPerDrop }) => ({ id, asks: (scale * parts) / (strength * mgPerDrop) }))
    .reduce<{ id: string; asks: number } | null>(
      (best, each) => (!best || away(each) < away(best) ? each : best),
      null,
    );
}
