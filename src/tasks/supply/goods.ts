import { list } from '../../records/shelf';
import type { Supply } from '../../records/kind/supply';
import { solventsOnHand } from '../../workshop/onHand';

/** Something that the bench uses up, with the pack that it is usually sold in. */
export interface Good {
  /** Of a solvent its own id. */
  readonly id: string;
  readonly name: string;
  readonly sort: Supply['sort'];
  /** In mL of a solvent, else in pieces. */
  readonly pack: number;
  readonly packs: readonly number[];
  /** Of a solvent: density at 20 °C, g/mL, and whether a food grade of it is sold. */
  readonly gPerMl?: number;
  readonly foodPossible?: boolean;
}

/** Usual packs of solvents, mL: common practice, no source. The order is that of the list. */
const solventPacks: Readonly<Record<string, number>> = {
  'ethanol-96': 1000,
  'propylene-glycol': 500,
  glycerol: 500,
  triacetin: 250,
  mct: 500,
  'ethanol-absolute': 1000,
  'ethanol-95': 1000,
  'ethanol-70': 1000,
  'ethanol-40': 700,
  water: 1000,
};
const USUAL_ML = 250;
const PIECES = [10, 25, 50, 100, 200, 500];
const ML = [100, 250, 500, 1000, 2500, 5000];

const pieces = (id: string, name: string, sort: Supply['sort']): Good => ({ id, name, sort, pack: 100, packs: PIECES });

/** Glass, paper and the rest; packs of 100 are the usual ones (common practice, no source). */
const pieceGoods: readonly Good[] = [
  pieces('vials', 'empty vials', 'vials'),
  pieces('strips', 'paper strips', 'strips'),
  pieces('pipettes', 'pipettes', 'other'),
  pieces('gloves', 'gloves', 'other'),
  pieces('other', 'something else', 'other'),
];

/** All that can be put on the Shelf by one tap each: solvents that were bought before first, then the usual ones. */
export function goods(): Good[] {
  const bought = new Set(list('supply').map(({ solvent }) => solvent));
  const usual = Object.keys(solventPacks);
  const place = (id: string) => (bought.has(id) ? -1 : usual.includes(id) ? usual.indexOf(id) : usual.length);
  const solvents = solventsOnHand().map(({ id, name, density, foodPossible }): Good => {
    const pack = solventPacks[id] ?? USUAL_ML;
    return { id, name, sort: 'solvent', pack, packs: ML, gPerMl: density.gPerMl, foodPossible };
  });
  return [...solvents.sort((a, b) => place(a.id) - place(b.id)), ...pieceGoods];
}
