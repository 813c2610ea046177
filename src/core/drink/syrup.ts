/**
 * Syrups and what they become when thrown. Brix is g sucrose per g solution (g/g here, 50 °Brix is 0.50); densities from
 * {@link sucroseDensity}, 0–84 °Brix, 10–30 °C. Volumes of sugar solutions do not add up; masses do, so every sum is by mass.
 * Arithmetic on these densities.
 */
import { sucroseDensity } from '../liquid/sucrose';
import { gram, massFraction, REFERENCE_TEMPERATURE } from '../number/units';
import type { Celsius, Gram, GramPerMl, MassFraction } from '../number/units';
import { waterDensity } from '../liquid/water';
import { Refusal } from '../text/refusal';

/** How parts are measured when syrup is thrown 1 + n. */
export type By = 'mass' | 'volume';

/** A throw: 1 part of syrup and n parts of water. */
export interface Throw {
  readonly parts: number;
  readonly by: By;
}

/**
 * What 1 part of syrup and n parts of water become: °Brix (g/g), density (g/mL), and mL of drink per mL of syrup.
 * By mass Bx/(1 + n); by volume ρs Bx/(ρs + n ρw). Check: 50 °Brix 1 + 4 by volume 11.77, 1 + 5 9.88, by mass 10.00.
 * @throws Refusal for negative parts or outside 0–84 °Brix, 10–30 °C
 */
export function throwSyrup(
  brix: MassFraction,
  { parts, by }: Throw,
  t: Celsius = REFERENCE_TEMPERATURE,
): { brix: MassFraction; density: GramPerMl; mlPerMl: number } {
  if (!(parts >= 0)) throw new Refusal('a syrup is thrown with zero or more parts of water, not {parts}', { parts });
  const syrup = sucroseDensity(brix, t);
  const waterPerGram = by === 'mass' ? parts : (parts * waterDensity(t)) / syrup; // g water per g syrup
  const thrown = massFraction(brix / (1 + waterPerGram));
  const density = sucroseDensity(thrown, t);
  return { brix: thrown, density, mlPerMl: ((1 + waterPerGram) * syrup) / density };
}

/**
 * °Brix (g/g) a syrup needs to give a drink of `drink` °Brix (g/g) at that throw: inverse of {@link throwSyrup}.
 * Check: 11 °Brix takes 47.17 at 1 + 4 and 54.72 at 1 + 5 by volume.
 * @throws Refusal when it would have to be above 84 °Brix
 */
export function syrupForDrink(drink: MassFraction, how: Throw, t: Celsius = REFERENCE_TEMPERATURE): MassFraction {
  const strongest = throwSyrup(STRONGEST, how, t).brix;
  if (!(drink >= 0 && drink <= strongest))
    throw new Refusal('1 + {parts} by {by} gives at most {strongest} °Brix, not {drink}', {
      parts: how.parts,
      by: how.by,
      strongest: { value: strongest * 100, decimals: 1 },
      drink: { value: drink * 100, decimals: 1 },
    });
  if (drink === 0) return drink;
  return solved((brix) => throwSyrup(brix, how, t).brix >= drink);
}

/** An acid as it is weighed: molar mass (g/mol) and protons that are titrated. */
export interface Acid {
  readonly molarMass: number;
  readonly protons: number;
}

/** Anhydrous citric acid: 192.124 g/mol, three protons (IUPAC atomic weights). */
export const CITRIC: Acid = { molarMass: 192.124, protons: 3 };

/** Grams of an acid that titrate like that many grams of anhydrous citric acid. Check: malic 1.047, tartaric 1.172. */
export function acidLikeCitric(acid: Acid, citric: Gram): Gram {
  return gram((citric * (acid.molarMass / acid.protons)) / (CITRIC.molarMass / CITRIC.protons));
}

/** A preservative as it is weighed: molar masses (g/mol) of it and of the free acid that limits are stated for. */
export interface Preservative {
  readonly molarMass: number;
  readonly acidMolarMass: number;
}

/** Grams of preservative to weigh for that many grams of its free acid. Check: sodium benzoate 1.180, potassium sorbate 1.340. */
export function preservativeForAcid(preservative: Preservative, acid: Gram): Gram {
  return gram((acid * preservative.molarMass) / preservative.acidMolarMass);
}

/**
 * Most sucrose that stays dissolved, g/g, straight lines between the values of the source. 0–30 °C.
 * Source: CRC Handbook list; 15 °C from Mohos 2010 table A2.2, where the CRC list is out of line.
 * @throws Refusal outside 0–30 °C
 */
export function sucroseSaturation(t: Celsius): MassFraction {
  if (!(t >= 0 && t <= 30)) throw new Refusal('sugar solubility is known for 0–30 °C, not for {t} °C', { t });
  const percent = [64.18, 64.87, 65.58, 66.33, 67.09, 67.89, 68.7]; // % w/w at 0, 5 … 30 °C
  const at = Math.min(Math.floor(t / 5), percent.length - 2);
  const [low, high] = [percent[at]!, percent[at + 1]!];
  return massFraction((low + ((high - low) * (t - 5 * at)) / 5) / 100);
}

/** Strongest solution whose density is known, g/g. */
const STRONGEST = massFraction(0.84);

/** The °Brix from which on `reached` is true, to the last bit. */
function solved(reached: (brix: MassFraction) => boolean): MassFraction {
  let [low, high] = [0, STRONGEST as number];
  for (let i = 0; i < 60; i++) {
    const middle = massFraction((low + high) / 2);
    if (reached(middle)) high = middle;
    else low = middle;
  }
  return massFraction(high);
}
