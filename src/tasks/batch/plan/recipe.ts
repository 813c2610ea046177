import { sharesOf } from '../../../core/drink/formula';
import { plus } from '../../../core/number/measured';
import type { Tasting } from '../../../records/kind/drink';
import type { Formula } from '../../../records/kind/formula';
import { find, list } from '../../../records/shelf';
import type { Option } from '../../../ui/controls/field';
import { Refusal } from '../../../core/text/refusal';
import { formatDay, measuredText } from '../../../ui/format';
import { outcome } from '../../../workshop/attempt';
import { dosedTags } from '../../../workshop/thing/labelled';
import { answer, ask } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { oncePerRun } from '../../engine/oncePerRun';
import { fields } from './fields';

/** One material of what is made, and its share of all neat material, g/g. */
export interface RecipeLine {
  readonly material: string;
  readonly name: string;
  readonly share: number;
  /** g of it that the batch takes, of what is an ingredient of the drink and no part of the formula. */
  readonly grams?: number;
}

/** What is made: a formula, or what a tasting reached. */
export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly version: number | null;
  readonly lines: readonly RecipeLine[];
  /** mg of the whole formula per kg of drink, where a tasting says so. */
  readonly mgPerKg: number | null;
}

/** Newest version of every formula, then the drinks that were tasted, the liked ones first. */
export function recipeOptions(run: RunState): Option[] {
  const chosen = find('formula', answer(run, fields.what));
  const latest = newest(list('formula'));
  const formulas = [...(chosen && !latest.includes(chosen) ? [chosen] : []), ...latest].map(
    ({ id, name, version, lines }) => ({
      value: id,
      label: name,
      hint: `formula, version ${version}, ${lines.length} ${lines.length === 1 ? 'material' : 'materials'}`,
    }),
  );
  const tastings = [...list('tasting')]
    .sort((a, b) => (b.liking ?? 0) - (a.liking ?? 0))
    .map((tasting) => ({
      value: tasting.id,
      label: `${tasting.base.name} with ${dosedTags(tasting.doses)}`,
      hint: tastingHint(tasting),
    }));
  return [...formulas, ...tastings];
}

/** By what drinks of one vial are told apart: how much was in it, which glass it was, and how it was liked. */
function tastingHint({ reached, glass, made, liking }: Tasting): string {
  const dose = measuredText(plus(...reached.map(({ mgPerKg }) => mgPerKg)), 'mg/kg');
  const which = glass && `glass ${glass.code}${glass.best ? ', the best of its series' : ''}`;
  const liked = liking !== null && `liking ${liking} of 9`;
  return [dose, which, `tasted ${formatDay(made)}`, liked].filter(Boolean).join(', ');
}

/** What is made: as last time in its newest version, else the newest formula, until something else is chosen. */
export function whatField(run: RunState): Field<string> {
  const options = recipeOptions(run);
  const last = list('batch')[0]?.formula.id;
  const root = find('formula', last)?.root;
  const again = options.find(({ value }) => value === last || (root && find('formula', value)?.root === root));
  return asBefore(run, ask(fields.what, { options }), [], (again ?? options[0])?.value ?? '');
}

/** What is made, or null, also where nothing was in it. */
export const recipeOrNull = oncePerRun((run: RunState): Recipe | null => outcome(() => recipeOf(run)).value);

/** What the run makes; null until it is chosen. @throws Refusal when there is nothing in it */
export function recipeOf(run: RunState): Recipe | null {
  const id = answer(run, whatField(run));
  const formula = find('formula', id);
  if (formula) {
    const names = new Map(formula.lines.map(({ material, name }) => [material, name]));
    const lines = sharesOf(formula.lines).map((line) => ({
      material: line.id,
      name: names.get(line.id)!,
      share: line.share as number,
    }));
    return { id: formula.id, name: formula.name, version: formula.version, lines, mgPerKg: null };
  }
  const tasting = find('tasting', id);
  if (!tasting) return null;
  const total = tasting.reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0);
  if (!(total > 0)) throw new Refusal('nothing was dosed in that drink');
  const lines = tasting.reached.map(({ material, name, mgPerKg }) => ({
    material,
    name,
    share: mgPerKg.value / total,
  }));
  const name = `${tasting.base.name} with ${dosedTags(tasting.doses)}`;
  return { id: tasting.id, name, version: null, lines, mgPerKg: total };
}

function newest(formulas: readonly Formula[]): Formula[] {
  const latest = new Map<string, Formula>();
  for (const formula of formulas)
    if (formula.version > (latest.get(formula.root)?.version ?? 0)) latest.set(formula.root, formula);
  return [...latest.values()];
}
