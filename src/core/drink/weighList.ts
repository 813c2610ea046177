/** What to put on the scale, in order, with a diluted stock where an amount is too small for it. */
import { DRAWABLE, ladder } from '../dilution/intermediate';
import type { PlannedMass } from './batchPlan';
import { gram, massFraction, type Gram, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** A stock to weigh from: neat made up with the carrier of the concentrate. */
export interface Diluted {
  readonly strength: MassFraction;
  readonly neat: Gram;
  readonly carrier: Gram;
}

/**
 * One weighing. `mass` is what goes on the scale: neat material, or its diluted stock. `enough` false: less than the scale
 * can weigh and no stock helps with the carrier there is; make a larger batch or thin in several steps.
 */
export interface WeighStep {
  readonly id: string;
  readonly mass: Gram;
  readonly neat: Gram;
  readonly enough: boolean;
  readonly diluted: Diluted | null;
}

/** The weighing of one concentrate. The carrier is the last step but for volatile material. */
export interface WeighList {
  readonly steps: readonly WeighStep[];
  readonly least: Gram;
}

/**
 * Weigh list of a concentrate: smallest first, because an amount that went over is cured by more of what is still to come;
 * carrier after that; volatile material last, into the carrier (order: our choice and common practice, no source).
 * An amount under `least` (g, smallestMass of the scale) is diluted with the carrier to the strongest of 50, 20, 10, 5 … %
 * that brings it over, 1 % at the weakest; its carrier is taken off the carrier step, so the sum is still that of the concentrate.
 * `most` is the strongest dilution of a part that dissolves in the carrier, g/g; any where it is left out.
 * @throws Refusal when `least` is not above zero
 */
export function weighList(
  parts: readonly PlannedMass[],
  carrier: string,
  scale: { least: Gram; volatile?: readonly string[]; most?: (id: string) => number },
): WeighList {
  if (!(scale.least > 0))
    throw new Refusal('a scale’s smallest amount is above 0 g, not {least} g', { least: scale.least });
  const volatile = (part: PlannedMass) => scale.volatile?.includes(part.id) ?? false;
  const bySize = parts.filter((part) => part.id !== carrier && part.mass > 0).sort((one, two) => one.mass - two.mass);
  let left = parts.filter((part) => part.id === carrier).reduce((sum, part) => sum + part.mass, 0);
  const steps = bySize.map((part): WeighStep => {
    const diluted =
      part.mass < scale.least
        ? dilutionFor(part.mass, scale.least, { carrier: left, most: scale.most?.(part.id) ?? 1 })
        : null;
    const mass = diluted ? gram(part.mass / diluted.strength) : part.mass;
    left -= mass - part.mass;
    return { id: part.id, mass, neat: part.mass, enough: mass >= scale.least, diluted };
  });
  const rest = gram(left);
  const fill = { id: carrier, mass: rest, neat: rest, enough: rest >= scale.least, diluted: null };
  const last = (step: WeighStep) => bySize.some((part) => part.id === step.id && volatile(part));
  return {
    steps: [...steps.filter((step) => !last(step)), ...(rest > 0 ? [fill] : []), ...steps.filter(last)],
    least: scale.least,
  };
}

/** No stock is diluted further at once: a hundredth. Our choice; further down, kilograms of carrier go into one that is hardly used. */
const WEAKEST = massFraction(0.01);

/**
 * Strongest stock of the ladder, `most` g/g at most, that brings `mass` g of neat over the least amount (g) with at most `carrier` g in
 * what is drawn; null where none does. All that is put on the scale for it is the least amount and more. Ladder: our choice.
 */
export function dilutionFor(mass: Gram, least: Gram, so: { carrier: number; most: number }): Diluted | null {
  if (!(mass > 0 && so.carrier > 0)) return null;
  const weakest = massFraction(mass / (mass + so.carrier));
  const strength = ladder(massFraction(1), weakest).find((w) => w >= WEAKEST && w <= so.most && mass / w >= least);
  if (strength === undefined) return null;
  const stock = Math.max(least / strength, mass / strength / DRAWABLE, least / (1 - strength));
  return { strength, neat: gram(stock * strength), carrier: gram(stock * (1 - strength)) };
}

/** What has been weighed of a step so far, g on the scale. */
export interface Weighed {
  readonly id: string;
  readonly mass: Gram;
}

/** What to do about an amount that is over: scale everything up, or keep it and know the error. */
export interface Rescue {
  /** The step that went furthest over. */
  readonly id: string;
  /** The whole batch times this brings every share back to plan. */
  readonly factor: number;
  /** g still to add of each step for that; 0 where enough is in. */
  readonly add: readonly { readonly id: string; readonly mass: Gram }[];
  /** Share of each step in the whole over the planned share, less one, if the rest is weighed as planned. */
  readonly keep: readonly { readonly id: string; readonly error: number }[];
}

/**
 * The way out (arithmetic) when a weighing went over: null while nothing is above its plan. Every share comes back exactly when
 * all steps are brought to factor × plan, factor being the largest of weighed over planned; nothing has to be taken out.
 */
export function rescueList(
  list: { readonly steps: readonly PlannedMass[] },
  weighed: readonly Weighed[],
): Rescue | null {
  const inVessel = (id: string) => weighed.filter((one) => one.id === id).reduce((sum, one) => sum + one.mass, 0);
  const ratios = list.steps.map((step) => ({ id: step.id, ratio: inVessel(step.id) / step.mass }));
  const worst = ratios.reduce((most, one) => (one.ratio > most.ratio ? one : most), { id: '', ratio: 1 });
  if (!(worst.ratio > 1 + 1e-12)) return null;
  const planned = list.steps.reduce((sum, step) => sum + step.mass, 0);
  const kept = list.steps.map((step) => Math.max(inVessel(step.id), step.mass));
  const whole = kept.reduce((sum, mass) => sum + mass, 0);
  return {
    id: worst.id,
    factor: worst.ratio,
    add: list.steps.map((step) => ({
      id: step.id,
      mass: gram(Math.max(0, worst.ratio * step.mass - inVessel(step.id))),
    })),
    keep: list.steps.map((step, i) => ({ id: step.id, error: kept[i]! / whole / (step.mass / planned) - 1 })),
  };
}
