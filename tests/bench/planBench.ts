import { readFileSync } from 'node:fs';
import { tradeOff } from '../../src/core/plan/tradeOff';
import type { PlanInstance } from '../../src/core/plan/instance';
import { bestPlan } from '../../src/core/plan/bestPlan';
import { randomInstance } from '../core/dropPlanEnumeration';
import { formsFor, milpOptimum, type Form, type MilpResult } from './dropPlanMilp';

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
  readonly drops: number | null;
  readonly optimum: 'yes' | 'no' | 'unknown';
  readonly ms: number;
  readonly frontMs: number;
  /** Of the form that HiGHS proved optimal soonest. Where it proved none, the time it was given, and the ratio is a lower bound. */
  readonly msMilp: number | null;
  readonly milpFinished: boolean;
  readonly form: Form | null;
  readonly ratio: number | null;
}

/**
 * Our plan and HiGHS' on the same instances in one process. Of the exact linear forms that an instance has (dropPlanMilp.ts)
 * the fastest counts; each stops when another was faster, or at 20 s. `file` holds other instances, in the shape of
 * tests/reference/dropPlans.json; without one these are measured, and larger ones drawn at random.
 */
export async function planBench(file?: string): Promise<void> {
  const path = file ?? new URL('../reference/dropPlans.json', import.meta.url).pathname;
  const all = (JSON.parse(readFileSync(path, 'utf8')) as { instances: Case[] }).instances;
  const instances = all.filter(({ objective }) => objective.kind === 'minimax');
  for (let i = 0; i < 3; i++) for (const instance of instances.slice(0, 12)) bestPlan(instance); // warm-up
  const lines: Line[] = [];
  for (const instance of instances) lines.push(await measured(instance, instance.category ?? 'default'));
  const fromFile = lines.length;
  for (const { family, size, count } of file ? [] : LARGER)
    for (let seed = 1; seed <= count; seed++)
      lines.push(await measured({ ...randomInstance(seed, size), id: `${family} #${seed}` }, family));
  for (const family of new Set(lines.map((line) => line.family)))
    summary(
      lines.filter((line) => line.family === family),
      family,
    );
  summary(lines.slice(0, fromFile), 'all of the file');
}

const LARGER = [
  { family: '12 x 4, cap 120', size: { lines: 12, vials: 4, cap: 120 }, count: 3 },
  { family: '25 x 4, cap 200', size: { lines: 25, vials: 4, cap: 200 }, count: 3 },
];

async function measured(instance: Case, family: string): Promise<Line> {
  const own = bestPlan(instance);
  const slow = timed(() => bestPlan(instance)) > 50; // then fewer runs do
  const ms = medianTime(() => bestPlan(instance), slow ? 3 : RUNS);
  const milp = await fastestMilp(instance);
  const objective = own.ok ? own.objective : null;
  const proven = instance.optimum?.objective ?? (milp?.finished ? milp.objective : null);
  const line: Line = {
    id: instance.id,
    family,
    objective,
    drops: own.ok ? own.drops : null,
    optimum: proven === null || objective === null ? 'unknown' : Math.abs(objective - proven) <= 1e-6 ? 'yes' : 'no',
    ms: rounded(ms),
    frontMs: rounded(medianTime(() => tradeOff(instance), 3)),
    msMilp: milp && rounded(milp.ms),
    milpFinished: milp?.finished ?? false,
    form: milp && milp.form,
    ratio: milp && Math.round(milp.ms / ms),
  };
  console.log(JSON.stringify(line));
  return line;
}

interface Milp {
  readonly form: Form;
  readonly ms: number;
  readonly finished: boolean;
  readonly objective: number;
}

/** The form of the instance that HiGHS proves optimal soonest; where it proves none, the first one with the time it was given. */
async function fastestMilp(instance: Case): Promise<Milp | null> {
  let fastest: Milp | null = null;
  for (const form of formsFor(instance)) {
    const limit: number = fastest?.finished ? fastest.ms / 1000 : HIGHS_SECONDS;
    const start = performance.now();
    const found: MilpResult | null = await milpOptimum(instance, limit, form).catch(() => null); // a trap in its WebAssembly
    const tried = { form, ms: performance.now() - start, finished: false, ...found };
    if (!fastest || (tried.finished && (!fastest.finished || tried.ms < fastest.ms))) fastest = tried as Milp;
  }
  return fastest;
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

function summary(lines: readonly Line[], of: string): void {
  const own = lines.map(({ ms }) => ms);
  console.log(
    JSON.stringify({
      summary: of,
      instances: lines.length,
      optimum: lines.filter(({ optimum }) => optimum === 'yes').length,
      notOptimum: lines.filter(({ optimum }) => optimum === 'no').length,
      medianMs: median(own),
      worstMs: Math.max(...own),
      medianFrontMs: median(lines.map(({ frontMs }) => frontMs)),
      medianMsMilp: median(lines.map(({ msMilp }) => msMilp)),
      milpUnfinished: lines.filter(({ milpFinished }) => !milpFinished).length,
      medianRatio: median(lines.map(({ ratio }) => ratio)),
      leastRatio: Math.min(...lines.flatMap(({ ratio }) => ratio ?? [])),
    }),
  );
}
