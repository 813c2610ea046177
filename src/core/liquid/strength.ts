/**
 * Strengths and their bases. Truth is the mass fraction w of the pure material in the dilution (g/g); all others are
 * views of it that need densities, all of one temperature: 20 °C unless the rows given say otherwise.
 *
 * Our choice: volumes of aroma material and solvent are taken as additive, 1/ρ = x/ρs + (1 − x)/ρl with x the mass
 * share of what was put in. Error of the volume: estimated below 0.5 % at equal parts and below 0.2 % at 10 %, nil
 * towards neat or solvent (from memory, no source); it is carried as a source of uncertainty. Ethanol with water, the worst pair
 * on the bench, shrinks 3 % (50 mL + 50 mL give 97 mL, published): that pair has a law of its own, never use this one.
 */
import { exact, measured, propagate, type Measured } from '../number/measured';
import { massFraction, PPM, type GramPerMl, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** What a percent or a milligram stands for. w/v is grams per 100 mL of the finished dilution. */
export type Basis = '% w/w' | '% w/v' | '% v/v' | 'mg/kg' | 'mg/L';

/** A strength as a person says it. */
export interface Strength {
  readonly value: number;
  readonly basis: Basis;
}

/** A density in g/mL, with or without its uncertainty. */
export type Density = GramPerMl | Measured;

/** What is diluted in what: densities at one temperature; purity (or strength of the vial it is diluted from), 1 if not given. */
export interface Liquid {
  readonly soluteDensity: Density;
  readonly solventDensity: Density;
  readonly purity?: MassFraction;
}

/** Largest change of volume on mixing that is allowed for, share of the volume at equal parts (from memory, no source). */
const VOLUME_CHANGE = 0.005;

/** A density with its uncertainty; a plain number has none. g/mL, above 0. @throws Refusal at 0 or below */
export function densityOf(density: Density): Measured {
  const known = typeof density === 'number' ? exact(density) : density;
  if (!(known.value > 0 && Number.isFinite(known.value)))
    throw new Refusal('a density is more than 0 g/mL, not {density}', { density: known.value });
  return known;
}

/**
 * Density of a dilution, g/mL, at the temperature of the densities given. `w` g/g, 0 to the purity.
 * Volumes additive (our choice, error in the head of this file).
 * @throws Refusal outside 0 to the purity
 */
export function mixtureDensity(w: MassFraction, liquid: Liquid): GramPerMl {
  const { solute, solvent, purity } = known(liquid);
  const x = within(w, purity, { value: w * 100, basis: '% w/w' }) / purity;
  return (1 / (x / solute.value + (1 - x) / solvent.value)) as GramPerMl;
}

/**
 * Mass fraction (g/g) of a strength. Any basis, 0 to that of the neat material.
 * w/v: c = w·ρ(w), solved for w; v/v: c = φ·ρs, where the pure material is taken to have the density of the neat one.
 * @throws Refusal below 0 or above the neat material
 */
export function toMassFraction({ value, basis }: Strength, liquid: Liquid): MassFraction {
  const { solute, solvent, purity } = known(liquid);
  if (!(value >= 0 && Number.isFinite(value)))
    throw new Refusal('a strength is zero or more, not {value} {basis}', { value, basis });
  if (basis === '% w/w') return within(value / 100, purity, { value, basis });
  if (basis === 'mg/kg') return within(value / PPM, purity, { value, basis });
  const neat = showStrength(exact(purity), basis, liquid).value;
  if (value > neat * (1 + ROUNDING)) throw tooStrong({ value, basis }, neat);
  const c = gramsPerMl({ value, basis }, solute.value);
  const shift = (c / purity) * (1 / solute.value - 1 / solvent.value);
  return massFraction(Math.min(c / solvent.value / (1 - shift), purity));
}

/**
 * A mass fraction (g/g, with its uncertainty) in any basis, in the unit of that basis. Sensitivities from the derivatives of
 * c = w·ρ(w); the densities and the additive volumes bring their own sources. 0 to the purity.
 * @throws Refusal outside 0 to the purity
 */
export function showStrength(w: Measured, basis: Basis, liquid: Liquid): Measured {
  const purity = liquid.purity ?? massFraction(1);
  within(w.value, purity, { value: w.value * 100, basis: '% w/w' });
  if (basis === '% w/w') return propagate(w.value * 100, [[w, 100]]);
  if (basis === 'mg/kg') return propagate(w.value * PPM, [[w, PPM]]);
  const factor = basis === 'mg/L' ? PPM : 100;
  const c = massPerMl(w, liquid);
  if (basis !== '% v/v') return propagate(c.value * factor, [[c, factor]]);
  const solute = densityOf(liquid.soluteDensity);
  return propagate((c.value / solute.value) * factor, [
    [c, factor / solute.value],
    [solute, (-factor * c.value) / solute.value ** 2],
  ]);
}

/**
 * Purity from "at least x %": the middle of x to 100 % with a rectangular uncertainty, g/g. x in % w/w, above 0 to 100.
 * Source: GUM 4.3.7 for the rectangle (half-width over √3).
 * @throws Refusal outside the range
 */
export function purityAtLeast(percent: number, source: { id: string; words: string }): Measured {
  if (!(percent > 0 && percent <= 100))
    throw new Refusal('a purity is above 0 and up to 100 %, not {percent} %', { percent });
  return measured((100 + percent) / 200, (100 - percent) / 200 / Math.sqrt(3), source);
}

/** Room for rounding in doubles when a strength is compared with the neat material. */
const ROUNDING = 1e-12;

function known({ soluteDensity, solventDensity, purity = massFraction(1) }: Liquid) {
  if (!(purity > 0 && purity <= 1))
    throw new Refusal('a purity is above 0 and up to 100 %, not {purity} %', { purity: purity * 100 });
  return { solute: densityOf(soluteDensity), solvent: densityOf(solventDensity), purity };
}

/** c = w·ρ(w), g of pure material per mL of dilution. The uncertainty of the purity itself comes with w. */
function massPerMl(w: Measured, liquid: Liquid): Measured {
  const { solute, solvent, purity } = known(liquid);
  const x = Math.min(w.value / purity, 1);
  const rho = 1 / (x / solute.value + (1 - x) / solvent.value);
  const c = w.value * rho;
  const slope = rho - (c * rho * (1 / solute.value - 1 / solvent.value)) / purity;
  const volumeShare = (x * rho) / solute.value;
  const change = (c * VOLUME_CHANGE * 4 * volumeShare * (1 - volumeShare)) / Math.sqrt(3);
  return propagate(c, [
    [w, slope],
    [solute, (c * rho * x) / solute.value ** 2],
    [solvent, (c * rho * (1 - x)) / solvent.value ** 2],
    [measured(0, Math.max(change, 0), { id: 'volume on mixing', words: 'volumes taken as additive' }), 1],
  ]);
}

function gramsPerMl({ value, basis }: Strength, soluteDensity: number): number {
  if (basis === 'mg/L') return value / PPM;
  return basis === '% v/v' ? (value / 100) * soluteDensity : value / 100;
}

function within(w: number, purity: number, said: Strength): MassFraction {
  if (!(w >= 0))
    throw new Refusal('a strength is zero or more, not {value} {basis}', { value: said.value, basis: said.basis });
  if (w > purity * (1 + ROUNDING)) throw tooStrong(said, said.basis === 'mg/kg' ? purity * PPM : purity * 100);
  return massFraction(Math.min(w, purity));
}

function tooStrong({ value, basis }: Strength, neat: number): Refusal {
  return new Refusal('what you start from has {neat} {basis}, so {value} {basis} cannot be made from it', {
    neat: { value: neat, digits: 4 },
    basis,
    value: { value, digits: 6 },
  });
}
