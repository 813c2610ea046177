import { textOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { useByOf, useByOfDilution, type UseBy } from '../../workshop/useBy';
import { fields } from './fields';
import type { Order } from './making';
import { solventBottleOf } from './source';

/** Until when the vial keeps, by its materials, its solvent and the bottles it was made from. */
export function keepsOf(run: RunState, { source, solvent }: Order): UseBy {
  const madeOn = textOf(run, fields.madeOn());
  const { families, keeps } = source;
  const day = /^\d{4}-\d{2}-\d{2}$/.test(madeOn) ? madeOn : fields.madeOn().preset!;
  const bottle = solventBottleOf(run);
  const ends = [keeps, bottle ? useByOf(bottle) : null].filter((end) => end !== null);
  const [first = null] = ends.sort((a, b) => (a.day < b.day ? -1 : 1));
  return useByOfDilution({ madeOn: day, families, liquid: solvent.liquid, source: first });
}
