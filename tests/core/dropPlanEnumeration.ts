import type { Plan, PlanInstance } from '../../src/core/plan/instance';

/** Random numbers that are the same on every run. Mulberry32, a common public-domain generator; uniform in [0, 1). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Parts from 1 to 200. The second draw is not used: with it the instances of a seed stay those of earlier measurements. */
function partsFrom(random: () => number): number {
  const parts = Math.exp(random() * Math.log(200));
  random();
  return parts;
}

/** A random shelf and formula; spreads, drop masses and strengths in the range of squeeze bottles and a 1-2-5 bench. */
export function randomInstance(
  seed: number,
  size: { lines: number; vials: number; cap: number },
  ask: Partial<Pick<PlanInstance, 'scale' | 'objective'>> & { limits?: Partial<PlanInstance['limits']> } = {},
): PlanInstance {
  const random = seeded(seed);
  const strengths = [1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.001];
  return {
    id: `random ${seed}`,
    components: Array.from({ length: size.lines }, (_, i) => ({
      id: `c${i}`,
      parts: partsFrom(random),
      stocks: Array.from({ length: size.vials }, (_, j) => {
        const strength = strengths[Math.floor(random() * strengths.length)]!;
        return {
          id: `c${i}s${j}`,
          strength: Math.min(1, strength * (0.9 + 0.2 * random())),
          mgPerDrop: 12 + 30 * random(),
          rsd: random() < 0.2 ? 0 : 0.02 + 0.1 * random(),
          availableDrops: random() < 0.3 ? 2 + Math.floor(random() * size.cap) : null,
          solvent: strength === 1 ? 'none' : random() < 0.6 ? 'ethanol' : 'propyleneGlycol',
        };
      }),
    })),
    scale: ask.scale ?? { kind: 'free' },
    objective: ask.objective ?? { kind: 'minimax', z: 1 },
    limits: {
      maxDrops: size.cap,
      minDropsPerComponent: 1,
      maxStocksPerComponent: 1,
      maxTotalMassMg: null,
      maxSolventMassMg: {},
      ...ask.limits,
    },
  };
}

/** Every way to count one line with at most `cap` drops: counts in the order of its vials. */
function countsOfLine(instance: PlanInstance, line: number, cap: number): number[][] {
  const { stocks } = instance.components[line]!;
  const { minDropsPerComponent, maxStocksPerComponent } = instance.limits;
  let all: number[][] = [[]];
  for (const { availableDrops } of stocks)
    all = all.flatMap((counts) => {
      const left = Math.min(availableDrops ?? Infinity, cap - counts.reduce((sum, n) => sum + n, 0));
      return Array.from({ length: left + 1 }, (_, n) => [...counts, n]);
    });
  return all.filter(
    (counts) =>
      counts.reduce((sum, n) => sum + n, 0) >= minDropsPerComponent &&
      counts.filter((n) => n > 0).length <= maxStocksPerComponent,
  );
}

/** Every plan that keeps the drop limits, by plain enumeration: no idea of the solver is used. For tiny instances only. */
export function* everyPlan(instance: PlanInstance): Generator<Plan> {
  const { components, limits } = instance;
  const spare = limits.maxDrops - limits.minDropsPerComponent * (components.length - 1);
  const lists = components.map((_, line) => countsOfLine(instance, line, spare));
  function* from(line: number, plan: Record<string, number>, left: number): Generator<Plan> {
    if (line === components.length) {
      yield plan;
      return;
    }
    for (const counts of lists[line]!) {
      const used = counts.reduce((sum, n) => sum + n, 0);
      if (used > left) continue;
      const more = Object.fromEntries(components[line]!.stocks.map(({ id }, at) => [id, counts[at]!]));
      yield* from(line + 1, { ...plan, ...more }, left - used);
    }
  }
  yield* from(0, {}, limits.maxDrops);
}

/** Objective of a plan as the file format states it, written a second time; drops; which limits it keeps. */
export function weighed(
  instance: PlanInstance,
  plan: Plan,
): { objective: number; drops: number; keeps: boolean; sum: number } {
  const { components, limits, scale, objective } = instance;
  const { z } = objective;
  const rows = components.map(({ parts, stocks }) => ({
    rho: stocks.reduce((t, s) => t + s.strength * s.mgPerDrop * (plan[s.id] ?? 0), 0) / parts,
    sd: Math.sqrt(stocks.reduce((t, s) => t + (plan[s.id] ?? 0) * (s.strength * s.mgPerDrop * s.rsd) ** 2, 0)) / parts,
  }));
  const all = components.flatMap(({ stocks }) => stocks);
  const total = (each: (s: (typeof all)[number]) => number) => all.reduce((t, s) => t + (plan[s.id] ?? 0) * each(s), 0);
  const keeps =
    total((s) => s.mgPerDrop) <= (limits.maxTotalMassMg ?? Infinity) * (1 + 1e-9) &&
    Object.entries(limits.maxSolventMassMg).every(
      ([name, cap]) => total((s) => (s.solvent === name ? s.mgPerDrop * (1 - s.strength) : 0)) <= cap * (1 + 1e-9),
    );
  const [min, max] =
    scale.kind === 'free'
      ? [0, Infinity]
      : scale.kind === 'fixed'
        ? [scale.mgPerPart, scale.mgPerPart]
        : [scale.min, scale.max];
  const errorAt = (s: number) =>
    Math.max(...rows.map(({ rho, sd }) => Math.max((rho + z * sd) / s - 1, 1 - (rho - z * sd) / s)));
  const middle =
    (Math.min(...rows.map(({ rho, sd }) => rho - z * sd)) + Math.max(...rows.map(({ rho, sd }) => rho + z * sd))) / 2;
  const best = Math.min(max, Math.max(min, middle));
  const sum = rows.reduce((t, { rho }) => t + Math.abs(rho / best - 1), 0);
  return { objective: errorAt(best), drops: total(() => 1), keeps, sum };
}
