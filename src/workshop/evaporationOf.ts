import type { EvaporatingSolvent } from '../core/liquid/dryOff';
import { evaporation } from '../tables/evaporation';

/** Solvents of the bench, by id, and the drying figures that stand for them. */
const FIGURES: Readonly<Record<string, string>> = {
  'ethanol-96': 'ethanol',
  'ethanol-denatured': 'ethanol',
  'ethanol-absolute': 'ethanol-absolute',
  'isopropanol-99': 'isopropanol',
  water: 'water',
  'propylene-glycol': 'propylene-glycol',
  triacetin: 'triacetin',
  'benzyl-alcohol': 'benzyl-alcohol',
};

/** The drying figures of a solvent by its id on the bench; undefined where none are known. */
export function evaporationOf(solvent: string | undefined): EvaporatingSolvent | undefined {
  return evaporation.find(({ id }) => id === FIGURES[solvent ?? '']);
}
