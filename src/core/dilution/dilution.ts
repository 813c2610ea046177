import { propagate, type Measured } from '../number/measured';
import { mixtureDensity, type Liquid } from '../liquid/strength';
import {
  gram,
  massFraction,
  MG_PER_G,
  millilitre,
  type Gram,
  type GramPerMl,
  type MassFraction,
  type Millilitre,
} from '../number/units';
import { Refusal } from '../text/refusal';

/** Something put into the vial: its mass (g), and its strength (g/g): purity of the neat material or strength of a vial. */
export interface Part {
  readonly mass: Measured;
  readonly strength: Measured;
}

/** A vial as it was made: strength (g/g), mass (g) of all that is in it, mass (g) of the pure material. */
export interface Dilution {
  readonly strength: Measured;
  readonly mass: Measured;
  readonly active: Measured;
}

/** Whole drops for a target: the real number that would hit it, the whole one, and what that one gives. */
export interface WholeDrops {
  /** Drops as a real number. */
  readonly exactDrops: number;
  /** Whole drops, one or more. */
  readonly drops: number;
  /** Mass fraction reached by the whole drops, g/g. */
  readonly strength: MassFraction;
  /** Reached over target, less one; 0.07 is 7 % too strong. */
  readonly error: number;
}

/**
 * True strength of what was really put in: w = Σ mᵢPᵢ / M, with M = Σ mᵢ + solvent. Masses g, strengths g/g.
 * Sensitivities ∂w/∂mᵢ = (Pᵢ − w)/M, ∂w/∂Pᵢ = mᵢ/M, ∂w/∂solvent = −w/M, so that a source shared by two parts adds linearly.
 * Source: mass balance; GUM 5.1.2 and 5.2.2.
 * @throws Refusal when a mass is negative, nothing is in the vial, or a strength is not 0 to 1
 */
export function dilutionOf(parts: readonly Part[], solvent: Measured): Dilution {
  for (const { mass, strength } of parts) {
    refuseNegative(mass.value);
    if (!(strength.value >= 0 && strength.value <= 1))
      throw new Refusal('a strength is 0 to 100 % w/w, not {strength} %', { strength: strength.value * 100 });
  }
  refuseNegative(solvent.value);
  const masses = [...parts.map((part) => part.mass), solvent];
  const total = masses.reduce((sum, mass) => sum + mass.value, 0);
  if (total === 0) throw new Refusal('there is nothing in the vial yet');
  const held = parts.reduce((sum, { mass, strength }) => sum + mass.value * strength.value, 0);
  const w = Math.min(held / total, Math.max(...parts.map(({ strength }) => strength.value), 0));
  return {
    strength: propagate(w, [
      ...parts.map(({ mass, strength }) => [mass, (strength.value - w) / total] as const),
      ...parts.map(({ mass, strength }) => [strength, mass.value / total] as const),
      [solvent, -w / total],
    ]),
    mass: propagate(
      total,
      masses.map((mass) => [mass, 1] as const),
    ),
    active: propagate(
      held,
      parts.flatMap(({ mass, strength }) => [[mass, strength.value] as const, [strength, mass.value] as const]),
    ),
  };
}

/**
 * What to put together for `volume` mL of a finished dilution of strength `target` (g/g): material or source vial (g),
 * solvent (g and mL). `liquid` describes the source: its density and its purity or strength. Arithmetic; volumes additive (our
 * choice, strength.ts).
 * @throws Refusal when the target is above what you start from, or the volume is not above 0 mL
 */
export function amountsFor(target: MassFraction, volume: Millilitre, liquid: Liquid & { solventDensity: GramPerMl }) {
  if (!(volume > 0)) throw new Refusal('a vial holds more than 0 mL, not {volume} mL', { volume });
  const total = volume * mixtureDensity(target, liquid);
  const source = (total * target) / (liquid.purity ?? 1);
  const solvent = total - source;
  return {
    source: gram(source),
    solvent: gram(solvent),
    solventVolume: millilitre(solvent / liquid.solventDensity),
  };
}

/**
 * Drops of a source (purity or strength P, mg per drop) in `solvent` g for a target w: m = w·S/(P − w).
 * The whole number is the neighbour whose strength is nearer to the target, never under one drop. Arithmetic (mass balance).
 * `present` is the mass fraction already in the solvent (a drink dosed before), 0 if not given.
 * @throws Refusal when the target is not above what is present or not below P
 */
export function dropsFor({
  target,
  solvent,
  mgPerDrop,
  purity,
  present = massFraction(0),
}: {
  readonly target: MassFraction;
  readonly solvent: Gram;
  readonly mgPerDrop: number;
  readonly purity: MassFraction;
  readonly present?: MassFraction;
}): WholeDrops {
  refuseUnreachable(target, purity, present);
  const drop = positiveDrop(mgPerDrop) / MG_PER_G;
  if (!(solvent > 0)) throw new Refusal('there is more than 0 g to drop into, not {solvent} g', { solvent });
  const exactDrops = (solvent * (target - present)) / (purity - target) / drop;
  const reached = (n: number) => (n * drop * purity + solvent * present) / (n * drop + solvent);
  const [below, above] = [Math.max(1, Math.floor(exactDrops)), Math.max(1, Math.ceil(exactDrops))];
  const drops = target - reached(below) <= reached(above) - target ? below : above;
  const strength = reached(drops);
  return { exactDrops, drops, strength: massFraction(strength), error: strength / target - 1 };
}

/**
 * The solvent (g) that makes `drops` whole drops (mg each, purity or strength P) hit the target w: S = m(P − w)/w. Arithmetic.
 * @throws Refusal when the target is 0 or above P, or the drops are not a whole number above 0
 */
export function solventForDrops({
  target,
  drops,
  mgPerDrop,
  purity,
}: {
  readonly target: MassFraction;
  readonly drops: number;
  readonly mgPerDrop: number;
  readonly purity: MassFraction;
}): Gram {
  refuseUnreachable(target, purity, massFraction(0));
  if (!(Number.isInteger(drops) && drops > 0))
    throw new Refusal('drops are whole and one or more, not {drops}', { drops });
  return gram((((drops * positiveDrop(mgPerDrop)) / MG_PER_G) * (purity - target)) / target);
}

/**
 * After too many drops: solvent (g, mL at the temperature of its density) that brings the vial back to the target.
 * Arithmetic. The other way out is to keep it at `made.strength`.
 * @throws Refusal when the vial is not stronger than the target
 */
export function rescue(made: Dilution, target: MassFraction, solventDensity: GramPerMl) {
  if (!(target > 0)) throw new Refusal('a target strength is above zero');
  if (!(made.strength.value > target)) throw new Refusal('the vial is not above its target: add drops, not solvent');
  const add = (made.active.value - target * made.mass.value) / target;
  return { add: gram(add), addVolume: millilitre(add / solventDensity), total: gram(made.mass.value + add) };
}

/** Share of a brimful vial that stays air. Common practice, no source; 96 % ethanol grows 1.1 % from 20 to 30 °C (OIML R 22). */
const AIR = 0.1;

/**
 * How far to fill a vial, mL: to its nominal volume (vials hold more than they are called; from memory), and where the
 * brimful volume is known never above 90 % of it. Our choice, common practice, no source.
 * @throws Refusal when a volume is not above 0 mL
 */
export function fillFor(nominal: Millilitre, brimful?: Millilitre): Millilitre {
  for (const volume of [nominal, brimful ?? nominal])
    if (!(volume > 0 && Number.isFinite(volume)))
      throw new Refusal('a vial holds more than 0 mL, not {volume} mL', { volume });
  return millilitre(brimful === undefined ? nominal : Math.min(nominal, brimful * (1 - AIR)));
}

function refuseNegative(mass: number): void {
  if (!(mass >= 0 && Number.isFinite(mass))) throw new Refusal('a mass is zero or more, not {mass} g', { mass });
}

function positiveDrop(mgPerDrop: number): number {
  if (!(mgPerDrop > 0 && Number.isFinite(mgPerDrop)))
    throw new Refusal('a drop weighs more than 0 mg, not {mgPerDrop} mg', { mgPerDrop });
  return mgPerDrop;
}

function refuseUnreachable(target: number, purity: number, present: number): void {
  if (!(target > present))
    throw new Refusal(present > 0 ? 'there is already as much in it as you want' : 'a target strength is above zero');
  if (!(target < purity && purity <= 1))
    throw new Refusal('what you start from has {purity} % w/w, so {target} % w/w cannot be made from it', {
      purity: { value: purity * 100, digits: 4 },
      target: { value: target * 100, digits: 4 },
    });
}
