import { drinkMakeOf, drinkMakeOfLitre } from '../../../core/drink/drinkMake';
import type { Trait } from '../../../core/limits/figure';
import { drinkDensity, type DrinkMake } from '../../../core/drink/finishedDrink';
import { massFraction, volumeFraction } from '../../../core/number/units';
import { shelf } from '../../../records/shelf';
import { outcome } from '../../../workshop/attempt';
import { refusalOfId } from '../../../workshop/drinkable/grade';
import { solventsOnHand, type SolventOnHand } from '../../../workshop/onHand';
import { sourceByItself, sourcesOf, whyNotNow, type Source } from '../../../workshop/sources';
import { answer, namesBegun, supposing } from '../../engine/answers';
import { given, words, type Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { oncePerRun } from '../../engine/oncePerRun';
import { traitKey } from '../../shared/judgeRun';
import { asked } from './asked';
import { keyNow, timesBegun } from './begun';
import { fields } from './fields';
import { materialGoods, type Goods } from './goods';
import type { Recipe, RecipeLine } from './recipe';

/** The drink that is asked for. */
export interface DrinkAsked {
  readonly litres: number;
  readonly mgPerKg: number;
  readonly make: DrinkMake;
  readonly densityGPerMl: number;
  readonly abv: number;
}

/** True when the sugar is said in g per litre of drink. */
export function isByLitre(run: RunState): boolean {
  return answer(run, asked(run).sugarBy) === 'litre';
}

/** The sugar, by mass or by volume of the drink. */
export function sugarField(run: RunState): Field<number> {
  const { brix, sugarPerL } = asked(run);
  return isByLitre(run) ? sugarPerL : brix;
}

/** L to make: what is to be bottled, and what is lost on the way; null until it is known. */
export function litresToMake(run: RunState): number | null {
  const litres = answer(run, asked(run).litres);
  return litres === null ? null : litres / (1 - (answer(run, asked(run).loss) ?? 0) / 100);
}

/** The drink; null until it is known. @throws Refusal when sugar and alcohol leave no room for water */
export const drinkOf = oncePerRun((run: RunState): DrinkAsked | null => {
  const now = asked(run);
  const [litres, mgPerKg] = [litresToMake(run), answer(run, now.dose)];
  const [sugar, abv] = [answer(run, sugarField(run)), answer(run, now.abv)];
  if (litres === null || mgPerKg === null || sugar === null || abv === null) return null;
  const alcohol = volumeFraction(abv / 100);
  const make = isByLitre(run) ? drinkMakeOfLitre(sugar, alcohol) : drinkMakeOf(massFraction(sugar / 100), alcohol);
  return { litres, mgPerKg, make, densityGPerMl: drinkDensity(make), abv };
});

const saidOf = (trait: Trait) => given(traitKey(trait), ['yes', 'no']);

/** The run with what it says itself about the drink: cloudy, carbonated, no added sugar. What the person said wins. */
export function answered(run: RunState, emulsion: boolean): RunState {
  const known: readonly (readonly [Trait, boolean])[] = [
    ['cloudy', emulsion],
    ['carbonated', (answer(run, asked(run).volumes) ?? 0) > 0],
    ['no added sugar', answer(run, sugarField(run)) === 0],
  ];
  const open = known.filter(([trait]) => answer(run, saidOf(trait)) === null);
  return supposing(run, Object.fromEntries(open.map(([trait, is]) => [traitKey(trait), is ? 'yes' : 'no'])));
}

/** g of concentrate to make per g that the drink needs. */
export function spareFactor(run: RunState): number {
  return 1 + (answer(run, asked(run).spare) ?? 0) / 100;
}

/** Grams of neat material of a line that the batch takes; null until the drink is known. */
function neatOf(run: RunState, { share, grams }: RecipeLine): number | null {
  if (grams !== undefined) return grams;
  const drink = outcome(() => drinkOf(run)).value;
  if (!drink) return null;
  return (share * drink.mgPerKg * drink.litres * drink.densityGPerMl * spareFactor(run)) / 1000; // mg/kg · L · kg/L is mg
}

/** The bottle or vial of a line: the one chosen while it is there, else the first that may be taken by itself; null where none may. */
export function sourceOf(run: RunState, line: RecipeLine): Source | null {
  const all = sourcesOf(line.material);
  const chosen = answer(run, fields.lot(line.material, line.name));
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
  return solventsOnHand().find(({ id }) => id === answer(run, asked(run).carrier)) ?? null;
}

const GONE = 'Something that was weighed is no longer on the Shelf: smell only, it never goes into a drink.';

/** Ids of all materials and solvents of which something was weighed for the vessels as they are now; what was given up is gone. */
function weighedIds(run: RunState): Set<string> {
  const starts = [
    ...['c.', 't.'].map((key) => `mass.${keyNow(key, timesBegun(run, 'concentrate'))}`),
    ...['s.', 'd.', 'w.'].map((key) => `mass.${keyNow(key, timesBegun(run, 'drink'))}`),
  ];
  const names = starts.flatMap((start) => namesBegun(run, start)).filter((name) => isSaid(run, name));
  return new Set(names.flatMap((name) => name.split('.').slice(2)));
}

/** True where something is in the field of that name. */
export function isSaid(run: RunState, name: string): boolean {
  return answer(run, words({ name, title: name })) !== null;
}

/** Whether something of a material or solvent was weighed: then its bottle is in the vessel, and no other can be chosen for it. */
export function isWeighedIn(run: RunState, id: string): boolean {
  return weighedIds(run).has(id);
}

/** Why what is in the vessel may not be drunk, though it could when it was weighed: in one sentence; null when it may. */
export function spoiltBy(run: RunState): string | null {
  const weighed = [...weighedIds(run)];
  const bottles = weighed.flatMap((id) => answer(run, fields.lot(id, '')) ?? []).filter((id) => id !== 'none');
  const gone = bottles.some((id) => !shelf.records.value.has(id));
  return [...bottles, ...weighed].map(refusalOfId).find((why) => why !== null) ?? (gone ? GONE : null);
}
