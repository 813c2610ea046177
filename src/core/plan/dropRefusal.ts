import { cheapestPick, drawer, smallestOptions } from './dropCaps';
import type { PlanComponent, PlanInstance, PlanRefusal, PlanStock } from './dropInstance';
import type { Problem } from './dropTerms';

type Words = Omit<PlanRefusal, 'ok'>;

const EVERYTHING = { low: 0, high: Infinity }; // a window that no line can miss

/** Why an instance cannot be planned as it is asked, before any search; null where its numbers make sense (our choice). */
export function refusalOfAsk(instance: PlanInstance): PlanRefusal | null {
  const { components, limits } = instance;
  const found =
    (components.length === 0 && words(null, 'The formula has no line.', 'Put a material into the formula.')) ||
    (!(whole(limits.maxDrops) && limits.maxDrops >= 1) &&
      words(null, 'The limit of drops is not a whole number above zero.', 'Set a limit of drops.')) ||
    (!(whole(limits.minDropsPerComponent) && limits.minDropsPerComponent >= 1) &&
      words(
        null,
        'The fewest drops of a line is not a whole number above zero.',
        'Ask for at least one drop a line.',
      )) ||
    (![1, 2].includes(limits.maxStocksPerComponent) &&
      words(null, 'A line can be drawn from one vial or from two.', 'Choose one or two vials a line.')) ||
    refusalOfScale(instance) ||
    components.map((component) => refusalOfLine(component, instance)).find((each) => each !== null);
  return found ? { ok: false, ...found } : null;
}

function words(componentId: string | null, why: string, remedy: string): Words {
  return { componentId, why, remedy };
}

function whole(n: number): boolean {
  return Number.isInteger(n);
}

function refusalOfScale({ scale, objective, limits }: PlanInstance): Words | null {
  const ends = scale.kind === 'fixed' ? [scale.mgPerPart] : scale.kind === 'range' ? [scale.min, scale.max] : [1];
  if (!ends.every((end) => end > 0 && end < Infinity) || ends[0]! > ends.at(-1)!)
    return words(
      null,
      'The dose in the drink is not above zero.',
      'Give a drink and ppm above zero, or leave the dose free.',
    );
  if (!(objective.z >= 0 && objective.z <= 5))
    // our choice: beyond five standard deviations nothing is meant
    return words(null, 'The counting doubt is taken 0 to 5 times.', 'Count the doubt 0, 1 or 2 times.');
  const caps = [limits.maxTotalMassMg ?? 1, ...Object.values(limits.maxSolventMassMg)];
  return caps.every((cap) => cap >= 0)
    ? null
    : words(null, 'A limit of mass is below zero.', 'Set it to zero or more.');
}

function refusalOfLine(component: PlanComponent, instance: PlanInstance): Words | null {
  const name = component.name ?? component.id;
  const no = (why: string, remedy: string) => words(component.id, why, remedy);
  if (!(component.parts > 0 && component.parts < Infinity))
    return no(`${name} has no share in the formula.`, `Give ${name} parts above zero, or take it out.`);
  if (component.stocks.length === 0)
    return no(`No vial on the shelf holds ${name}.`, `Make a dilution of ${name}, or take it out of the formula.`);
  const odd = component.stocks.map((stock) => oddVial(stock, instance.objective.z)).find((each) => each !== null);
  if (odd) return no(...odd);
  const usable = component.stocks.filter(({ strength }) => strength > 0);
  if (usable.length === 0)
    return no(`Every vial of ${name} has strength zero.`, `Make a dilution of ${name} that holds some of it.`);
  const { minDropsPerComponent: least, maxStocksPerComponent: vials } = instance.limits;
  const drops = usable.map(({ availableDrops }) => availableDrops ?? Infinity).sort((a, b) => b - a);
  const most = drops.slice(0, vials).reduce((sum, n) => sum + n, 0);
  if (most >= least) return null;
  return no(
    `${name} needs at least ${least} ${least === 1 ? 'drop' : 'drops'} and its vials can give ${most}.`,
    `Make more of ${name}${most > 0 ? `, or ask for ${most} ${most === 1 ? 'drop' : 'drops'} a line` : ''}.`,
  );
}

function oddVial({ id, strength, mgPerDrop, rsd, availableDrops }: PlanStock, z: number): [string, string] | null {
  if (!(strength >= 0 && strength <= 1))
    return [`The strength of vial ${id} is not between 0 and 100 %.`, `Correct the strength of vial ${id}.`];
  if (!(mgPerDrop > 0 && mgPerDrop < Infinity))
    return [`The drop of vial ${id} has no mass.`, `Calibrate the dropper of vial ${id}.`];
  if (!(rsd >= 0 && z * rsd < 1))
    return [
      `The drops of vial ${id} spread so far that one of them may hold nothing.`,
      `Calibrate the dropper of vial ${id}, or count the doubt fewer times.`,
    ];
  if (availableDrops !== null && !(whole(availableDrops) && availableDrops >= 0))
    return [`The drops left in vial ${id} are not a whole number.`, `Correct what is left in vial ${id}.`];
  return null;
}

/**
 * Which limit leaves no plan at all, and how far it must be raised (drops or mg); null where some plan keeps all of them. Our
 * own.
 */
export function refusalOfLimits(problem: Problem): PlanRefusal | null {
  if (drawer(problem).fits(0, Infinity, problem.cap)) return null;
  const lists = problem.lines.map((line) => smallestOptions(line, EVERYTHING));
  const dry = lists.findIndex((list) => list.length === 0);
  if (dry >= 0) {
    const id = problem.lines[dry]!.componentId;
    return {
      ok: false,
      ...words(id, `The vials of ${id} cannot give the drops it still needs.`, `Make more of ${id}.`),
    };
  }
  const caps = [problem.cap, ...problem.caps];
  const names = ['drops', ...problem.capNames.map((name) => (name === 'mass' ? 'mg in all' : `mg of ${name}`))];
  const alone = caps.findIndex((cap, at) => cap < least(lists, at));
  if (alone >= 0) return tooSmall(names[alone]!, { need: least(lists, alone), cap: caps[alone]! });
  for (let at = caps.length - 1; at >= 0; at--) {
    const priced = lists.map((list) => list.map((option) => ({ ...option, cost: option.uses[at]! })));
    const picked = cheapestPick(priced, caps.with(at, Infinity));
    if (!picked) continue;
    const need = picked.reduce((sum, { cost }) => sum + cost, 0);
    return tooSmall(names[at]!, { need, cap: caps[at]! }, ' beside the other limits');
  }
  return {
    ok: false,
    ...words(null, 'No choice of vials keeps the limits together.', 'Raise more than one of the limits.'),
  };
}

function least(lists: readonly (readonly { uses: readonly number[] }[])[], at: number): number {
  return lists.reduce((sum, list) => sum + Math.min(...list.map(({ uses }) => uses[at]!)), 0);
}

function tooSmall(what: string, { need, cap }: { need: number; cap: number }, beside = ''): PlanRefusal {
  const [wanted, allowed] = [Math.ceil(need), Math.max(0, Math.floor(cap))]; // whole mg, to the safe side
  return {
    ok: false,
    ...words(
      null,
      `These lines need ${wanted} ${what}${beside}, and the limit leaves ${allowed}.`,
      `Allow ${wanted} ${what}, or take a line out.`,
    ),
  };
}
