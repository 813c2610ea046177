import { dilutionOf, rescue, type Dilution } from '../../core/dilution/dilution';
import { volumeBy } from '../../core/dilution/vessel';
import { massOfDrops } from '../../core/drop/drop';
import { measured, plus, standardUncertainty, times, type Measured } from '../../core/number/measured';
import { mixtureDensity, showStrength } from '../../core/liquid/strength';
import { massFraction, type GramPerMl } from '../../core/number/units';
import { weighedNet } from '../../workshop/scales';
import { vesselOf } from '../../workshop/vessels';
import type { Vial } from '../../records/kind/vial';
import { forFile, formatMeasured } from '../../ui/format';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { fields, SHOULDER, type Pour } from './fields';
import { inMl, strengthOf, type Order } from './making';
import { totalStrength } from './source';

/** Solvent as put in, g: as planned, or as typed. `pour` is 'solvent' for the first filling, 'rescue' for one after an overshoot. */
function solventIn(run: RunState, order: Order, pour: { name: Pour; plannedG: number; tag: string }): Measured {
  const { name, tag } = pour;
  const how = answer(run, fields.measure);
  const words = name === 'rescue' ? 'solvent added later' : 'solvent put in';
  if (how === 'scale') {
    const grossG = answer(run, fields.solventG(name)) ?? pour.plannedG;
    return weighedNet({ grossG, tareG: 0, readabilityG: order.readabilityG }, { id: `${tag}:${name}`, words });
  }
  const other = answer(run, fields.otherAmount(name)) === 'yes' ? answer(run, fields.solventMl(name)) : null;
  const ml = other ?? inMl(order, pour.plannedG);
  const source = { id: `${tag}:${name}`, words };
  const vessel = vesselOf(how);
  if (vessel) return times(volumeBy(vessel, ml, source), order.solvent.now);
  const byEye = measured(ml, (ml * SHOULDER) / Math.sqrt(3), { ...source, words: `${words}: up to the shoulder` });
  return times(byEye, order.solvent.now);
}

/** The material as put in, g: weighed; or counted drops, weighed after all where that is known more surely. */
function materialIn(run: RunState, order: Order, tag: string): Measured {
  const { mgPerDrop, spread } = order.drop;
  const net = (grossG: number, words: string) =>
    weighedNet({ grossG, tareG: 0, readabilityG: order.readabilityG }, { id: `${tag}:material`, words });
  if (!order.byDrops) return net(answer(run, fields.materialG) ?? 0, 'material weighed');
  const counted = massOfDrops({
    drops: run.drops['source'] ?? 0,
    mgPerDrop,
    perDropSpread: spread,
    id: tag,
    words: 'the drops differ among themselves',
  });
  const weighedG = dropsWeighed(run);
  if (weighedG === null) return counted;
  const weighed = net(weighedG, 'the drops, weighed');
  return isSurer(weighed, counted) ? weighed : counted;
}

/** What the counted drops weighed, g; null where no one put them on a scale. */
export function dropsWeighed(run: RunState): number | null {
  return answer(run, fields.weighs) === 'yes' ? answer(run, fields.dropsG) : null;
}

function isSurer(one: Measured, other: Measured): boolean {
  return standardUncertainty(one) / one.value < standardUncertainty(other) / other.value;
}

/** What was really made: strength and mass, the strength of each content, the material used, and what would rescue an overshoot. */
export interface Made extends Dilution {
  readonly contents: readonly Measured[];
  readonly material: Measured;
  /** All the solvent in it, g. */
  readonly solvent: Measured;
  /** The strength in the basis that was asked for. */
  readonly shown: Measured;
  readonly gPerMl: GramPerMl;
  readonly rescue: ReturnType<typeof rescue> | null;
}

/** What was really made. `tag` starts the ids of what is uncertain about this vial alone. @throws Refusal with nothing in it */
export function madeOf(run: RunState, order: Order, tag = 'this vial'): Made {
  const material = materialIn(run, order, tag);
  const first = solventIn(run, order, { name: 'solvent', plannedG: order.plan.solventG, tag });
  const strength = totalStrength(order.source);
  const before = dilutionOf([{ mass: material, strength }], first);
  const more = before.strength.value > order.target ? rescue(before, order.target, order.liquid.solventDensity) : null;
  const rescued = more && answer(run, fields.overshoot) === 'rescue';
  const solvent = rescued ? plus(first, solventIn(run, order, { name: 'rescue', plannedG: more.add, tag })) : first;
  const made = rescued ? dilutionOf([{ mass: material, strength }], solvent) : before;
  const contents = order.source.contents.map(
    (part) => dilutionOf([{ mass: material, strength: part.strength }], solvent).strength,
  );
  const shown = showStrength(made.strength, order.basis, shownWith(order));
  return {
    ...made,
    contents,
    material,
    solvent,
    shown,
    gPerMl: mixtureDensity(massFraction(made.strength.value), order.liquid),
    rescue: more,
  };
}

/** The densities of a dilution, with the uncertainty of that of the material where it matters. */
function shownWith({ basis, liquid, source }: Order) {
  return { ...liquid, soluteDensity: basis === '% v/v' ? source.density : liquid.soluteDensity };
}

/** What the label says: the strength that was asked for when it was met within 2 %, else the true one, as far as its ± lets it be known. */
export function labelOf(run: RunState, { basis }: Order, { shown }: Made): Vial['label'] {
  const asked = strengthOf(run)!;
  const isMet = Math.abs(shown.value / asked - 1) <= 0.02;
  return { value: isMet ? asked : Number(forFile(() => formatMeasured(shown)).value), basis };
}
