/**
 * What an extract, tincture, infusion, juice or puree brings into a drink beside its own name: sugar, acid, alcohol, what else
 * stays when it is dried, and water. Every gram of it is in exactly one of these: mass balance.
 */
import { ethanolDensity } from '../liquid/ethanol';
import { drinkDensity } from './finishedDrink';
import { gramPerMl, massFraction, REFERENCE_TEMPERATURE, type GramPerMl } from '../number/units';
import { Refusal } from '../text/refusal';

/** What its sheet, a refractometer or a titration says: °Brix (g per 100 g), mL of ethanol per mL at 20 °C, acid and dry matter g/g. */
export interface IngredientFacts {
  readonly brix?: number | undefined;
  readonly abv?: number | undefined;
  readonly acid?: number | undefined;
  readonly solids?: number | undefined;
}

/** Parts of it, g per g; they add to one. */
export interface Brings {
  readonly sugar: number;
  /** As anhydrous citric acid. */
  readonly acid: number;
  readonly ethanol: number;
  /** Dry matter beside sugar and acid. */
  readonly rest: number;
  readonly water: number;
}

/**
 * Sugar and acid together, g/g, from °Brix and acid (g/g). A refractometer reads dissolved acid lower than sugar, so that reading
 * is corrected by 0.012 + 0.193 a − 0.0004 a² °Brix, a the acid in g of citric acid per 100 g. Source: Stevens and Baier 1939, for citrus
 * juice; within 0.02 of the tables of acid corrections in use (1 %: 0.20, 6 %: 1.15, 20 %: 3.70). Beside alcohol nothing is corrected: a
 * refractometer misreads there, and the °Brix is that of a sheet. Check: lemon juice of 8 °Brix with 6 % of acid has 9.16 g in 100 g.
 */
export function dissolvedIn({ brix = 0, acid = 0, abv = 0 }: IngredientFacts): number {
  const a = acid * 100;
  const misread = acid > 0 && brix > 0 && abv === 0 ? 0.012 + 0.193 * a - 0.0004 * a * a : 0;
  return (brix + misread) / 100;
}

/**
 * What a gram of an ingredient brings, g. Sugar is what is dissolved less the acid, never below zero; ethanol is abv ρₑ/ρ, with the
 * density ρ (g/mL) of the ingredient, else that of sugar, ethanol and water so mixed; dry matter is at least sugar and acid.
 * Check: 10 °Brix without acid is 0.1 of sugar; 60 % ABV alone 0.5209 of ethanol. Source: mass balance, and the laws of the density.
 * @throws Refusal when its parts are below zero, or together more than all of it
 */
export function broughtBy(facts: IngredientFacts, densityGPerMl?: GramPerMl): Brings {
  const brings = doesAddUp(facts, densityGPerMl) ? split(facts, densityGPerMl) : null;
  if (brings) return { ...brings, water: Math.max(0, brings.water) };
  throw new Refusal(
    'sugar, acid, alcohol and dry matter of an ingredient are zero or more, and together at most all of it',
  );
}

/** True where what is said of an ingredient (g/g, °Brix, mL/mL; density g/mL) can be: nothing below zero, and no more than all of it. By definition. */
export function doesAddUp(facts: IngredientFacts, densityGPerMl?: GramPerMl): boolean {
  const { acid = 0, solids = 0, abv = 0, brix = 0 } = facts;
  const isInRange = brix >= 0 && acid >= 0 && solids >= 0 && abv >= 0 && abv <= 1 && brix <= 84;
  return isInRange && split(facts, densityGPerMl).water >= -ROUNDING;
}

function split(facts: IngredientFacts, densityGPerMl?: GramPerMl): Brings {
  const { acid = 0, solids = 0, abv = 0 } = facts;
  const sugar = Math.max(0, dissolvedIn(facts) - acid);
  const ethanol = abv > 0 ? ethanolIn(sugar, abv, densityGPerMl) : 0;
  const rest = Math.max(0, solids - sugar - acid);
  return { sugar, acid, ethanol, rest, water: 1 - sugar - acid - ethanol - rest };
}

const ROUNDING = 1e-9; // g/g

function ethanolIn(sugar: number, abv: number, density?: GramPerMl): number {
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  if (density !== undefined) return (abv * pure) / density;
  let ethanol = abv * pure; // as in a gram per mL: solved by repetition
  for (let i = 0; i < 60; i++) ethanol = (abv * pure) / densityOf(sugar, Math.min(ethanol, 1 - sugar));
  return ethanol;
}

const KNOWN = 0.84 - 1e-9; // of sugar in sugar and water, g/g, clear of rounding: what is stronger counts as that

function densityOf(sugar: number, ethanol: number): number {
  if (sugar + ethanol >= 1 || ethanol > 1 - 1e-6) return ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  const known = Math.min(sugar, KNOWN * (1 - ethanol));
  return drinkDensity({ brix: massFraction(known), ethanol: massFraction(ethanol) });
}

/** Density of an ingredient, g/mL at 20 °C, from its alcohol and dry matter; acid and other dry matter count as sugar (our choice). */
export function ingredientDensity(facts: IngredientFacts): GramPerMl {
  const { sugar, acid, rest, ethanol } = broughtBy(facts);
  return gramPerMl(densityOf(sugar + acid + rest, ethanol));
}
