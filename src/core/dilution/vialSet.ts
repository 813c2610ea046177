import { amountsFor, dropsFor, type WholeDrops } from './dilution';
import { toMassFraction, type Density, type Strength } from '../liquid/strength';
import {
  gram,
  massFraction,
  millilitre,
  type Gram,
  type GramPerMl,
  type MassFraction,
  type Millilitre,
} from '../number/units';

/** A material to be diluted: density, purity or strength (g/g), mg per drop; null for a solid, which goes by mass only. */
export interface SetItem {
  readonly id: string;
  readonly density: Density;
  readonly purity: MassFraction;
  readonly mgPerDrop: number | null;
}

/** One vial of the set: strength aimed at (g/g), source and solvent for the full vial, whole drops if it can be dropped. */
export interface SetVial {
  readonly id: string;
  readonly target: MassFraction;
  readonly source: Gram;
  readonly solvent: Gram;
  readonly solventVolume: Millilitre;
  readonly drops: WholeDrops | null;
}

/**
 * A set of vials of one strength, volume (mL) and solvent: "these eight at 1 %, 10 mL". Each vial's amounts, and in all the
 * solvent (g, mL), the drops, and what goes by mass (g). Nothing is added for loss. Arithmetic; volumes additive (strength.ts).
 * @throws Refusal when one of them cannot reach the strength, or the volume is not above 0 mL
 */
export function vialSet(
  items: readonly SetItem[],
  wanted: { readonly strength: Strength; readonly volume: Millilitre; readonly solventDensity: GramPerMl },
): { vials: SetVial[]; solvent: Gram; solventVolume: Millilitre; drops: number; weighed: Gram } {
  const vials = items.map(({ id, density, purity, mgPerDrop }): SetVial => {
    const liquid = { soluteDensity: density, solventDensity: wanted.solventDensity, purity };
    const target = toMassFraction(wanted.strength, liquid);
    const amounts = amountsFor(target, wanted.volume, liquid);
    const drops = mgPerDrop === null ? null : dropsFor({ target, solvent: amounts.solvent, mgPerDrop, purity });
    return { id, target: massFraction(target), ...amounts, drops };
  });
  const sum = (of: (vial: SetVial) => number) => vials.reduce((total, vial) => total + of(vial), 0);
  return {
    vials,
    solvent: gram(sum((vial) => vial.solvent)),
    solventVolume: millilitre(sum((vial) => vial.solventVolume)),
    drops: sum((vial) => vial.drops?.drops ?? 0),
    weighed: gram(sum((vial) => (vial.drops ? 0 : vial.source))),
  };
}
