/**
 * What is sour in water, and its pH: all acids share one pH, and the charges of all ions add up to nothing. Constants are for
 * infinite dilution at 25 °C; activities by Davies. pH is −log of the activity of H⁺, as an electrode is calibrated.
 * Arithmetic on equilibria (mass action, conservation of mass and charge).
 */
import { Refusal } from '../text/refusal';
import { activityCoefficient } from './activity';

/** An acid that gives its protons one after another: −log K of each at infinite dilution, 25 °C, first the strongest. Without its protons it has as many charges less. */
export interface WeakAcid {
  readonly pKa: readonly number[];
}

/** Acids in water, mol/L with all their forms counted, and the cations of salts and bases, mol/L of charge. */
export interface Sour {
  readonly acids: readonly { readonly acid: WeakAcid; readonly molPerL: number }[];
  readonly cations: number;
}

/** −log of the ion product of water at 25 °C. */
const PKW = 13.995;

/** A solution with its pH, and the ionic strength, mol/L. */
export interface Balanced {
  readonly ph: number;
  readonly ions: number;
}

/**
 * pH (dimensionless, 25 °C) of acids and their salts in water. Source: charge balance with activities as
 * {@link activityCoefficient}. Check: 0.05 mol/L potassium dihydrogen citrate 3.769 (published 3.776); 0.025 mol/L of each
 * phosphate 6.877 (published 6.865). @throws Refusal for amounts below zero, or more ions than activities are known for
 */
export function balanced(sour: Sour): Balanced {
  if (!sour.acids.every(({ molPerL }) => molPerL >= 0)) throw new Refusal('an amount of acid is zero or more');
  let [low, high, ions] = [-1, 15, Math.abs(sour.cations)];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    const there = atPh(sour, middle, ions);
    ions = Math.min(there.ions, 1); // a good beginning for the next
    if (there.charge > 0) low = middle;
    else high = middle;
  }
  ions = atPh(sour, high, ions).ions;
  activityCoefficient(1, ions); // refuses what is too strong
  return { ph: high, ions };
}

/**
 * mol/L of charge that a base brings to get the solution to a pH: what is titrated. Negative where acid brings it there.
 * By definition, as {@link balanced}. @throws Refusal as there
 */
export function baseToPh(sour: Sour, ph: number): number {
  let base = 0;
  for (let i = 0; i < 60; i++) {
    const { charge } = atPh({ ...sour, cations: sour.cations + base }, ph, 0.1);
    base -= charge;
    if (Math.abs(charge) < 1e-12) break;
  }
  return base;
}

/** Charges of all ions, mol/L, and ionic strength at a pH; the strength is put in again until it no longer changes. */
function atPh(sour: Sour, ph: number, begin: number): { charge: number; ions: number } {
  let ions = begin;
  let charge = 0;
  for (let i = 0; i < 40; i++) {
    const gamma = (z: number) => activityCoefficient(z, Math.min(ions, 0.5)); // beyond, balanced refuses
    const [hydrogen, hydroxide] = [10 ** -ph / gamma(1), 10 ** (ph - PKW) / gamma(1)];
    const forms = sour.acids.flatMap(({ acid, molPerL }) => formsOf(acid, ph, gamma).map((share, z) => [z, share * molPerL] as const)); // prettier-ignore
    charge = hydrogen - hydroxide + sour.cations - forms.reduce((sum, [z, mol]) => sum + z * mol, 0);
    const strength = forms.reduce((sum, [z, mol]) => sum + z ** 2 * mol, hydrogen + hydroxide + Math.abs(sour.cations));
    const isSame = Math.abs(strength / 2 - ions) < 1e-10;
    ions = strength / 2;
    if (isSame) break;
  }
  return { charge, ions };
}

/** Shares of an acid that have given 0, 1, 2 … protons. */
function formsOf({ pKa }: WeakAcid, ph: number, gamma: (z: number) => number): number[] {
  const parts = [1];
  pKa.forEach((pK, i) => parts.push((parts[i]! * 10 ** (ph - pK) * gamma(i)) / gamma(i + 1)));
  const all = parts.reduce((sum, part) => sum + part, 0);
  return parts.map((part) => part / all);
}

/**
 * How much of something (its own unit, at most `most`) brings a solution to a pH: `with` is the solution that holds so much.
 * Arithmetic: bisection; the pH must go one way as more is added. @throws Refusal where no amount up to `most` gets there
 */
export function amountForPh(ph: number, most: number, holds: (amount: number) => Sour): number {
  const [none, all] = [balanced(holds(0)).ph, balanced(holds(most)).ph];
  if (!((none - ph) * (all - ph) <= 0))
    throw new Refusal('that brings the pH from {none} to {all}, not to {ph}', {
      none: { value: none, decimals: 2 },
      all: { value: all, decimals: 2 },
      ph,
    });
  let [low, high] = [0, most];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if ((balanced(holds(middle)).ph - ph) * (none - ph) > 0) low = middle;
    else high = middle;
  }
  return high;
}
