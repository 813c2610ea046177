import { bridge } from '../../core/bridge';
import {
  amountsFor,
  dilutionOf,
  dropsFor,
  fillFor,
  rescue,
  solventForDrops,
  type Dilution,
  type WholeDrops,
} from '../../core/dilution';
import { massOfDrops } from '../../core/drop';
import { exact, measured, plus, times, type Measured } from '../../core/measured';
import { smallestMass } from '../../core/smallestMass';
import { mixtureDensity, showStrength, toMassFraction, type Basis, type Liquid } from '../../core/strength';
import { gram, gramPerMl, massFraction, millilitre, type MassFraction } from '../../core/units';
import { netMass } from '../../core/weighing';
import { textOf, valueOf } from '../fields';
import type { RunState } from '../fold';
import { dropOf, type DropOnHand } from '../dropMass';
import type { SolventOnHand } from '../onHand';
import { fields, measures } from './fields';
import { solventOf, sourceOf, totalStrength, type Source } from './source';

const FEWEST_DROPS = 3; // our choice: below that a third of the strength and more hangs on one drop
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
}

/** The number of the strength that was asked for, in its basis; null while it is not one. */
export function strengthOf(run: RunState): number | null {
  return valueOf(run, fields.strength(textOf(run, fields.basis())));
}

/** The size of the vial in mL, or null. */
export function sizeOf(run: RunState): number | null {
  const size = valueOf(run, fields.size);
  return size === 'own' ? valueOf(run, fields.ownSize) : size === null ? null : Number(size);
}

/** The strength that was asked for as a mass fraction. @throws RangeError above the neat material */
export function targetOf(run: RunState, source: Source, liquid: Liquid): MassFraction {
  const basis = valueOf(run, fields.basis()) as Basis;
  const target = toMassFraction({ value: strengthOf(run)!, basis }, liquid);
  if (target >= totalStrength(source).value)
    throw new RangeError(
      `${source.name} is no stronger than that itself: ask for less than ${formatShare(totalStrength(source).value)}.`,
    );
  return target;
}

function formatShare(x: number): string {
  return `${Number((x * 100).toPrecision(3))} % w/w`;
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

/** What is to be made; null until source, strength, size, solvent and way are known. */
export function orderOf(run: RunState): Order | null {
  const source = sourceOf(run);
  const solvent = solventOf(run);
  const sizeMl = sizeOf(run);
  if (!source || !solvent || sizeMl === null || strengthOf(run) === null) return null;
  const liquid = liquidOf(source, solvent);
  const basis = valueOf(run, fields.basis()) as Basis;
  const byDrops = run.typed['way'] === 'drops' && !source.solid;
  const drop = dropOf(run.typed['dropper'] ?? 'typical', source.drop);
  const readabilityG = valueOf(run, fields.readability) ?? 0.01;
  return { source, solvent, liquid, basis, sizeMl, drop, byDrops, readabilityG, target: targetOf(run, source, liquid) };
}

/** What to put together to fill the vial. */
export function planOf(order: Order) {
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
  return { fill, amounts, drops, least: gram(least), tooLittle: amounts.source < least };
}

/** The solvent, mL, that makes these drops exact for the target. */
export function exactSolvent(order: Order, { drops }: WholeDrops): number {
  const { target, drop, liquid } = order;
  return (
    solventForDrops({ target, drops, mgPerDrop: drop.mgPerDrop.value, purity: liquid.purity! }) / liquid.solventDensity
  );
}

/** A dilution between, when the target asks for too little of the source; null when one does not do. */
export function bridgeFor(order: Order) {
  const { fill, least } = planOf(order);
  const batch = gram(fill * mixtureDensity(order.target, order.liquid));
  return bridge({
    target: order.target,
    purity: order.liquid.purity!,
    batch,
    bridgeBatch: batch,
    leastSource: least,
    leastBridge: least,
  });
}

/** Solvent as put in, g: as planned, or as typed. `pour` is 'solvent' for the first filling, 'rescue' for one after an overshoot. */
function solventIn(
  run: RunState,
  order: Order,
  pour: { name: 'solvent' | 'rescue'; plannedMl: number; tag: string },
): Measured {
  const { name, tag } = pour;
  const how = measures.find(({ value }) => value === run.typed['measure']) ?? measures[0];
  const words = name === 'rescue' ? 'solvent added later' : 'solvent put in';
  const density = exact(order.solvent.density.gPerMl);
  if (how.value === 'scale') {
    const grossG = valueOf(run, fields.solventG(name)) ?? pour.plannedMl * density.value;
    return netMass({ grossG, tareG: 0, readabilityG: order.readabilityG }, { id: `${tag}:${name}`, words });
  }
  const other = run.typed[`${name}.own`] === 'yes' ? valueOf(run, fields.solventMl(name)) : null;
  const ml = other ?? pour.plannedMl;
  const source = { id: `${tag}:${name}`, words: `${words}: ${how.words.toLowerCase()}` };
  return times(measured(ml, (ml * how.tolerance) / Math.sqrt(3), source), density);
}

/** The material as put in, g: counted drops, or weighed. */
function materialIn(run: RunState, order: Order, tag: string): Measured {
  const { mgPerDrop, spread } = order.drop;
  const drops = run.drops['source'] ?? 0;
  if (order.byDrops)
    return massOfDrops({
      drops,
      mgPerDrop,
      perDropSpread: spread,
      id: tag,
      words: 'the drops differ among themselves',
    });
  const weighed = { grossG: valueOf(run, fields.materialG) ?? 0, tareG: 0, readabilityG: order.readabilityG };
  return netMass(weighed, { id: `${tag}:material`, words: 'material weighed' });
}

/** What was really made: strength and mass, the strength of each content, the material used, and what would rescue an overshoot. */
export interface Made extends Dilution {
  readonly contents: readonly Measured[];
  readonly material: Measured;
  readonly rescue: ReturnType<typeof rescue> | null;
}

/** What was really made. `tag` starts the ids of what is doubtful about this vial alone. @throws RangeError with nothing in it */
export function madeOf(run: RunState, order: Order, tag = 'this vial'): Made {
  const material = materialIn(run, order, tag);
  const first = solventIn(run, order, { name: 'solvent', plannedMl: plannedMl(run, order), tag });
  const strength = totalStrength(order.source);
  const before = dilutionOf([{ mass: material, strength }], first);
  const more = before.strength.value > order.target ? rescue(before, order.target, order.liquid.solventDensity) : null;
  const rescued = more && run.typed['overshoot'] === 'rescue';
  const solvent = rescued
    ? plus(first, solventIn(run, order, { name: 'rescue', plannedMl: more.addVolume, tag }))
    : first;
  const made = rescued ? dilutionOf([{ mass: material, strength }], solvent) : before;
  const contents = order.source.contents.map(
    (part) => dilutionOf([{ mass: material, strength: part.strength }], solvent).strength,
  );
  return { ...made, contents, material, rescue: more };
}

/** The solvent that was asked for, mL: the fill, or what makes the planned drops exact. */
export function plannedMl(run: RunState, order: Order): number {
  const { amounts, drops } = planOf(order);
  return drops && run.typed['exact'] === 'yes' ? exactSolvent(order, drops) : amounts.solventVolume;
}

/** A strength in the basis that was asked for, with the doubt of the density where that matters. */
export function shown(order: Order, w: Measured): Measured {
  const { soluteDensity, solventDensity, purity } = order.liquid;
  const doubtful = order.basis === '% v/v' ? order.source.density : soluteDensity;
  return showStrength(w, order.basis, {
    soluteDensity: doubtful,
    solventDensity,
    ...(purity === undefined ? {} : { purity }),
  });
}
