import { measuredSolubility, solubilityIn, solubilityOfKind, type WaterSolubility } from '../core/liquid/cosolvency';
import { ethanolVolumeFraction } from '../core/liquid/ethanol';
import { logKow } from '../tables/partition';
import { cosolvents, thumbRule, waterSolubilities } from '../tables/solubility';
import { massFraction } from '../core/number/units';
import { solvents } from '../tables/solvents';

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

/**
 * How much of a material a solvent holds: water, or water with alcohol, for which log Kow must be known. Null where nothing is known:
 * of glycerol, triacetin and oils there is no source, and what the line for propylene glycol gives is too wide to say anything.
 */
export function inSolvent(
  { id, abv }: { id: string; abv?: number | undefined },
  cas: string,
  material: Parameters<typeof inWater>[1],
): WaterSolubility | null {
  const water = inWater(cas, material);
  if (!water || id === 'water') return water;
  const alcohol = abv ?? alcoholOf(id);
  const kow = logKow[cas];
  if (alcohol === null || alcohol === 0 || kow === undefined) return null;
  return solubilityIn(water, kow, [{ fraction: alcohol, ...cosolvents.ethanol }]);
}

/** Alcohol of an ethanol of the table, mL/mL; null of all others. */
function alcoholOf(id: string): number | null {
  const row = solvents.find((one) => one.id === id);
  return row && row.ethanol.value > 0 ? ethanolVolumeFraction(massFraction(row.ethanol.value)) : null;
}
