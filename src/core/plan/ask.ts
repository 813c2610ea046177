import type { PlanComponent, PlanInstance, PlanRefusal, PlanStock } from './instance';
import { prepare, type Counted, type Problem } from './problem';
import { sentence, type Named, type Sentence } from '../text/refusal';

type Words = Omit<PlanRefusal, 'ok'>;

const NOTHING: Counted = { drops: {}, finished: new Set() };

/**
 * The one door of the planner: an instance with what is already counted as a problem ready for search, or why it cannot be
 * planned as it is asked. `most` is the largest limit of drops that will be tried, the instance's own where none is given.
 * Units and shapes: PlanInstance. Which numbers make sense is our choice.
 */
export function problemOf(
  instance: PlanInstance,
  counted = NOTHING,
  most = instance.limits.maxDrops,
): Problem | PlanRefusal {
  const refusal = refusalOf(instance);
  if (refusal) return { ok: false, ...refusal };
  return prepare(instance, counted, most);
}

function refusalOf(instance: PlanInstance): Words | null {
  const { components } = instance;
  if (components.length === 0)
    return words(null, sentence('The formula has no material.'), sentence('Put a material into the formula.'));
  return (
    refusalOfCounts(instance) ||
    refusalOfScale(instance) ||
    (components.map((component) => refusalOfLine(component, instance)).find((each) => each !== null) ?? null)
  );
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
      sentence('The fewest drops of a material is not a whole number above zero.'),
      sentence('Request at least one drop per material.'),
    );
  if (![1, 2].includes(limits.maxStocksPerComponent))
    return words(
      null,
      sentence('A material can be taken from one vial or from two.'),
      sentence('Choose one or two vials per material.'),
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
      sentence('The uncertainty of the counts is taken 0 to 5 times.'),
      sentence('Count the uncertainty 0, 1 or 2 times.'),
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
      ? sentence('Make more of {line}, or request {most} {unit} per material.', {
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
      sentence('Calibrate the dropper of vial {vial}, or count its uncertainty fewer times.', { vial }),
    ];
  if (availableDrops !== null && !(whole(availableDrops) && availableDrops >= 0))
    return [
      sentence('The drops left in vial {vial} are not a whole number.', { vial }),
      sentence('Correct what is left in vial {vial}.', { vial }),
    ];
  return null;
}
