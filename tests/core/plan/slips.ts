import type { Plan, PlanInstance } from '../../../src/core/plan/instance';
import { plainly } from '../../../src/core/text/refusal';
import { bestPlan } from '../../../src/core/plan/bestPlan';
import { rescuePlan, type Rescue } from '../../../src/core/plan/rescue';
import { randomInstance, seeded } from '../dropPlanEnumeration';

/** Small enough to try every plan. */
export const SIZE = { lines: 3, vials: 2, cap: 11 };

/** What can be done after a slip in the best plan; a refusal is an error here. */
export function rescued(instance: PlanInstance, counted: Plan, finished: string[]): Rescue {
  const best = bestPlan(instance);
  if (!best.ok) throw new Error(plainly(best.why));
  const rescue = rescuePlan(instance, { counted, finished, planned: best.plan });
  if (!rescue.ok) throw new Error(plainly(rescue.why));
  return rescue;
}

/** A slip at one line of the best plan: some drops more or fewer, the line finished or not; lines before it counted as planned. */
export function slip(seed: number, ask: Parameters<typeof randomInstance>[2]) {
  const random = seeded(seed);
  const instance = randomInstance(seed, SIZE, ask);
  const best = bestPlan(instance);
  if (!best.ok) return null;
  const at = Math.floor(random() * SIZE.lines);
  const counted: Record<string, number> = {};
  const finished = instance.components.slice(0, at).map(({ id }) => id);
  for (const { stocks } of instance.components.slice(0, at + 1))
    for (const { id } of stocks) if (best.plan[id]) counted[id] = best.plan[id];
  const [vial] = best.lines[at]!.stockIds;
  counted[vial!] = Math.max(1, counted[vial!]! + (random() < 0.6 ? 1 : -1));
  const left = instance.components[at]!.stocks.find(({ id }) => id === vial)!.availableDrops ?? Infinity;
  if (counted[vial!]! > left) return null; // no vial gives more than it holds
  if (random() < 0.4) finished.push(best.lines[at]!.componentId);
  return { instance, best, counted, finished };
}
