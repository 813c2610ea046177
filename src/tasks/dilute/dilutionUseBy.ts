import type { RunState } from '../engine/fold';
import { useByOf, useByOfDilution, type UseBy } from '../../workshop/useBy';
import type { Order } from './making';
import { solventBottleOf } from './source';

/** Until when the vial keeps, by its materials, its solvent, the bottles it was made from and the day it was made (YYYY-MM-DD). */
export function dilutionUseBy(run: RunState, { source, solvent }: Order, madeOn: string): UseBy {
  const { families, keeps } = source;
  const bottle = solventBottleOf(run);
  const ends = [keeps, bottle ? useByOf(bottle) : null].filter((end) => end !== null);
  const [first = null] = ends.sort((a, b) => (a.day < b.day ? -1 : 1));
  return useByOfDilution({ madeOn, families, liquid: solvent.liquid, source: first });
}
