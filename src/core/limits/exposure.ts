import { isConfirmed, type Level } from './figure';
import { speaksOf, type Natural } from './plant';
import { plus, scaled, type Measured } from '../number/measured';
import type { MassFraction } from '../number/units';

/** What a natural material brings with it. Share in g per g of the material; null when that bound is not known. */
export interface ConstituentRange {
  readonly cas: string;
  readonly name: string;
  readonly low: MassFraction | null;
  readonly high: MassFraction | null;
  readonly typical: MassFraction | null;
  readonly level: Level;
  readonly source: string;
}

/** One constituent counted at its worst. `open`: the source gives only a least or usual content, the true one may be higher. */
export interface Constituent {
  readonly cas: string;
  readonly name: string;
  readonly share: MassFraction;
  readonly confirmed: boolean;
  readonly open: boolean;
  readonly from: string;
}

/** One material as it stands in the finished drink: flavour, carrier or additive; water, sugar, acid and ethanol are not judged. */
export interface DrinkMaterial {
  readonly id: string;
  readonly name: string;
  readonly cas: readonly string[];
  readonly botanical?: string;
  /** Part of the plant. */
  readonly part?: string;
  /** mg of this material, neat, per kg of finished drink. */
  readonly mgPerKg: Measured;
  readonly constituents: readonly Constituent[];
  /** An oil or extract: judged by its constituents, not by a class of its own. */
  readonly natural: boolean;
  /** True when the amount does not follow the dose (sugar, acid, preservative of the syrup). */
  readonly fixed?: boolean;
}

/** One substance in the drink from one material, mg per kg of drink. */
export interface Contribution {
  /** More than one when a material goes by several numbers (isomers); counted once. */
  readonly cas: readonly string[];
  readonly substance: string;
  readonly material: string;
  readonly materialCas: readonly string[];
  /** The plant of the material. */
  readonly plant: Natural;
  readonly mgPerKg: Measured;
  readonly asSuch: boolean;
  readonly confirmed: boolean;
  readonly fixed: boolean;
  readonly natural: boolean;
}

/**
 * Constituents to count for one lot: what its certificate says; where it is silent, the highest published content
 * (worst case, our choice). Shares in g/g, 0 to 1. A certificate beats every range: of 31 retail oils more than 45 % failed the
 * standard profile (PMC8160360).
 */
export function worstConstituents(input: {
  published: readonly ConstituentRange[];
  certificate: readonly { cas: string; name: string; share: MassFraction; from: string }[];
}): Constituent[] {
  const worst = new Map<string, Constituent>();
  for (const range of input.published) {
    const share = range.high ?? range.typical ?? range.low;
    if (share === null || share <= (worst.get(range.cas)?.share ?? 0)) continue;
    const { cas, name, source } = range;
    worst.set(cas, { cas, name, share, confirmed: isConfirmed(range), open: range.high === null, from: source });
  }
  for (const line of input.certificate) worst.set(line.cas, { ...line, confirmed: true, open: false });
  return [...worst.values()];
}

/** Every substance in the drink with where it comes from, constituents of oils included; mg per kg of drink. Arithmetic. */
export function contributions(materials: readonly DrinkMaterial[]): Contribution[] {
  return materials.flatMap((material) => {
    const fixed = material.fixed ?? false;
    const { natural, mgPerKg } = material;
    const { name, botanical, part } = material;
    const by = { material: name, materialCas: material.cas, plant: { name, botanical, part }, fixed };
    const own = { cas: material.cas, substance: material.name, confirmed: true, mgPerKg };
    const brought = material.constituents.map(({ cas, name, share, confirmed, open }) => ({
      cas: [cas],
      substance: name,
      confirmed: confirmed && !open,
      mgPerKg: scaled(mgPerKg, share),
    }));
    return [
      { ...own, ...by, asSuch: true, natural },
      ...brought.map((part) => ({ ...part, ...by, asSuch: false, natural: false })),
    ];
  });
}

/**
 * Sum of all contributions whose CAS is in the list, each times its factor in `as` (1 when not named).
 * Arithmetic. Unit: that of the contributions, mg per kg of drink.
 */
export function summed(
  parts: readonly Contribution[],
  row: {
    cas: readonly string[];
    via?: readonly string[];
    viaPlants?: readonly string[];
    as?: Readonly<Record<string, number>>;
  },
): { total: Measured; fixed: Measured; from: Contribution[] } {
  const from = parts
    .filter((part) => part.cas.some((cas) => row.cas.includes(cas)))
    .filter((part) => !(row.via ?? row.viaPlants) || comesFrom(part, row))
    .map((part) => ({ ...part, mgPerKg: scaled(part.mgPerKg, countedAs(part, row.as)) }))
    .sort((one, two) => two.mgPerKg.value - one.mgPerKg.value);
  return {
    total: plus(...from.map((part) => part.mgPerKg)),
    fixed: plus(...from.filter((part) => part.fixed).map((part) => part.mgPerKg)),
    from,
  };
}

function comesFrom(part: Contribution, { via, viaPlants }: { via?: readonly string[]; viaPlants?: readonly string[] }) {
  const plants = viaPlants ? { plants: viaPlants } : {};
  return part.materialCas.some((cas) => via?.includes(cas)) || speaksOf(plants, part.plant);
}

function countedAs(part: Contribution, as: Readonly<Record<string, number>> | undefined): number {
  return part.cas.map((cas) => as?.[cas]).find((factor) => factor !== undefined) ?? 1;
}
