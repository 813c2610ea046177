import createHighs, { type Highs, type HighsSolution } from 'highs';
import type { Plan, PlanInstance } from '../../src/core/plan/instance';
import { judgePlan } from '../../src/core/plan/judge';
import { roundEveryLine } from '../core/plan/byHand';

/**
 * The drop plan as mixed-integer linear programs, for an independent general solver (HiGHS, https://highs.dev).
 *
 * - counts: whole n per vial, binary y per vial (z = 0 only: √n is not linear);
 * - one-hot: one binary per (vial, count), so lo and hi of a line are constants of its options; any z, one or two vials.
 * Free or ranged scale, smallest worst error, either way parametric (Dinkelbach): for an error q, smallest t with
 * hi ≤ (1+q)s + t and lo ≥ (1−q)s − t; q ← error of the plan found, until t ≥ 0.
 * Free scale, one-hot: one program, smallest ln U − ln L.
 */
interface Option {
  readonly line: number;
  readonly plan: Plan;
  readonly rho: number;
  readonly sd: number;
  readonly drops: number;
  readonly mass: number;
  readonly solvent: Readonly<Record<string, number>>;
}

export interface MilpResult {
  readonly objective: number;
  readonly finished: boolean;
  readonly programs: number;
}

let highs: Highs | null = null;

async function run(lp: string, seconds: number): Promise<HighsSolution> {
  highs ??= await createHighs();
  try {
    return highs.solve(lp, {
      time_limit: Math.max(0.01, seconds),
      mip_rel_gap: 0,
      mip_abs_gap: 1e-9,
      primal_feasibility_tolerance: 1e-9,
      mip_feasibility_tolerance: 1e-9,
      output_flag: false,
    });
  } catch (fault) {
    highs = null; // a WebAssembly instance that trapped is not used again
    throw fault;
  }
}

export type Form = 'counts' | 'oneHot' | 'log';

/** The forms that state an instance exactly, the one that is mostly fastest first. One program does at a known scale. */
export function formsFor({ objective, scale }: PlanInstance): readonly Form[] {
  if (objective.z === 0) return scale.kind === 'free' ? ['counts', 'log'] : ['counts', 'oneHot'];
  return scale.kind === 'free' ? ['log', 'oneHot'] : ['oneHot'];
}

/** HiGHS' best objective for an instance; null where it finds the limits cannot be kept. `seconds`: time for all its programs. */
export async function milpOptimum(instance: PlanInstance, seconds: number, form: Form): Promise<MilpResult | null> {
  const end = performance.now() + 1000 * seconds;
  const left = () => (end - performance.now()) / 1000;
  if (form === 'log') return single(instance, logProgram(instance), left);
  const start = roundEveryLine(instance)?.objective;
  let q = start !== undefined && start < 1 ? start : 0.999;
  let reached = start ?? Infinity;
  for (let programs = 1; ; programs++) {
    const program = form === 'counts' ? countProgram(instance, q) : oneHotProgram(instance, q);
    const solution = await run(program.lp, left());
    if (solution.Status === 'Infeasible') return null;
    if (solution.Status !== 'Optimal') return { objective: reached, finished: false, programs };
    const { objective } = judgePlan(instance, program.planOf(solution));
    if (instance.scale.kind === 'fixed') return { objective, finished: true, programs };
    if (objective >= q - 1e-9) return { objective: Math.min(reached, objective), finished: true, programs };
    q = reached = objective;
  }
}

interface Program {
  readonly lp: string;
  planOf(solution: HighsSolution): Plan;
}

async function single(instance: PlanInstance, program: Program, left: () => number): Promise<MilpResult | null> {
  const solution = await run(program.lp, left());
  if (solution.Status === 'Infeasible') return null;
  const finished = solution.Status === 'Optimal';
  if (!finished) return { objective: Infinity, finished, programs: 1 };
  return { objective: judgePlan(instance, program.planOf(solution)).objective, finished, programs: 1 };
}

const signed = (x: number) => (x < 0 ? `- ${-x}` : `+ ${x}`);
const sum = (terms: (readonly [number, string])[]) => terms.map(([x, name]) => `${signed(x)} ${name}`).join(' ');

function ends({ scale }: PlanInstance): [number, number] {
  if (scale.kind === 'free') return [0, Infinity];
  return scale.kind === 'fixed' ? [scale.mgPerPart, scale.mgPerPart] : [scale.min, scale.max];
}

function scaleBounds(instance: PlanInstance): string {
  const [min, max] = ends(instance);
  return max === Infinity ? ` s >= 1e-9` : ` ${min} <= s <= ${max}`;
}

function countProgram(instance: PlanInstance, q: number): Program {
  const { components, limits } = instance;
  const names = new Map(components.flatMap(({ stocks }) => stocks).map(({ id }, at) => [id, at] as const));
  const n = (id: string) => `n${names.get(id)!}`;
  const y = (id: string) => `y${names.get(id)!}`;
  const all = components.flatMap(({ stocks }) => stocks);
  const rows = components.flatMap(({ parts, stocks }) => {
    const rho = sum(stocks.map((s) => [(s.strength * s.mgPerDrop) / parts, n(s.id)] as const));
    const count = sum(stocks.map((s) => [1, n(s.id)] as const));
    return [
      `${rho} - ${1 + q} s - t <= 0`,
      `${rho} - ${1 - q} s + t >= 0`,
      `${count} >= ${limits.minDropsPerComponent}`,
      `${sum(stocks.map((s) => [1, y(s.id)] as const))} <= ${limits.maxStocksPerComponent}`,
      ...stocks.map((s) => `${n(s.id)} - ${Math.min(s.availableDrops ?? Infinity, limits.maxDrops)} ${y(s.id)} <= 0`),
    ];
  });
  rows.push(`${sum(all.map((s) => [1, n(s.id)] as const))} <= ${limits.maxDrops}`);
  if (limits.maxTotalMassMg !== null)
    rows.push(`${sum(all.map((s) => [s.mgPerDrop, n(s.id)] as const))} <= ${limits.maxTotalMassMg}`);
  for (const [solvent, cap] of Object.entries(limits.maxSolventMassMg)) {
    const used = all.filter((s) => s.solvent === solvent);
    if (used.length > 0)
      rows.push(`${sum(used.map((s) => [s.mgPerDrop * (1 - s.strength), n(s.id)] as const))} <= ${cap}`);
  }
  const lp = [
    'Minimize',
    ' obj: t',
    'Subject To',
    ...rows.map((row, at) => ` r${at}: ${row}`),
    'Bounds',
    ' t free',
    scaleBounds(instance),
    'General',
    ` ${all.map((s) => n(s.id)).join(' ')}`,
    'Binary',
    ` ${all.map((s) => y(s.id)).join(' ')}`,
    'End',
  ].join('\n');
  const planOf = (solution: HighsSolution) =>
    Object.fromEntries(
      all.map((s) => [s.id, Math.round(primal(solution, n(s.id)))] as const).filter(([, drops]) => drops > 0),
    );
  return { lp, planOf };
}

function primal(solution: HighsSolution, name: string): number {
  const column = solution.Columns[name];
  return column && 'Primal' in column ? (column.Primal as number) : 0;
}

function optionsOf({ components, limits }: PlanInstance): Option[] {
  const spare = limits.maxDrops - limits.minDropsPerComponent * (components.length - 1);
  return components.flatMap(({ parts, stocks }, line) => {
    const room = (at: number) => Math.min(stocks[at]!.availableDrops ?? Infinity, spare);
    const option = (counts: [number, number][]): Option => {
      const total = (each: (at: number) => number) => counts.reduce((t, [at, n]) => t + n * each(at), 0);
      const solvent: Record<string, number> = {};
      for (const [at, n] of counts) {
        const s = stocks[at]!;
        solvent[s.solvent] = (solvent[s.solvent] ?? 0) + n * s.mgPerDrop * (1 - s.strength);
      }
      return {
        line,
        plan: Object.fromEntries(counts.map(([at, n]) => [stocks[at]!.id, n])),
        rho: total((at) => stocks[at]!.strength * stocks[at]!.mgPerDrop) / parts,
        sd: Math.sqrt(total((at) => (stocks[at]!.strength * stocks[at]!.mgPerDrop * stocks[at]!.rsd) ** 2)) / parts,
        drops: total(() => 1),
        mass: total((at) => stocks[at]!.mgPerDrop),
        solvent,
      };
    };
    const found: Option[] = [];
    for (let a = 0; a < stocks.length; a++)
      for (let na = 1; na <= room(a); na++) {
        found.push(option([[a, na]]));
        for (let b = a + 1; b < stocks.length && limits.maxStocksPerComponent > 1; b++)
          for (let nb = 1; nb <= Math.min(room(b), spare - na); nb++)
            found.push(
              option([
                [a, na],
                [b, nb],
              ]),
            );
      }
    return found.filter(({ drops }) => drops >= limits.minDropsPerComponent);
  });
}

/** Rows common to all one-hot programs: one option a line, and the limits. */
function oneHotRows(instance: PlanInstance, options: readonly Option[]): string[] {
  const { components, limits } = instance;
  const x = (each: (option: Option) => number) => sum(options.map((option, at) => [each(option), `x${at}`] as const));
  const ofLine = (line: number) =>
    options.flatMap((option, at) => (option.line === line ? [[1, `x${at}`] as const] : []));
  const rows = components.map((_, line) => `${sum(ofLine(line))} = 1`);
  rows.push(`${x(({ drops }) => drops)} <= ${limits.maxDrops}`);
  if (limits.maxTotalMassMg !== null) rows.push(`${x(({ mass }) => mass)} <= ${limits.maxTotalMassMg}`);
  for (const [name, cap] of Object.entries(limits.maxSolventMassMg))
    rows.push(`${x(({ solvent }) => solvent[name] ?? 0)} <= ${cap}`);
  return rows;
}

function oneHot(
  options: readonly Option[],
  objective: string,
  rows: readonly string[],
  bounds: readonly string[],
): Program {
  const lp = [
    'Minimize',
    ` obj: ${objective}`,
    'Subject To',
    ...rows.map((row, at) => ` r${at}: ${row}`),
    'Bounds',
    ...bounds,
    'Binary',
    ` ${options.map((_, at) => `x${at}`).join(' ')}`,
    'End',
  ].join('\n');
  const planOf = (solution: HighsSolution) =>
    Object.assign({}, ...options.filter((_, at) => primal(solution, `x${at}`) > 0.5).map(({ plan }) => plan)) as Plan;
  return { lp, planOf };
}

function perLine(instance: PlanInstance, options: readonly Option[], each: (option: Option) => number): string[] {
  return instance.components.map((_, line) =>
    sum(options.flatMap((option, at) => (option.line === line ? [[each(option), `x${at}`] as const] : []))),
  );
}

function oneHotProgram(instance: PlanInstance, q: number): Program {
  const options = optionsOf(instance);
  const { z } = instance.objective;
  const rows = [
    ...oneHotRows(instance, options),
    ...perLine(instance, options, ({ rho, sd }) => rho + z * sd).map((hi) => `${hi} - ${1 + q} s - t <= 0`),
    ...perLine(instance, options, ({ rho, sd }) => rho - z * sd).map((lo) => `${lo} - ${1 - q} s + t >= 0`),
  ];
  return oneHot(options, 't', rows, [' t free', scaleBounds(instance)]);
}

function logProgram(instance: PlanInstance): Program {
  const options = optionsOf(instance);
  const { z } = instance.objective;
  const rows = [
    ...oneHotRows(instance, options),
    ...perLine(instance, options, ({ rho, sd }) => Math.log(rho + z * sd)).map((hi) => `${hi} - u <= 0`),
    ...perLine(instance, options, ({ rho, sd }) => Math.log(rho - z * sd)).map((lo) => `${lo} - l >= 0`),
  ];
  return oneHot(options, 'u - l', rows, [' u free', ' l free']);
}
