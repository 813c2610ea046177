import { amountsFor, dropsFor, fillFor, solventForDrops, type WholeDrops } from '../../core/dilution/dilution';
import { smallestMass } from '../../core/dilution/smallestMass';
import { toMassFraction, type Basis, type Liquid } from '../../core/liquid/strength';
import {
  MG_PER_G,
  gram,
  gramPerMl,
  massFraction,
  millilitre,
  type Gram,
  type MassFraction,
  type Millilitre,
} from '../../core/number/units';
import { find } from '../../records/shelf';
import { leftOf, type Stocked } from '../../records/stock';
import type { Supply } from '../../records/kind/supply';
import { dropOf, type DropOnHand } from '../../workshop/dropMass';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { SolventOnHand } from '../../workshop/onHand';
import { fields, isPlannedBefore, ON_SCALE } from './fields';
import { solventOf, sourceOf, totalStrength, type Source } from './source';
import { formatPlain } from '../../ui/format';
import { Refusal } from '../../core/text/refusal';

export const MOST_DROPS = 100; // our choice: more are not counted without a slip
export const FEWEST_DROPS = 3; // our choice: below that a third of the strength and more hangs on one drop
const WEIGHING = 0.05; // our choice: a share of 5 % that the step of the scale may be off

/** What is to be made, as far as the run has told. */
export interface Order {
  readonly source: Source;
  readonly solvent: SolventOnHand;
  readonly liquid: Liquid & { readonly solventDensity: ReturnType<typeof gramPerMl> };
  readonly basis: Basis;
  readonly target: MassFraction;
  readonly sizeMl: number;
  readonly drop: DropOnHand;
  readonly byDrops: boolean;
  readonly readabilityG: number;
  readonly plan: Plan;
}

/** What to put together to fill the vial. */
export interface Plan {
  readonly fill: Millilitre;
  readonly amounts: { readonly source: Gram; readonly solvent: Gram };
  /** The solvent that is asked for, g: it fills the vial, or makes the planned drops exact where that was chosen. */
  readonly solventG: Gram;
  /** The solvent that makes the planned drops exact, g; what fills the vial where the material is weighed. */
  readonly exactG: Gram;
  /** The drops that come nearest; null where the material is weighed. */
  readonly drops: WholeDrops | null;
  /** The least of the material that can be measured well, g. */
  readonly least: Gram;
  readonly tooLittle: boolean;
}

/** The number of the strength that was asked for, in its basis; null while it is not one. */
export function strengthOf(run: RunState): number | null {
  return answer(run, fields.strength(basisOf(run)));
}

/** What the strength is counted in. */
export function basisOf(run: RunState): Basis {
  return answer(run, fields.basis) ?? '% w/v';
}

/** The size of the vial in mL, or null. The first version asked for an uncommon one apart. */
export function sizeOf(run: RunState): number | null {
  return answer(run, fields.size) ?? answer(run, fields.ownSize);
}

/** The strength that was asked for as a mass fraction. @throws Refusal above the neat material */
export function targetOf(run: RunState, source: Source, liquid: Liquid): MassFraction {
  const target = toMassFraction({ value: strengthOf(run)!, basis: basisOf(run) }, liquid);
  if (target >= totalStrength(source).value)
    throw new Refusal('{name} is no stronger than that itself: ask for less than {most}.', {
      name: source.name,
      most: formatShare(totalStrength(source).value),
    });
  return target;
}

function formatShare(x: number): string {
  return `${formatPlain(x * 100, 3)} % w/w`;
}

/** The source in the chosen solvent; while none is chosen, in ethanol 96 % (only to check a strength early). */
export function liquidOf(source: Source, solvent: SolventOnHand | null): Order['liquid'] {
  const purity = massFraction(totalStrength(source).value);
  return {
    soluteDensity: gramPerMl(source.density.value),
    solventDensity: gramPerMl(solvent?.density.gPerMl ?? 0.80742),
    purity,
  };
}

/** Whether the material goes in by drops: a solid never does. */
export function isByDrops(run: RunState, solid: boolean): boolean {
  return !solid && answer(run, fields.way) !== 'mass' && answer(run, fields.dropper) !== ON_SCALE;
}

/** What is to be made, out of what was chosen or out of `source`; null until source, strength, size and solvent are known. */
export function orderOf(run: RunState, source = sourceOf(run)): Order | null {
  const solvent = solventOf(run);
  const sizeMl = sizeOf(run);
  if (!source || !solvent || sizeMl === null || strengthOf(run) === null) return null;
  const liquid = liquidOf(source, solvent);
  const order = {
    source,
    solvent,
    liquid,
    basis: basisOf(run),
    sizeMl,
    drop: dropOf(answer(run, fields.dropper) ?? 'typical', source.drop, { asBefore: isPlannedBefore(run) }),
    byDrops: isByDrops(run, source.solid),
    readabilityG: answer(run, fields.readability) ?? 0.01,
    target: targetOf(run, source, liquid),
  };
  const plan = planFor(order, answer(run, fields.exact) === 'yes');
  const [taken, solventG] = [answer(run, fields.exactSource), answer(run, fields.exactSolvent)];
  return { ...order, plan: taken === null || solventG === null ? plan : asThen(plan, order, { taken, solventG }) };
}

/** The plan with the drops or grams of a vial made before, and its solvent. */
function asThen(plan: Plan, order: Omit<Order, 'plan'>, then: { taken: number; solventG: number }): Plan {
  const [solvent, { mgPerDrop }] = [gram(then.solventG), order.drop];
  const sourceG = order.byDrops ? (then.taken * mgPerDrop.value) / 1000 : then.taken;
  const strength = massFraction((sourceG * order.liquid.purity!) / (sourceG + solvent));
  const drops = plan.drops && { ...plan.drops, drops: then.taken, strength, error: strength / order.target - 1 };
  const amounts = { source: gram(sourceG), solvent };
  return { ...plan, drops, amounts, solventG: solvent, exactG: solvent };
}

function planFor(order: Omit<Order, 'plan'>, exactly: boolean): Plan {
  const fill = fillFor(millilitre(order.sizeMl));
  const amounts = amountsFor(order.target, fill, order.liquid);
  const drops = order.byDrops
    ? dropsFor({
        target: order.target,
        solvent: amounts.solvent,
        mgPerDrop: order.drop.mgPerDrop.value,
        purity: order.liquid.purity!,
      })
    : null;
  const least = order.byDrops
    ? (FEWEST_DROPS * order.drop.mgPerDrop.value) / 1000
    : smallestMass({ readability: gram(order.readabilityG), repeatability: gram(0) }, WEIGHING);
  const exactG = drops ? exactSolvent(order, drops) : amounts.solvent;
  const solventG = exactly ? exactG : amounts.solvent;
  return { fill, amounts, solventG, exactG, drops, least: gram(least), tooLittle: amounts.source < least };
}

/** The solvent, g, that makes these drops exact for the target. */
function exactSolvent({ target, drop, liquid }: Omit<Order, 'plan'>, { drops }: WholeDrops): Gram {
  return solventForDrops({ target, drops, mgPerDrop: drop.mgPerDrop.value, purity: liquid.purity! });
}

/** That there is not as much of the source as the plan takes, in one sentence; null where there is, or no one knows. */
export function tooLittleOf({ source, plan, drop }: Order): string | null {
  const grams = plan.drops ? (plan.drops.drops * drop.mgPerDrop.value) / MG_PER_G : plan.amounts.source;
  return shortOf(find('bottle', source.id) ?? find('vial', source.id), source.tag, grams);
}

/** The same of the solvent, from the bottle of it that was chosen. */
export function tooLittleSolvent({ solvent, plan }: Order, bottle: Supply | undefined): string | null {
  return shortOf(bottle, solvent.name, plan.solventG);
}

function shortOf(from: Stocked | undefined, name: string, grams: number): string | null {
  const left = from && leftOf(from)?.value;
  if (left === undefined || left >= grams) return null;
  return `Of ${name} ${formatPlain(left, 2)} g are left; this takes ${formatPlain(grams, 2)} g.`;
}

/** Grams of solvent as the mL that this room measures. */
export function inMl(order: Order, grams: number): number {
  return grams / order.solvent.now.value;
}
