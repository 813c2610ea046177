import type { Shortage } from './draw';
import type { Plan, PlanAnswer, PlanComponent, PlanInstance, PlanLine, PlanRefusal, PlanResult } from './instance';
import { CAP_SLACK, type Problem } from './problem';
import type { Found } from './search';
import { Refusal, sentence, type Sentence } from '../text/refusal';

/** Any plan's numbers, and which limits it breaks; a plan that keeps all has none. */
export interface PlanJudgement extends PlanAnswer {
  /** One sentence for each broken limit. */
  readonly problems: readonly Sentence[];
  /** Mass of the whole trial, mg. */
  readonly massMg: number;
  /** Mass of each solvent in it, mg. */
  readonly solventMg: Readonly<Record<string, number>>;
}

interface Row {
  readonly component: PlanComponent;
  readonly stockIds: readonly string[];
  readonly drops: number;
  /** mg of neat material per part, and one standard deviation of counting. */
  readonly rho: number;
  readonly sd: number;
}

/**
 * Numbers of any plan, hand-made ones too, by arithmetic in closed form: ρ = Σ strength · mg/drop · n / parts of each line,
 * sd = √Σ n · (strength · mg/drop · rsd)² / parts (independent drops), at the scale that suits the plan best.
 * That is s = (L+U)/2 within the scale's range, L and U the smallest ρ − z·sd and largest ρ + z·sd.
 * @throws Refusal for a stock that the instance does not have, or drops that are not whole
 */
export function judgePlan(instance: PlanInstance, plan: Plan): PlanJudgement {
  const known = new Set(instance.components.flatMap(({ stocks }) => stocks.map(({ id }) => id)));
  for (const [id, n] of Object.entries(plan)) {
    if (!known.has(id)) throw new Refusal('no material has a vial {vial}', { vial: { id } });
    if (!(Number.isInteger(n) && n >= 0))
      throw new Refusal('drops are whole: {n} of vial {vial} cannot be counted', { n, vial: { id } });
  }
  const rows = instance.components.map((component) => row(component, plan));
  const used = masses(instance, plan);
  return { ...numbers(instance, plan, rows), problems: problems(instance, { plan, rows, used }), ...used };
}

/** The numbers of a plan that is known to keep all limits; arithmetic as in judgePlan, without looking for broken ones. */
export function answerOf(instance: PlanInstance, plan: Plan): PlanAnswer {
  return numbers(
    instance,
    plan,
    instance.components.map((component) => row(component, plan)),
  );
}

function numbers(instance: PlanInstance, plan: Plan, rows: readonly Row[]): PlanAnswer {
  const { scale, objective } = bestScale(instance, rows);
  const { z } = instance.objective;
  return {
    ok: true,
    plan,
    objective,
    drops: rows.reduce((sum, { drops }) => sum + drops, 0),
    scaleMgPerPart: scale,
    lines: rows.map((each) => lineAt(each, scale, z)),
  };
}

function row(component: PlanComponent, plan: Plan): Row {
  const stockIds: string[] = [];
  let [drops, mg, variance] = [0, 0, 0];
  for (const { id, strength, mgPerDrop, rsd } of component.stocks) {
    const n = plan[id] ?? 0;
    if (n === 0) continue;
    const each = strength * mgPerDrop; // mg of neat material in one drop
    stockIds.push(id);
    drops += n;
    mg += n * each;
    variance += n * (each * rsd) ** 2;
  }
  return { component, stockIds, drops, rho: mg / component.parts, sd: Math.sqrt(variance) / component.parts };
}

function lineAt({ component, stockIds, drops, rho, sd }: Row, scale: number, z: number): PlanLine {
  const rounding = rho / scale - 1;
  const counting = sd / scale;
  return {
    componentId: component.id,
    stockIds,
    drops,
    wishMg: scale * component.parts,
    trueMg: rho * component.parts,
    error: Math.abs(rounding) + z * counting,
    rounding,
    counting,
  };
}

function bestScale(
  { scale, objective: { z } }: PlanInstance,
  rows: readonly Row[],
): { scale: number; objective: number } {
  const min = scale.kind === 'fixed' ? scale.mgPerPart : scale.kind === 'range' ? scale.min : 0;
  const max = scale.kind === 'fixed' ? scale.mgPerPart : scale.kind === 'range' ? scale.max : Infinity;
  const low = Math.min(...rows.map(({ rho, sd }) => rho - z * sd));
  const high = Math.max(...rows.map(({ rho, sd }) => rho + z * sd));
  const s = Math.min(max, Math.max(min, (low + high) / 2));
  return { scale: s, objective: Math.max(high / s - 1, 1 - low / s) };
}

function masses({ components }: PlanInstance, plan: Plan): Pick<PlanJudgement, 'massMg' | 'solventMg'> {
  const solventMg: Record<string, number> = {};
  let massMg = 0;
  for (const { id, strength, mgPerDrop, solvent } of components.flatMap(({ stocks }) => stocks)) {
    const mg = (plan[id] ?? 0) * mgPerDrop;
    massMg += mg;
    if (mg > 0 && solvent !== 'none') solventMg[solvent] = (solventMg[solvent] ?? 0) + mg * (1 - strength);
  }
  return { massMg, solventMg };
}

interface Judged {
  readonly plan: Plan;
  readonly rows: readonly Row[];
  readonly used: Pick<PlanJudgement, 'massMg' | 'solventMg'>;
}

function problems({ components, limits }: PlanInstance, { plan, rows, used }: Judged): Sentence[] {
  const drops = rows.reduce((sum, each) => sum + each.drops, 0);
  const over = (mg: number, cap: number | null | undefined) => cap != null && mg > cap * (1 + CAP_SLACK);
  return [
    ...rows.flatMap((each) => lineProblems(each, limits)),
    ...components
      .flatMap(({ stocks }) => stocks)
      .filter(({ id, availableDrops }) => (plan[id] ?? 0) > (availableDrops ?? Infinity))
      .map(({ id, availableDrops }) =>
        sentence('Vial {vial} does not hold {drops} drops: left are {left}.', {
          vial: { id },
          drops: plan[id]!,
          left: availableDrops!,
        }),
      ),
    ...(drops > limits.maxDrops
      ? [sentence('More drops than the limit of {most}: {drops}.', { most: limits.maxDrops, drops })]
      : []),
    ...(over(used.massMg, limits.maxTotalMassMg)
      ? [sentence('The trial is heavier than its limit of {most} mg.', { most: limits.maxTotalMassMg! })]
      : []),
    ...Object.entries(limits.maxSolventMassMg)
      .filter(([name, cap]) => over(used.solventMg[name] ?? 0, cap))
      .map(([name, most]) => sentence('The trial holds more {name} than its limit of {most} mg.', { name, most })),
  ];
}

function lineProblems({ component, drops, stockIds }: Row, limits: PlanInstance['limits']): Sentence[] {
  const line = { id: component.id, name: component.name };
  const { minDropsPerComponent: least, maxStocksPerComponent: vials } = limits;
  return [
    ...(drops < least
      ? [sentence('{line} has fewer drops than the minimum of {least}: {drops}.', { line, least, drops })]
      : []),
    ...(stockIds.length > vials
      ? [
          sentence('{line} is taken from {count} vials, the maximum is {most}.', {
            line,
            count: stockIds.length,
            most: vials,
          }),
        ]
      : []),
  ];
}

/** What a search came to, in numbers or in words. Arithmetic. */
export function resultOf(problem: Problem, found: Found | Shortage): PlanResult {
  return 'short' in found ? refused(problem, found) : answered(problem, found);
}

/** The numbers of a plan found, with the drops already counted; units as in PlanAnswer. Arithmetic. */
export function answered({ instance, counted }: Problem, { choices }: Found): PlanAnswer {
  const plan: Record<string, number> = { ...counted.drops };
  for (const { a, na, b, nb } of choices) {
    if (a && na > 0) plan[a.stockId] = (plan[a.stockId] ?? 0) + na;
    if (b && nb > 0) plan[b.stockId] = (plan[b.stockId] ?? 0) + nb;
  }
  return answerOf(instance, plan);
}

/** The sentences of a shortage; drops and mg whole, to the safe side. Arithmetic. */
export function refused({ instance, massNames }: Problem, shortage: Shortage): PlanRefusal {
  const no = (why: Sentence, remedy: Sentence, componentId: string | null = null) =>
    ({ ok: false, componentId, why, remedy }) as const;
  if (shortage.short === 'together')
    return no(
      sentence('No choice of vials keeps the limits together.'),
      sentence('Raise more than one of the limits.'),
    );
  if (shortage.short === 'cap') {
    const name = massNames[shortage.at - 1];
    const unit = shortage.at === 0 ? 'drops' : name === 'mass' ? 'mg in all' : `mg of ${name}`;
    const wanted = Math.ceil(shortage.need);
    const left = Math.max(0, Math.floor(shortage.left));
    const why = shortage.besides
      ? 'These materials need {wanted} {unit} alongside the other limits, and the limit leaves {left}.'
      : 'These materials need {wanted} {unit}, and the limit leaves {left}.';
    return no(
      sentence(why, { wanted, unit, left }),
      sentence('Allow {wanted} {unit}, or take a material out.', { wanted, unit }),
    );
  }
  const id = shortage.componentId;
  if (shortage.short === 'vials')
    return no(
      sentence('The vials of {line} cannot give the drops it still needs.', { line: { id } }),
      sentence('Make more of {line}.', { line: { id } }),
      id,
    );
  const line = { id, name: instance.components.find((component) => component.id === id)?.name };
  return no(
    sentence('{line} is finished without a drop in it.', { line }),
    sentence('Open {line} again, or take it out of the formula.', { line }),
    id,
  );
}
