import { readFileSync } from 'node:fs';
import { tradeOff } from '../../src/core/plan/dropFront';
import type { PlanInstance } from '../../src/core/plan/dropInstance';
import { bestPlan } from '../../src/core/plan/dropPlan';
import { randomInstance } from '../core/dropPlanEnumeration';
import { milpOptimum } from './dropPlanMilp';

const HIGHS_SECONDS = 20;
const RUNS = 15; // our own time is the median of these, after as many to warm up

interface Case extends PlanInstance {
  readonly id: string;
  readonly category?: string;
  readonly optimum?: { readonly objective: number };
}

interface Line {
  readonly id: string;
  readonly family: string;
  readonly objective: number | null;
  readonly optimum: 'yes' | 'no' | 'unknown';
  readonly ms: number;
  readonly frontMs: number;
  readonly highsMs: number | null;
  readonly highsFinished: boolean | null;
  readonly ratio: number | null;
}

/**
 * Our plan and HiGHS' on the same instances in one process. Rounding alone: HiGHS counts whole drops, parametric (Dinkelbach) at
 * free scale; with counting noise: one binary per count, in logarithms at free scale. Limit 20 s an instance.
 */
export async function dropPlanBench(
  file = new URL('../reference/dropPlans.json', import.meta.url).pathname,
): Promise<void> {
  const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: Case[] };
  for (let i = 0; i < 3; i++) for (const instance of instances.slice(0, 12)) bestPlan(instance); // warm-up
  const lines: Line[] = [];
  for (const instance of instances) lines.push(await measured(instance, instance.category ?? 'default', true));
  for (const [family, size, count] of [
    ['12 x 4, cap 120', { lines: 12, vials: 4, cap: 120 }, 20],
    ['25 x 4, cap 200', { lines: 25, vials: 4, cap: 200 }, 12],
  ] as const)
    for (let seed = 1; seed <= count; seed++)
      lines.push(await measured({ ...randomInstance(seed, size), id: `${family} #${seed}` }, family, seed <= 2));
  for (const family of new Set(lines.map((line) => line.family)))
    summary(lines.filter((line) => line.family === family));
  summary(
    lines.filter(({ id }) => instances.some((instance) => instance.id === id)),
    'all of the file',
  );
}

async function measured(instance: Case, family: string, withHighs: boolean): Promise<Line> {
  const own = bestPlan(instance);
  const slow = timed(() => bestPlan(instance)) > 50; // then fewer runs do
  const ms = medianTime(() => bestPlan(instance), slow ? 3 : RUNS);
  const frontMs = medianTime(() => tradeOff(instance), 3);
  const form = instance.objective.z === 0 ? 'counts' : instance.scale.kind === 'free' ? 'log' : 'oneHot';
  const start = performance.now();
  const highs = withHighs ? await milpOptimum(instance, HIGHS_SECONDS, form).catch(() => undefined) : undefined;
  const highsMs = highs === undefined ? null : performance.now() - start;
  const objective = own.ok ? own.objective : null;
  const proven = instance.optimum?.objective ?? (highs?.finished ? highs.objective : null);
  const line: Line = {
    id: instance.id,
    family,
    objective,
    optimum: proven === null || objective === null ? 'unknown' : Math.abs(objective - proven) <= 1e-6 ? 'yes' : 'no',
    ms: rounded(ms),
    frontMs: rounded(frontMs),
    highsMs: highsMs === null ? null : rounded(highsMs),
    highsFinished: highs === undefined ? null : (highs?.finished ?? true),
    ratio: highsMs === null ? null : Math.round(highsMs / ms),
  };
  console.log(JSON.stringify(line));
  return line;
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function medianTime(work: () => unknown, runs: number): number {
  for (let i = 0; i < runs; i++) work();
  return median(Array.from({ length: runs }, () => timed(work)))!;
}

function median(numbers: readonly (number | null)[]): number | null {
  const known = numbers.filter((x) => x !== null).sort((a, b) => a - b);
  return known.length === 0 ? null : known[known.length >> 1]!;
}

const rounded = (ms: number) => Number(ms.toPrecision(4));

function summary(lines: readonly Line[], family = lines[0]!.family): void {
  const own = lines.map(({ ms }) => ms);
  console.log(
    JSON.stringify({
      summary: family,
      instances: lines.length,
      optimum: lines.filter(({ optimum }) => optimum === 'yes').length,
      notOptimum: lines.filter(({ optimum }) => optimum === 'no').length,
      medianMs: median(own),
      worstMs: Math.max(...own),
      medianFrontMs: median(lines.map(({ frontMs }) => frontMs)),
      medianHighsMs: median(lines.map(({ highsMs }) => highsMs)),
      highsUnfinished: lines.filter(({ highsFinished }) => highsFinished === false).length,
      medianRatio: median(lines.map(({ ratio }) => ratio)),
    }),
  );
}
