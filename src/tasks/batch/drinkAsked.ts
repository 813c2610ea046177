import { drinkMakeOf, drinkMakeOfLitre } from '../../core/drink/drinkMake';
import { drinkDensity, type DrinkMake } from '../../core/drink/finishedDrink';
import { massFraction, volumeFraction } from '../../core/number/units';
import { find, list, shelf } from '../../records/shelf';
import { formatTyped } from '../../ui/format';
import { valueOf, type Field } from '../engine/fields';
import { refusalOfId } from '../../workshop/drinkable/grade';
import type { RunState } from '../engine/fold';
import { solventsOnHand, type SolventOnHand } from '../../workshop/onHand';
import { outcome } from '../../workshop/attempt';
import { madeBefore, type MadeBefore } from '../../workshop/madeBefore';
import { sourceByItself, sourcesOf, whyNotNow, type Source } from '../../workshop/sources';
import { fields } from './fields';
import { materialGoods, type Goods } from './goods';
import { oncePerRun } from '../engine/oncePerRun';
import { recipeOf as recipeOf, type Recipe, type RecipeLine } from './recipe';
import { Refusal } from '../../core/text/refusal';
import { keyNow, timesBegun } from './begun';

/** The drink that is asked for. */
export interface DrinkAsked {
  readonly litres: number;
  readonly mgPerKg: number;
  readonly make: DrinkMake;
  readonly densityGPerMl: number;
  readonly abv: number;
}

/** The last drink of any version of the formula that is made; null where there is none. */
export const sameBefore = oncePerRun((run: RunState): MadeBefore | null => {
  const root = find('formula', run.typed['what'])?.root;
  return root === undefined ? null : madeBefore(root);
});

/**
 * The drink that sugar and alcohol are taken from: the one chosen, the one tasted, or the last one of this formula;
 * null where none of these is known. °Brix and % ABV.
 */
export function drinkBefore(run: RunState): { name: string; brix: number; abv: number } | null {
  const drink = find('base', run.typed['base']) ?? find('tasting', run.typed['what'])?.base;
  if (drink) return drink;
  const same = sameBefore(run);
  if (same) return same;
  const isOlder = 'drink' in run.done && run.presets['abv'] === undefined; // an older version took the last drink of all
  return isOlder ? (list('base')[0] ?? { name: '', brix: 10, abv: 0 }) : null;
}

/** What is in the fields of the drink until something is typed; empty where nothing like it was made or tasted. */
export function usualDrink(run: RunState) {
  const mgPerKg = recipeOrNull(run)?.mgPerKg ?? sameBefore(run)?.mgPerKg;
  const dose = mgPerKg ? formatTyped(mgPerKg, 3) : '';
  const before = drinkBefore(run);
  const brix = valueOf(run, fields.brix('')) ?? before?.brix ?? null; // typed before it is known whether it was meant by the litre
  const abv = valueOf(run, fields.abv('')) ?? before?.abv ?? 0;
  const { presets } = run;
  if (brix === null)
    return { dose, brix: presets['brix'] ?? '', sugarPerL: presets['sugar.l'] ?? '', abv: presets['abv'] ?? '' };
  const density = outcome(() => drinkDensity(drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100)))).value;
  return {
    dose,
    brix: before ? formatTyped(brix, 3) : (presets['brix'] ?? ''),
    sugarPerL: density ? formatTyped(brix * 10 * density, 4) : '', // g in 100 g of drink to g/L
    abv: before ? formatTyped(abv, 3) : (presets['abv'] ?? ''),
  };
}

/** True when the sugar is said in g per litre of drink. */
export function isByLitre(run: RunState): boolean {
  return run.typed['sugar.by'] === 'litre';
}

/** The sugar, by mass or by volume of the drink. */
export function sugarField(run: RunState): Field<number> {
  const { brix, sugarPerL } = usualDrink(run);
  return isByLitre(run) ? fields.sugarPerL(sugarPerL) : fields.brix(brix);
}

/** The drink; null until it is known. @throws Refusal when sugar and alcohol leave no room for water */
export const drinkOf = oncePerRun((run: RunState): DrinkAsked | null => {
  const usual = usualDrink(run);
  const litres = valueOf(run, fields.litres);
  const mgPerKg = valueOf(run, fields.dose(usual.dose));
  const sugar = valueOf(run, sugarField(run));
  const abv = valueOf(run, fields.abv(usual.abv));
  if (litres === null || mgPerKg === null || sugar === null || abv === null) return null;
  const alcohol = volumeFraction(abv / 100);
  const make = isByLitre(run) ? drinkMakeOfLitre(sugar, alcohol) : drinkMakeOf(massFraction(sugar / 100), alcohol);
  return { litres, mgPerKg, make, densityGPerMl: drinkDensity(make), abv };
});

/** What is made, or null, also where nothing was in it. */
export function recipeOrNull(run: RunState): Recipe | null {
  try {
    return recipeOf(run);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** g of concentrate to make per g that the drink needs. */
export function spareFactor(run: RunState): number {
  return 1 + (valueOf(run, fields.spare) ?? 0) / 100;
}

/** Grams of neat material of a line that the batch takes; null until the drink is known. */
function neatOf(run: RunState, { share }: RecipeLine): number | null {
  const drink = outcome(() => drinkOf(run)).value;
  if (!drink) return null;
  return (share * drink.mgPerKg * drink.litres * drink.densityGPerMl * spareFactor(run)) / 1000; // mg/kg · L · kg/L is mg
}

/** The bottle or vial of a line: the one chosen while it is there, else the first that may be taken by itself; null where none may. */
export function sourceOf(run: RunState, line: RecipeLine): Source | null {
  const all = sourcesOf(line.material);
  const key = `lot.${line.material}`;
  const chosen = run.typed[key] ?? run.presets[key];
  const neat = neatOf(run, line);
  const fit = () => sourceByItself(line.material, ({ strength }) => neat && neat / strength.value);
  const before = 'lots' in run.done ? all[0] : undefined; // left in an older version, which took the first
  return all.find(({ id }) => id === chosen) ?? before ?? fit();
}

/** Why a line cannot be weighed, in one sentence; null when it can. */
export function refusalOfLine(run: RunState, line: RecipeLine): string | null {
  const source = sourceOf(run, line);
  if (source) return source.refusal;
  const all = sourcesOf(line.material);
  if (all.length === 0) return `There is no bottle or vial of ${line.name} on the Shelf: put one there first.`;
  const barred = all.find(({ refusal }) => refusal)?.refusal;
  if (barred && all.every(({ refusal }) => refusal)) return barred;
  const neat = neatOf(run, line);
  const reasons = all.map((one) => `${one.words} is ${whyNotNow(one, neat && neat / one.strength.value) ?? 'there'}`);
  return `Nothing is taken by itself for ${line.name}: ${reasons.join('; ')}. Choose one all the same, or add a bottle.`;
}

/** All lines as goods; null while one of them may not be used. */
export function materialsOf(run: RunState, recipe: Recipe): Goods[] | null {
  if (recipe.lines.some((line) => refusalOfLine(run, line) !== null)) return null;
  return recipe.lines.map((line) => materialGoods(line, sourceOf(run, line)!));
}

/** The carrier that was chosen. */
export function carrierOf(run: RunState): SolventOnHand | null {
  return solventsOnHand().find(({ id }) => id === run.typed['carrier']) ?? null;
}

const GONE = 'Something that was weighed is no longer on the Shelf: smell only, it never goes into a drink.';

/** Ids of all materials and solvents of which something was weighed for the concentrate as it is now; what was given up is gone. */
function weighedIds(run: RunState): Set<string> {
  const now = ['c.', 't.'].map((key) => `mass.${keyNow(key, timesBegun(run, 'concentrate'))}`);
  const masses = Object.entries(run.typed).filter(
    ([key, text]) => now.some((start) => key.startsWith(start)) && text.trim() !== '',
  );
  return new Set(masses.flatMap(([key]) => key.split('.').slice(2)));
}

/** Whether something of a material or solvent was weighed: then its bottle is in the vessel, and no other can be chosen for it. */
export function isWeighedIn(run: RunState, id: string): boolean {
  return weighedIds(run).has(id);
}

/** Why what is in the vessel may not be drunk, though it could when it was weighed: in one sentence; null when it may. */
export function spoiltBy(run: RunState): string | null {
  const answers = { ...run.presets, ...run.typed };
  const weighed = [...weighedIds(run)];
  const bottles = weighed.flatMap((id) => answers[`lot.${id}`] || []).filter((id) => id !== 'none');
  const gone = bottles.some((id) => !shelf.records.value.has(id));
  return [...bottles, ...weighed].map(refusalOfId).find((why) => why !== null) ?? (gone ? GONE : null);
}
