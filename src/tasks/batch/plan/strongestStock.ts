import { WATER } from '../../../core/drink/batchPlan';
import { judgeStage } from '../../../core/liquid/stage';
import { find } from '../../../records/shelf';
import { acids, preservatives } from '../../../tables/syrupAdditives';
import { mediumOf, solutesOf, solventIn } from '../../../workshop/liquidStage';
import { solventsOnHand, type SolventOnHand } from '../../../workshop/onHand';
import type { Goods } from './goods';

const ANY = 1; // g/g

/** What water surely holds of what is weighed into a syrup, g/g at 20 °C. */
const IN_WATER: Readonly<Record<string, number>> = Object.fromEntries([
  ...acids.map(({ id }) => [id, 0.5] as const), // malic acid 0.36, citric and tartaric 0.58; from memory
  ...preservatives.map(({ id }) => [id, 0.35] as const), // sodium benzoate 0.38, potassium sorbate 0.36; from memory
  ['malic-acid', 0.35] as const,
]);

const TRIED = 0.02; // g/g
const LADDER = [0.5, 0.2, 0.1, 0.05, 0.02, 0.01] as const; // g/g, as a scale's dilutions are made

/**
 * The strongest dilution of some goods in a carrier that dissolves, g/g, so that a scale can weigh it: 1 where they mix, 0 where a
 * dilution in it is of no use. Where it is open a liquid may be tried, and of a solid up to 2 % (our choice: it is seen before any is drawn).
 */
export function strongestStock(goods: Goods, carrier: string): number {
  const inWater = carrier === WATER ? inWaterOf(goods) : null;
  if (inWater !== null) return inWater;
  const isSolid = find('material', goods.id)?.form === 'solid' && !goods.source?.vial;
  const solvent = solventsOnHand().find(({ id }) => id === carrier);
  if (!solvent) return isSolid ? 0 : ANY; // an oil of the formula: oils mix, a solid hardly dissolves in them (from memory)
  return LADDER.find((strength) => isHeld(goods, solvent, { strength, isSolid })) ?? 0;
}

function isHeld(
  { id, name }: Goods,
  { id: carrier, density, abv }: SolventOnHand,
  { strength, isSolid }: { strength: number; isSolid: boolean },
): boolean {
  const carrierG = (1 - strength) * 1000; // of 1 kg
  const ml = carrierG / density.gPerMl;
  const medium = mediumOf({ ml, grams: 1000, sugarG: 0, ...solventIn(carrier, carrierG, density.gPerMl, abv) });
  const { verdict } = judgeStage(solutesOf(id, name, (strength * 1e9) / ml), medium); // g/g in a kg to mg/L
  return verdict === 'dissolves' || (verdict === 'try it' && (!isSolid || strength <= TRIED));
}

/** Of an ingredient made of a plant or fruit water holds any share; null for an aroma material, which is judged as in any other. */
function inWaterOf({ id, own }: Goods): number | null {
  return IN_WATER[id] ?? (own || id === 'sugar' ? 0.5 : null);
}
