import { over, plus, propagate, scaled, times, type Measured } from '../number/measured';
import { dropsFor } from '../dilution/dilution';
import { densityOf, type Density } from '../liquid/strength';
import {
  gram,
  massFraction,
  PPM,
  volumeFraction,
  type Gram,
  type MassFraction,
  type VolumeFraction,
} from '../number/units';
import { Refusal } from '../text/refusal';

/** A material in a vial and its strength there, g/g. A blend lists several. */
export interface Content {
  readonly material: string;
  readonly strength: Measured;
}

/** Something poured into a drink: mass (g), what is in it, its density (g/mL), and the ethanol in it (mL/mL at 20 °C). */
export interface Pour {
  readonly mass: Measured;
  readonly contents: readonly Content[];
  readonly density: Density;
  readonly ethanol?: VolumeFraction;
}

/** The drink before the dose: mass (g), density (g/mL) and ethanol (mL/mL at 20 °C, 0 if not given). */
export interface Drink {
  readonly mass: Measured;
  readonly density: Density;
  readonly ethanol?: VolumeFraction;
}

/** One material in the finished drink. */
export interface DosedMaterial {
  readonly material: string;
  readonly mgPerKg: Measured;
  readonly mgPerL: Measured;
}

/** A drink as dosed: every material apart and together, mass (g) and volume (mL) of the whole, its alcohol before and after. */
export interface Dose {
  readonly materials: readonly DosedMaterial[];
  readonly mgPerKg: Measured;
  readonly mgPerL: Measured;
  readonly mass: Measured;
  readonly volume: Measured;
  /** % ABV of the result. */
  readonly abv: Measured;
  /** Pure ethanol that came with the pours, mL at 20 °C. */
  readonly ethanolAdded: Measured;
}

/**
 * A drink known by its volume: mL and density (g/mL, same temperature), by definition of density.
 * @throws Refusal at 0 mL or below
 */
export function drinkOfVolume(volume: Measured, density: Density, ethanol = volumeFraction(0)): Drink {
  if (!(volume.value > 0)) throw new Refusal('a drink is more than 0 mL, not {volume} mL', { volume: volume.value });
  return { mass: times(volume, densityOf(density)), density, ethanol };
}

/**
 * What is in the drink after all pours so far (give them all: doses add up). mg/kg is mg of material per kg of the
 * finished drink, what was poured included; "ppm" always means this. mg/L is per litre of the finished drink.
 *
 * Volumes additive. Against the OIML R 22 formula, for up to 1 % of anything from 70 % ABV to pure ethanol in a drink of
 * 0 to 40 % ABV: the volume comes out at most 0.1 % too large and the % ABV at most 0.03 points too low. For larger
 * shares the average by volume is within 0.06 points where no part is above 40 % ABV, and up to 1.8 points off where
 * 96 % spirit meets water.
 * Sensitivities: see dilutionOf; a calibration or strength shared by pours adds linearly (GUM 5.2.2).
 * @throws Refusal when the drink is not above 0 g or a mass is negative
 */
export function doseOf(pours: readonly Pour[], drink: Drink): Dose {
  if (!(drink.mass.value > 0)) throw new Refusal('a drink is more than 0 g, not {mass} g', { mass: drink.mass.value });
  for (const { mass } of pours)
    if (!(mass.value >= 0)) throw new Refusal('a dose is zero or more, not {mass} g', { mass: mass.value });
  const all = [drink, ...pours];
  const mass = plus(...all.map((part) => part.mass));
  const volumes = all.map((part) => over(part.mass, densityOf(part.density)));
  const volume = plus(...volumes);
  const ethanol = volumes.map((part, i) => scaled(part, shareOf(all[i]!.ethanol)));
  const materials = activeIn(pours).map(({ material, active }) => ({
    material,
    mgPerKg: scaled(over(active, mass), PPM),
    mgPerL: scaled(over(active, volume), PPM),
  }));
  return {
    materials,
    mgPerKg: plus(...materials.map((one) => one.mgPerKg)),
    mgPerL: plus(...materials.map((one) => one.mgPerL)),
    mass,
    volume,
    abv: scaled(over(plus(...ethanol), volume), 100),
    ethanolAdded: plus(...ethanol.slice(1)),
  };
}

/**
 * Whole drops (mg each, strength g/g) that bring a drink of `drink` g to `ppm` mg/kg; at least one drop. `present` is
 * what the drink holds already, mg/kg. The error is that of the whole number: 0.07 is 7 % too much. Arithmetic, as dropsFor.
 * @throws Refusal when the target is not above what is present, or the vial is not stronger than the target
 */
export function dropsForPpm({
  ppm,
  strength,
  mgPerDrop,
  drink,
  present = 0,
}: {
  readonly ppm: number;
  readonly strength: MassFraction;
  readonly mgPerDrop: number;
  readonly drink: Gram;
  readonly present?: number;
}): { readonly exactDrops: number; readonly drops: number; readonly mgPerKg: number; readonly error: number } {
  const whole = dropsFor({
    target: massFraction(ppm / PPM),
    solvent: gram(drink),
    mgPerDrop,
    purity: strength,
    present: massFraction(present / PPM),
  });
  return {
    exactDrops: whole.exactDrops,
    drops: whole.drops,
    mgPerKg: whole.strength * PPM,
    error: whole.error,
  };
}

/**
 * Strength (g/g) a concentrate needs for `mgPerL` in the drink at a dosage of `gramsPerL` g of it per litre: w = c/(1000 D).
 * Arithmetic.
 * @throws Refusal when that would be more than the neat material
 */
export function concentrateStrength(mgPerL: number, gramsPerL: number): MassFraction {
  if (!(mgPerL >= 0 && gramsPerL > 0)) throw new Refusal('a dosage is above 0 g/L, and a dose is zero or more');
  const w = mgPerL / (1000 * gramsPerL); // mg in a g
  if (w > 1)
    throw new Refusal('{gramsPerL} g/L of even the neat material gives less than {mgPerL} mg/L', { gramsPerL, mgPerL });
  return massFraction(w);
}

/**
 * True composition of a counted trial: the share of each material in all that is active, g/g, with its uncertainty.
 * `active` g per line; lines of one material add. ∂sᵢ/∂aⱼ = (δᵢⱼ − sᵢ)/Σa, so a calibration shared by all lines cancels (GUM
 * 5.2.2).
 * @throws Refusal when nothing is in it or a mass is negative
 */
export function compositionOf(lines: readonly { readonly material: string; readonly active: Measured }[]) {
  if (lines.some(({ active }) => !(active.value >= 0))) throw new Refusal('a mass is zero or more');
  const merged = merge(lines);
  const total = merged.reduce((sum, { active }) => sum + active.value, 0);
  if (!(total > 0)) throw new Refusal('there is nothing in the trial yet');
  return merged.map(({ material, active }) => {
    const share = active.value / total;
    const inputs = merged.map(
      (other) => [other.active, ((other.material === material ? 1 : 0) - share) / total] as const,
    );
    return { material, active, share: propagate(share, inputs) };
  });
}

function activeIn(pours: readonly Pour[]) {
  return merge(
    pours.flatMap(({ mass, contents }) =>
      contents.map(({ material, strength }) => ({ material, active: times(mass, strength) })),
    ),
  );
}

function merge(lines: readonly { readonly material: string; readonly active: Measured }[]) {
  const sums = new Map<string, Measured>();
  for (const { material, active } of lines) {
    const before = sums.get(material);
    sums.set(material, before ? plus(before, active) : active);
  }
  return [...sums].map(([material, active]) => ({ material, active }));
}

function shareOf(ethanol: VolumeFraction = volumeFraction(0)): number {
  if (!(ethanol >= 0 && ethanol <= 1))
    throw new Refusal('alcohol is 0 to 100 % ABV, not {ethanol} %', { ethanol: ethanol * 100 });
  return ethanol;
}
