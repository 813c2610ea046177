import { measuredSolubility, solubilityOfKind, type WaterSolubility } from '../core/liquid/cosolvency';
import { AS_TYPED } from '../records/kind/quantity';
import { terpeneHydrocarbons, thumbRule, waterSolubilities } from '../tables/solubility';

/** What of a material tells how much water holds of it. */
export interface Known {
  readonly sort: string;
  readonly name?: string | undefined;
  readonly family?: string | undefined;
  readonly water?: { readonly value: number; readonly source?: string } | undefined;
}

/** Groups of rows whose sources agree, or are one. */
const AGREE = ['G1', 'G3', 'G5'];

const OIL_FAMILIES = ['citrus oil', 'slow oil', 'oil'];

/** True for a natural oil: by its family in the catalogue, else by its name. An extract is none. */
export function isOil({ sort, family, name = '' }: Known): boolean {
  return sort === 'natural' && (OIL_FAMILIES.includes(family ?? '') || /\boils?\b/i.test(name));
}

/**
 * How much of a material water holds, by its CAS number or what is known of it; null where nothing is. What the person measured comes
 * first. Entries of one compound can differ threefold: the range spans those whose sources agree. Where they do not agree on a terpene
 * the rule for terpene hydrocarbons is spanned too; oils are taken by it.
 */
export function inWater(cas: string, material: Known | undefined): WaterSolubility | null {
  const typed = material?.water;
  if (typed && typed.value > 0 && typed.source === AS_TYPED) return measuredSolubility(typed.value, 0);
  const all = waterSolubilities.filter((row) => row.cas.includes(cas));
  const agreed = all.filter(({ group }) => AGREE.includes(group));
  const isOpen = terpeneHydrocarbons.includes(cas) && agreed.length < all.length;
  const kind = isOpen ? [solubilityOfKind(thumbRule['terpene hydrocarbons'])] : [];
  const rows = (agreed.length > 0 || isOpen ? agreed : all).map(({ mgPerL, sd }) => measuredSolubility(mgPerL, sd));
  if (rows.length + kind.length > 0) return spanning([...rows, ...kind]);
  if (typed && typed.value > 0) return measuredSolubility(typed.value, 0);
  return material && isOil(material) ? solubilityOfKind(thumbRule['terpene hydrocarbons']) : null;
}

function spanning(rows: readonly WaterSolubility[]): WaterSolubility {
  const [low, high] = [Math.min(...rows.map((one) => one.low)), Math.max(...rows.map((one) => one.high))];
  return { ...rows[0]!, low, high };
}
