/**
 * From a formula and a volume of drink to syrup, concentrate and water, all by mass. Every gram of the drink is in exactly one
 * line, so mass is conserved from the bottles to the glass: arithmetic on the densities and solubilities of other files.
 */
import { drinkAbv, drinkDensity } from './finishedDrink';
import { sucroseDensity } from '../liquid/sucrose';
import { acidLikeCitric, preservativeForAcid, sucroseSaturation, syrupForDrink } from './syrup';
import type { Acid, Preservative, Throw } from './syrup';
import { gram, massFraction, REFERENCE_TEMPERATURE } from '../number/units';
import type { Celsius, Gram, GramPerMl, MassFraction, Millilitre, VolumeFraction } from '../number/units';
import { waterDensity } from '../liquid/water';
import { Refusal } from '../text/refusal';

/** So many grams of something; id is that of the material, solvent or base ingredient. */
export interface PlannedMass {
  readonly id: string;
  readonly mass: Gram;
}

/** Id of the sucrose of every syrup. */
export const SUGAR = 'sugar';
/** Id of the water of syrup and throw. */
export const WATER = 'water';
/** Id of the whole concentrate as a line of the syrup. */
export const CONCENTRATE = 'concentrate';

/** The drink to be made. Brix g/g; citricPerL in g of anhydrous citric acid per L; acidMgPerL in mg of free acid per L. */
export interface BatchTarget {
  readonly drink: Millilitre;
  readonly brix: MassFraction;
  readonly throw: Throw;
  readonly acid: { readonly id: string; readonly acid: Acid; readonly citricPerL: number } | null;
  readonly preservatives: readonly {
    readonly id: string;
    readonly preservative: Preservative;
    readonly acidMgPerL: number;
  }[];
  /** What else goes into the syrup, before its sugar: buffer salts, sweeteners. */
  readonly also?: readonly PlannedMass[];
  /** All parts of the concentrate, carrier or emulsion included, and the pure ethanol among them. */
  readonly concentrate: { readonly parts: readonly PlannedMass[]; readonly ethanol: Gram };
  /** What ingredients bring: sugar and acid (as anhydrous citric acid) of those parts and of what is poured in after the throw; all of the latter, and its sugar, g. */
  readonly brought?: {
    readonly sugar: Gram;
    readonly citric: Gram;
    readonly late: Gram;
    readonly lateSugar: Gram;
  };
}

/** What to put together. The syrup holds everything but the water it is thrown with. */
export interface BatchPlan {
  readonly concentrate: { readonly parts: readonly PlannedMass[]; readonly mass: Gram };
  readonly syrup: {
    readonly parts: readonly PlannedMass[];
    readonly mass: Gram;
    readonly brix: MassFraction;
    readonly density: GramPerMl;
  };
  readonly water: Gram;
  readonly drink: {
    readonly mass: Gram;
    readonly volume: Millilitre;
    readonly brix: MassFraction;
    readonly density: GramPerMl;
    readonly abv: VolumeFraction;
  };
}

/**
 * The batch at 20 °C. The drink has `brix` g sucrose per g, whatever else is in it; its mass is volume times drinkDensity
 * (acid, preservative and flavour count as water there). Thrown by mass, the syrup is M/(1 + n); by volume its °Brix is that
 * of syrupForDrink, so that 1 volume and n volumes of water give the drink. Parts 0: no throw, the syrup is the drink. With 0 of sugar
 * asked for, it is as sweet as what its ingredients bring.
 * @throws Refusal when the drink is not above 0 mL, out of range, or the syrup has no room for its water
 */
export function planBatch(asked: BatchTarget): BatchPlan {
  if (!(asked.drink > 0)) throw new Refusal('a batch is more than 0 mL, not {drink} mL', { drink: asked.drink });
  const target = sweetAsBrought(asked);
  const { mass, density, ethanol } = wholeDrink(target);
  const { syrupMass, syrupBrix } = syrupOf(target, mass);
  const solids = solidsOf(target, mass);
  const concentrate = total(target.concentrate.parts);
  const { late, lateSugar } = broughtBy(target);
  const syrupWater = syrupMass - total(solids) - concentrate;
  const water = mass - syrupMass - late;
  holdWater(mass, syrupWater, water);
  const parts = [
    { id: WATER, mass: gram(Math.max(0, syrupWater)) },
    ...solids.filter(({ id }) => id !== SUGAR && id !== target.acid?.id),
    ...solids.filter(({ id }) => id === SUGAR),
    ...solids.filter(({ id }) => id === target.acid?.id),
    { id: CONCENTRATE, mass: concentrate },
  ]; // preservative into water before the acid: its free acid dissolves badly (common practice, no source)
  return {
    concentrate: { parts: target.concentrate.parts, mass: concentrate },
    syrup: {
      parts: parts.filter((part) => part.mass > 0),
      mass: syrupMass,
      brix: massFraction(Math.max(0, syrupBrix - lateSugar / syrupMass)),
      density: sucroseDensity(syrupBrix, REFERENCE_TEMPERATURE),
    },
    water: gram(Math.max(0, water)),
    drink: { mass, volume: target.drink, brix: target.brix, density, abv: drinkAbv({ brix: target.brix, ethanol }) },
  };
}

/** So far below the saturation of the source a syrup is called safe, g/g: newer series are about 0.5 % lower (66.6 % at 20 °C, from memory). */
const SATURATION_MARGIN = 0.01;

/**
 * True when a syrup of that °Brix (g/g) may hold more sugar than stays dissolved at t, 0–30 °C: it may grow crystals there. 1 % w/w is
 * kept as a margin. Source: as {@link sucroseSaturation}; the margin is our choice. @throws Refusal outside
 */
export function mayCrystallise(brix: MassFraction, t: Celsius): boolean {
  return brix > sucroseSaturation(t) - SATURATION_MARGIN;
}

/** Sum of masses, g. */
export function total(parts: readonly PlannedMass[]): Gram {
  return gram(parts.reduce((sum, part) => sum + part.mass, 0));
}

/** A drink without added sugar is as sweet as its ingredients make it; solved by repetition, as its mass depends on it. */
function sweetAsBrought(target: BatchTarget): BatchTarget {
  const { sugar } = broughtBy(target);
  let sweet = target;
  for (let i = 0; i < 20 && target.brix === 0 && sugar > 0; i++)
    sweet = { ...target, brix: massFraction(sugar / wholeDrink(sweet).mass) };
  return sweet;
}

/** Mass and density of the drink; the ethanol share depends on the mass, so it is put in again until it stands. */
function wholeDrink(target: BatchTarget): { mass: Gram; density: GramPerMl; ethanol: MassFraction } {
  let density = drinkDensity({ brix: target.brix, ethanol: massFraction(0) });
  let ethanol = massFraction(0);
  for (let i = 0; i < 20; i++) {
    ethanol = massFraction(target.concentrate.ethanol / (target.drink * density));
    density = drinkDensity({ brix: target.brix, ethanol });
  }
  return { mass: gram(target.drink * density), density, ethanol };
}

function syrupOf(target: BatchTarget, mass: Gram): { syrupMass: Gram; syrupBrix: MassFraction } {
  const { parts, by } = target.throw;
  const syrupBrix = syrupForDrink(target.brix, target.throw);
  if (by === 'mass') return { syrupMass: gram(mass / (1 + parts)), syrupBrix };
  const syrup = sucroseDensity(syrupBrix, REFERENCE_TEMPERATURE);
  const waterPerSyrup = (parts * waterDensity(REFERENCE_TEMPERATURE)) / syrup; // g per g
  return { syrupMass: gram(mass / (1 + waterPerSyrup)), syrupBrix };
}

const ROUNDING = 1e-12; // g/g

/** Syrup and drink have room for their water, g. @throws Refusal where they have none */
function holdWater(mass: Gram, syrupWater: number, water: number): void {
  if (!(syrupWater >= -mass * ROUNDING))
    throw new Refusal(
      'the syrup has no room for its water: it is {short} g short; take a smaller throw or less sugar',
      { short: { value: -syrupWater, figures: 3 } },
    );
  if (!(water >= -mass * ROUNDING))
    throw new Refusal('what goes into the drink after the syrup is {more} g more than the water it replaces', {
      more: { value: -water, figures: 3 },
    });
}

function broughtBy({ brought }: BatchTarget): NonNullable<BatchTarget['brought']> {
  return brought ?? { sugar: gram(0), citric: gram(0), late: gram(0), lateSugar: gram(0) };
}

/** What is still to be added where some of it comes with the ingredients. @throws Refusal where they bring more */
function stillMissing(asked: number, brought: number, what: { name: string; per: number; unit: string }): Gram {
  const missing = asked - brought;
  if (!(missing >= -asked * ROUNDING - Number.MIN_VALUE))
    throw new Refusal(
      'the ingredients alone bring {brought} {unit} of {name}: ask for that much, or take less of them',
      {
        brought: { value: brought / what.per, figures: 4 },
        unit: what.unit,
        name: what.name,
      },
    );
  return gram(Math.max(0, missing));
}

function solidsOf(target: BatchTarget, mass: Gram): PlannedMass[] {
  const litres = target.drink / 1000; // mL per L
  const { acid } = target;
  const brought = broughtBy(target);
  const sugar = stillMissing(mass * target.brix, brought.sugar, { name: 'sugar', per: mass / 100, unit: '°Brix' });
  const sour = (citricPerL: number) =>
    stillMissing(citricPerL * litres, brought.citric, { name: 'acid', per: litres, unit: 'g/L' });
  return [
    { id: SUGAR, mass: sugar },
    ...(acid ? [{ id: acid.id, mass: acidLikeCitric(acid.acid, sour(acid.citricPerL)) }] : []),
    ...target.preservatives.map(({ id, preservative, acidMgPerL }) => ({
      id,
      mass: preservativeForAcid(preservative, gram((acidMgPerL * litres) / 1000)), // mg per g
    })),
    ...(target.also ?? []),
  ];
}
