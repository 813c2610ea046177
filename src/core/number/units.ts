/**
 * Branded numbers: a gram handed over as a °C does not compile. At run time they are plain numbers.
 * Truth is kept in mass (g) and mass fraction (g/g); volume, drops, % v/v and ppm are views that need a density.
 * Each name is by definition its unit.
 */

declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]: Name };

/** Mass in grams. */
export type Gram = Unit<'g'>;
/** Volume in millilitres. */
export type Millilitre = Unit<'mL'>;
/** Temperature in degrees Celsius. */
export type Celsius = Unit<'°C'>;
/** Density in grams per millilitre. */
export type GramPerMl = Unit<'g/mL'>;
/** Mass of solute per mass of mixture, g/g, 0 to 1. */
export type MassFraction = Unit<'g/g'>;
/** Volume of solute per volume of mixture, mL/mL at 20 °C, 0 to 1. */
export type VolumeFraction = Unit<'mL/mL'>;

/** A plain number of g, as grams. Any finite number; makes no check. */
export const gram = (x: number): Gram => x as Gram;
/** A plain number of mL, as millilitres. Any finite number; makes no check. */
export const millilitre = (x: number): Millilitre => x as Millilitre;
/** A plain number of °C, as °C. Any finite number; makes no check. */
export const celsius = (x: number): Celsius => x as Celsius;
/** A plain number of g/mL, as g/mL. Any finite number; makes no check. */
export const gramPerMl = (x: number): GramPerMl => x as GramPerMl;
/** A plain number of g/g, as a mass fraction. 0 to 1 is meant; makes no check. */
export const massFraction = (x: number): MassFraction => x as MassFraction;
/** A plain number of mL/mL, as a volume fraction. 0 to 1 is meant; makes no check. */
export const volumeFraction = (x: number): VolumeFraction => x as VolumeFraction;

/** Reference temperature of all volumes and densities where none is given: 20 °C (common in the trade; OIML R 22, ISO 1042). */
export const REFERENCE_TEMPERATURE = celsius(20);
/** Milligrams in a gram, exact. */
export const MG_PER_G = 1000;
/** mg/kg in a mass fraction of one, exact. */
export const PPM = 1e6;
