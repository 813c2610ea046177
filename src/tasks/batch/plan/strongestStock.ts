import { WATER } from '../../../core/drink/batchPlan';
import { find } from '../../../records/shelf';
import { acids, preservatives } from '../../../tables/syrupAdditives';
import { strongestIn } from '../../../workshop/liquidStage';
import { solventsOnHand } from '../../../workshop/onHand';
import type { Goods } from './goods';

const ANY = 1; // g/g

/** What water surely holds of what is weighed into a syrup, g/g at 20 °C. */
const IN_WATER: Readonly<Record<string, number>> = Object.fromEntries([
  ...acids.map(({ id }) => [id, 0.5] as const), // malic acid 0.36, citric and tartaric 0.58; from memory
  ...preservatives.map(({ id }) => [id, 0.35] as const), // sodium benzoate 0.38, potassium sorbate 0.36; from memory
  ['malic-acid', 0.35] as const,
]);

/**
 * The strongest dilution of some goods in a carrier that dissolves, g/g, so that a scale can weigh it: 1 where they mix, 0 where a
 * dilution in it is of no use. What is not known counts as dissolving where both are liquid; of a solid it is not tried (our choice).
 */
export function strongestStock(goods: Goods, carrier: string): number {
  if (carrier === WATER) return inWaterOf(goods);
  const material = find('material', goods.id);
  const isSolid = material?.form === 'solid' && !goods.source?.vial;
  const solvent = solventsOnHand().find(({ id }) => id === carrier);
  if (!solvent) return isSolid ? 0 : ANY; // an oil of the formula: oils mix, a solid hardly dissolves in them (from memory)
  const most = strongestIn(goods.id, { ...solvent, gPerMl: solvent.density.gPerMl });
  if (most < ANY || !isSolid) return most;
  return MIXES.includes(carrier) ? SOME : 0;
}

/** Solvents that dissolve solid aroma materials to a tenth and more: common practice, no source. */
const MIXES = ['ethanol-96', 'ethanol-95', 'ethanol-absolute', 'propylene-glycol', 'triacetin', 'benzyl-alcohol'];
const SOME = 0.1; // g/g

/** Of an ingredient made of a plant or fruit water holds any share; of an aroma material what is known of it. */
function inWaterOf({ id, own }: Goods): number {
  const known = IN_WATER[id] ?? (own || id === 'sugar' ? 0.5 : null);
  if (known !== null) return known;
  const most = strongestIn(id, { id: WATER, gPerMl: 1 });
  return most < ANY ? most : 0;
}
