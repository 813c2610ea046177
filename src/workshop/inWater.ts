import { measuredSolubility, solubilityOfKind, type WaterSolubility } from '../core/liquid/cosolvency';
import { thumbRule, waterSolubilities } from '../tables/solubility';

/**
 * How much of a material water holds, by its CAS number or what is known of it; null where nothing is. Measured entries of one compound can differ threefold: the range spans them all. Oils
 * are taken as terpenes, their worst part.
 */
export function inWater(
  cas: string,
  material: { sort: string; water?: { value: number } | undefined } | undefined,
): WaterSolubility | null {
  const rows = waterSolubilities
    .filter((row) => row.cas.includes(cas))
    .map(({ mgPerL, sd }) => measuredSolubility(mgPerL, sd));
  if (rows.length > 0)
    return {
      ...rows[0]!,
      low: Math.min(...rows.map(({ low }) => low)),
      high: Math.max(...rows.map(({ high }) => high)),
    };
  if (material?.water && material.water.value > 0) return measuredSolubility(material.water.value, 0);
  return material?.sort === 'natural' ? solubilityOfKind(thumbRule['terpene hydrocarbons']) : null;
}
