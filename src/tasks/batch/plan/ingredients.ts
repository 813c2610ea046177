import { SUGAR } from '../../../core/drink/batchPlan';
import { gram, type Gram } from '../../../core/number/units';
import type { Material } from '../../../records/kind/material';
import { find, list } from '../../../records/shelf';
import type { Option } from '../../../ui/controls/field';
import { sourcesOf } from '../../../workshop/sources';
import { answer, ask } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { oncePerRun } from '../../engine/oncePerRun';
import { asked, ofThisRecipe } from './asked';
import { timesBefore } from './before';
import { litresToMake, refusalOfLine, sourceOf } from './drinkAsked';
import { moreFields } from './moreFields';
import { contentOf, materialGoods, OWN_ACID, type Planned } from './goods';
import { recipeOrNull, type RecipeLine } from './recipe';

/** An ingredient of one's own as it is asked: which, how much of it in a litre, and into which vessel. */
interface OwnAsked {
  readonly what: Field<string>;
  readonly perL: Field<number>;
  readonly into: Field<'syrup' | 'drink'>;
}

/** One that was chosen: a line like those of the formula, with its grams. */
export interface OwnLine extends RecipeLine {
  readonly n: number;
  readonly grams: number;
  readonly into: 'syrup' | 'drink';
}

/** What goes into a vessel, and into which. */
export interface OwnPlanned extends Planned {
  readonly into: 'syrup' | 'drink';
}

export const NONE = 'none';
const MOST = 12; // ingredients of one drink

/** The ingredients of one's own that are asked for: those that were chosen, and room for one more; none where the Shelf has no such thing. */
export const ownAsked = oncePerRun((run: RunState): OwnAsked[] => {
  const options = ownOptions(run);
  if (options.length === 0) return [];
  const [own, { same }] = [ofThisRecipe(run), timesBefore(run)];
  const all = Array.from({ length: MOST }, (_, i) => ({
    what: asBefore(own, ask(moreFields.own(i + 1), { options: [...options, i === 0 ? NO_ONE : NO_MORE] }), same, NONE),
    perL: asBefore(own, moreFields.ownPerL(i + 1), same),
    into: asBefore(own, moreFields.ownInto(i + 1), same),
  }));
  return all.slice(0, all.findLastIndex(({ what }) => answer(run, what) !== NONE) + 2);
});

const NO_ONE: Option = { value: NONE, label: 'None', short: 'none of your own' };
const NO_MORE: Option = { value: NONE, label: 'None', short: 'nothing else' };

/** Extracts, tinctures, infusions, juices and purees of which there is a bottle; what is in the formula already is not among them. */
function ownOptions(run: RunState): Option[] {
  const inFormula = new Set(recipeOrNull(run)?.lines.map(({ material }) => material));
  return list('material')
    .filter(({ id, preparation }) => preparation !== undefined && !inFormula.has(id) && sourcesOf(id).length > 0)
    .map((one) => ({ value: one.id, label: one.name, hint: hintOf(one) }))
    .sort((one, other) => one.label.localeCompare(other.label));
}

function hintOf({ id, preparation }: Material): string {
  return [preparation, sourcesOf(id)[0]?.more].filter(Boolean).join(', ');
}

/** What was chosen, with its grams; what has no amount yet is not in it. */
export const ownLines = oncePerRun((run: RunState): OwnLine[] => {
  const litres = litresToMake(run);
  return ownAsked(run).flatMap(({ what, perL, into }, i) => {
    const [material, gramsPerL] = [find('material', answer(run, what)), answer(run, perL)];
    if (!material || gramsPerL === null || litres === null) return [];
    const grams = gramsPerL * litres;
    return [
      { n: i + 1, material: material.id, name: material.name, share: 0, grams, into: answer(run, into) ?? 'syrup' },
    ];
  });
});

/** All of them for `factor` times the drink; null while one may not be used. */
export function ownPlanned(run: RunState, factor: number): OwnPlanned[] | null {
  const lines = ownLines(run);
  if (lines.some((line) => refusalOfLine(run, line) !== null)) return null;
  const isThrown = answer(run, asked(run).parts) !== 0;
  return lines.map((line) => {
    const goods = materialGoods(line, sourceOf(run, line)!);
    const mass = (factor * line.grams) / goods.source!.strength.value;
    return { goods: { ...goods, beside: 'fixed', own: true }, mass, into: isThrown ? line.into : 'syrup' };
  });
}

/** Sugar and acid that goods bring, and what of them is poured in after the throw, g. */
export function broughtIn(
  own: readonly OwnPlanned[],
  concentrate: readonly Planned[],
): Record<'sugar' | 'citric' | 'late' | 'lateSugar', Gram> {
  const late = own.filter(({ into }) => into === 'drink');
  const sum = (all: readonly Planned[], id: string) =>
    gram(all.reduce((grams, { goods, mass }) => grams + mass * contentOf(goods, id), 0));
  const all = [...own, ...concentrate];
  return {
    sugar: sum(all, SUGAR),
    citric: sum(all, OWN_ACID),
    late: gram(late.reduce((grams, { mass }) => grams + mass, 0)),
    lateSugar: sum(late, SUGAR),
  };
}
