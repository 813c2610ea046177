import { ethanolDensity } from '../../core/liquid/ethanol';
import { addedUp, energyOf, type Grams } from '../../core/nutrition/energy';
import { declared, type Rounding } from '../../core/nutrition/rounding';
import { massFraction, REFERENCE_TEMPERATURE } from '../../core/number/units';
import { carriersHold } from '../../tables/drinkLabel/declaredAdditives';
import { euKcal, euKj, usKcal } from '../../tables/drinkLabel/energyFactors';
import { labelDuties } from '../../tables/drinkLabel/labelDuties';
import { roundings } from '../../tables/drinkLabel/roundings';
import { formatFixed } from '../../ui/format';
import type { DrinkToLabel, Put } from './drinkToLabel';
import { countedAs } from './ingredients';

/** What is in so many mL of a drink, g, with its energy by the factors of both laws. */
export interface Nutrition {
  readonly grams: Grams;
  /** Sugars; a part of the carbohydrate. */
  readonly sugars: number;
  /** Of these, what went in as sugar. */
  readonly added: number;
  readonly sodium: number;
  readonly kJ: number;
  readonly kcal: number;
  readonly usKcal: number;
}

/** Nutrition of so many mL, from what is in a litre. Of an ingredient of one's own only sugar, alcohol and acid are counted. */
export function nutritionOf(drink: DrinkToLabel, ml = 100): Nutrition {
  const share = ml / 1000;
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  const sugars = drink.sugarPerL * share;
  const liquid: Grams = { carbohydrate: sugars, ethanol: (drink.abv / 100) * ml * pure };
  const grams = addedUp([liquid, ...drink.puts.map((put) => scaled(heldBy(put), put.gramsPerL * share))]);
  const sum = (of: (put: Put) => number) => drink.puts.reduce((all, put) => all + of(put) * share, 0);
  return {
    grams,
    sugars,
    added: sum((put) => (countedAs(put) === 'sugar' ? put.gramsPerL : 0)),
    sodium: sum((put) => put.gramsPerL * sodiumIn(put)),
    kJ: energyOf(grams, euKj),
    kcal: energyOf(grams, euKcal),
    usKcal: energyOf(grams, usKcal),
  };
}

function scaled(grams: Grams, by: number): Grams {
  return Object.fromEntries(Object.entries(grams).map(([of, amount]) => [of, amount * by]));
}

/** What a gram of a thing brings beside sugar and alcohol. */
function heldBy(put: Put): Grams {
  const as = countedAs(put);
  if (typeof as !== 'string') return as.holds ?? {};
  return put.acid > 0 ? { 'organic acid': put.acid } : (carriersHold[put.id] ?? {});
}

function sodiumIn(put: Put): number {
  const as = countedAs(put);
  return typeof as === 'string' ? 0 : (as.sodium ?? 0);
}

/** The declaration in 100 mL as the EU wants it, in its order; only the energy where `isBrief`. */
export function euDeclaration(drink: DrinkToLabel, isBrief: boolean): string[] {
  const { grams, sugars, sodium, kJ, kcal } = nutritionOf(drink);
  const energy = `energy ‹${said(kJ, roundings.euEnergy, 'kJ')} / ${said(kcal, roundings.euEnergy, 'kcal')}›`;
  if (isBrief) return [energy];
  const { fat = 0, carbohydrate = 0, polyol = 0, erythritol = 0, fibre = 0, protein = 0 } = grams;
  const g = (amount: number, by: Rounding = roundings.euGrams) => said(amount, by, 'g');
  const polyols = polyol + erythritol;
  return [
    energy,
    `fat ${g(fat)}, of which saturates ${g(fat)}`,
    `carbohydrate ${g(carbohydrate + polyols)}, of which sugars ‹${g(sugars)}›${polyols > 0 ? ` and polyols ${g(polyols)}` : ''}`,
    ...(fibre > 0 ? [`fibre ${g(fibre)}`] : []),
    `protein ${g(protein)}`,
    `salt ${g(sodium * labelDuties.salt.perSodium, roundings.euSalt)}`,
  ];
}

/** The facts of a serving as the US wants them, in its order. */
export function usFacts(drink: DrinkToLabel, ml: number): string[] {
  const { grams, sugars, added, sodium, usKcal: kcal } = nutritionOf(drink, ml);
  const { fat = 0, carbohydrate = 0, polyol = 0, erythritol = 0, fibre = 0, protein = 0 } = grams;
  const g = (amount: number) => said(amount, roundings.usGrams, 'g');
  return [
    `‹${said(kcal, roundings.usCalories, 'Calories')}›`,
    `total fat ${g(fat)}`,
    `sodium ${said(sodium * 1000, roundings.usSodium, 'mg')}`,
    `total carbohydrate ${g(carbohydrate + polyol + erythritol + fibre + (grams['organic acid'] ?? 0))}`,
    `total sugars ‹${g(sugars)}›, includes ${g(added)} added sugars`,
    `protein ${g(protein)}`,
  ];
}

function said(value: number, rounding: Rounding, unit: string): string {
  const { value: shown, below, digits } = declared(value, rounding);
  return `${below ? '< ' : ''}${formatFixed(shown, digits)} ${unit}`;
}
