import { cheapestPick, drawer, smallestOptions } from './dropCaps';
import type { PlanComponent, PlanInstance, PlanRefusal, PlanStock } from './dropInstance';
import { sentence, type Named, type Sentence } from '../text/refusal';
import type { Problem } from './dropTerms';

type Words = Omit<PlanRefusal, 'ok'>;

const EVERYTHING = { low: 0, high: Infinity }; // a window that no line can miss

/** Why an instance cannot be planned as it is asked, before any search; null where its numbers make sense (our choice). */
export function refusalOfAsk(instance: PlanInstance): PlanRefusal | null {
  const { components } = instance;
  const found =
    (components.length === 0 &&
      words(null, sentence('The formula has no line.'), sentence('Put a material into the formula.'))) ||
    refusalOfCounts(instance) ||
    refusalOfScale(instance) ||
    components.map((component) => refusalOfLine(component, instance)).find((each) => each !== null);
  return found ? { ok: false, ...found } : null;
}

function words(componentId: string | null, why: Sentence, remedy: Sentence): Words {
  return { componentId, why, remedy };
}

function whole(n: number): boolean {
  return Number.isInteger(n);
}

function refusalOfCounts({ limits }: PlanInstance): Words | null {
  if (!(whole(limits.maxDrops) && limits.maxDrops >= 1))
    return words(
      null,
      sentence('The limit of drops is not a whole number above zero.'),
      sentence('Set a limit of drops.'),
    );
  if (!(whole(limits.minDropsPerComponent) && limits.minDropsPerComponent >= 1))
    return words(
      null,
      sentence('The fewest drops of a line is not a whole number above zero.'),
      sentence('Ask for at least one drop a line.'),
    );
  if (![1, 2].includes(limits.maxStocksPerComponent))
    return words(
      null,
      sentence('A line can be drawn from one vial or from two.'),
      sentence('Choose one or two vials a line.'),
    );
  return null;
}

function refusalOfScale({ scale, objective, limits }: PlanInstance): Words | null {
  const ends = scale.kind === 'fixed' ? [scale.mgPerPart] : scale.kind === 'range' ? [scale.min, scale.max] : [1];
  if (!ends.every((end) => end > 0 && end < Infinity) || ends[0]! > ends.at(-1)!)
    return words(
      null,
      sentence('The dose in the drink is not above zero.'),
      sentence('Give a drink and ppm above zero, or leave the dose free.'),
    );
  if (!(objective.z >= 0 && objective.z <= 5))
    // our choice: beyond five standard deviations nothing is meant
    return words(
      null,
      sentence('The counting doubt is taken 0 to 5 times.'),
      sentence('Count the doubt 0, 1 or 2 times.'),
    );
  const caps = [limits.maxTotalMassMg ?? 1, ...Object.values(limits.maxSolventMassMg)];
  return caps.every((cap) => cap >= 0)
    ? null
    : words(null, sentence('A limit of mass is below zero.'), sentence('Set it to zero or more.'));
}

function refusalOfLine(component: PlanComponent, instance: PlanInstance): Words | null {
  const line = { id: component.id, name: component.name };
  const no = (why: Sentence, remedy: Sentence) => words(component.id, why, remedy);
  if (!(component.parts > 0 && component.parts < Infinity))
    return no(
      sentence('{line} has no share in the formula.', { line }),
      sentence('Give {line} parts above zero, or take it out.', { line }),
    );
  if (component.stocks.length === 0)
    return no(
      sentence('No vial on the shelf holds {line}.', { line }),
      sentence('Make a dilution of {line}, or take it out of the formula.', { line }),
    );
  const odd = component.stocks.map((stock) => oddVial(stock, instance.objective.z)).find((each) => each !== null);
  if (odd) return no(...odd);
  const usable = component.stocks.filter(({ strength }) => strength > 0);
  if (usable.length === 0)
    return no(
      sentence('Every vial of {line} has strength zero.', { line }),
      sentence('Make a dilution of {line} that holds some of it.', { line }),
    );
  return refusalOfDrops(line, usable, instance.limits);
}

function refusalOfDrops(line: Named, usable: readonly PlanStock[], limits: PlanInstance['limits']): Words | null {
  const { minDropsPerComponent: least, maxStocksPerComponent: vials } = limits;
  const drops = usable.map(({ availableDrops }) => availableDrops ?? Infinity).sort((a, b) => b - a);
  const most = drops.slice(0, vials).reduce((sum, n) => sum + n, 0);
  if (most >= least) return null;
  return words(
    line.id,
    sentence('{line} needs at least {least} {unit} and its vials can give {most}.', {
      line,
      least,
      most,
      unit: least === 1 ? 'drop' : 'drops',
    }),
    most > 0
      ? sentence('Make more of {line}, or ask for {most} {unit} a line.', {
          line,
          most,
          unit: most === 1 ? 'drop' : 'drops',
        })
      : sentence('Make more of {line}.', { line }),
  );
}

function oddVial(stock: PlanStock, z: number): [Sentence, Sentence] | null {
  const { strength, mgPerDrop, rsd, availableDrops } = stock;
  const vial = { id: stock.id };
  if (!(strength >= 0 && strength <= 1))
    return [
      sentence('The strength of vial {vial} is not between 0 and 100 %.', { vial }),
      sentence('Correct the strength of vial {vial}.', { vial }),
    ];
  if (!(mgPerDrop > 0 && mgPerDrop < Infinity))
    return [
      sentence('The drop of vial {vial} has no mass.', { vial }),
      sentence('Calibrate the dropper of vial {vial}.', { vial }),
    ];
  if (!(rsd >= 0 && z * rsd < 1))
    return [
      sentence('The drops of vial {vial} spread so far that one of them may hold nothing.', { vial }),
      sentence('Calibrate the dropper of vial {vial}, or count the doubt fewer times.', { vial }),
    ];
  if (availableDrops !== null && !(whole(availableDrops) && availableDrops >= 0))
    return [
      sentence('The drops left in vial {vial} are not a whole number.', { vial }),
      sentence('Correct what is left in vial {vial}.', { vial }),
    ];
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
    const line = { id: problem.lines[dry]!.componentId };
    const why = sentence('The vials of {line} cannot give the drops it still needs.', { line });
    return { ok: false, ...words(line.id, why, sentence('Make more of {line}.', { line })) };
  }
  const caps = [problem.cap, ...problem.caps];
  const units = ['drops', ...problem.capNames.map((name) => (name === 'mass' ? 'mg in all' : `mg of ${name}`))];
  const alone = caps.findIndex((cap, at) => cap < least(lists, at));
  if (alone >= 0) return tooSmall(units[alone]!, { need: least(lists, alone), cap: caps[alone]! });
  for (let at = caps.length - 1; at >= 0; at--) {
    const priced = lists.map((list) => list.map((option) => ({ ...option, cost: option.uses[at]! })));
    const picked = cheapestPick(priced, caps.with(at, Infinity));
    if (!picked) continue;
    const need = picked.reduce((sum, { cost }) => sum + cost, 0);
    return tooSmall(units[at]!, { need, cap: caps[at]! }, true);
  }
  return {
    ok: false,
    ...words(
      null,
      sentence('No choice of vials keeps the limits together.'),
      sentence('Raise more than one of the limits.'),
    ),
  };
}

function least(lists: readonly (readonly { uses: readonly number[] }[])[], at: number): number {
  return lists.reduce((sum, list) => sum + Math.min(...list.map(({ uses }) => uses[at]!)), 0);
}

function tooSmall(unit: string, { need, cap }: { need: number; cap: number }, besides = false): PlanRefusal {
  const [wanted, left] = [Math.ceil(need), Math.max(0, Math.floor(cap))]; // whole mg, to the safe side
  const why = besides
    ? 'These lines need {wanted} {unit} beside the other limits, and the limit leaves {left}.'
    : 'These lines need {wanted} {unit}, and the limit leaves {left}.';
  const remedy = sentence('Allow {wanted} {unit}, or take a line out.', { wanted, unit });
  return { ok: false, ...words(null, sentence(why, { wanted, unit, left }), remedy) };
}
