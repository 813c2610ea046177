import { textOf } from '../fields';
import type { RunState } from '../fold';
import { useByOfDilution, type UseBy } from '../useBy';
import { fields } from './fields';
import type { Order } from './making';

/** Until when the vial keeps, by its materials, its solvent and what it was made from. */
export function keepsOf(run: RunState, { source, solvent }: Order): UseBy {
  const madeOn = textOf(run, fields.madeOn());
  const { families, keeps } = source;
  const day = /^\d{4}-\d{2}-\d{2}$/.test(madeOn) ? madeOn : fields.madeOn().preset!;
  return useByOfDilution({ madeOn: day, families, liquid: solvent.liquid, source: keeps });
}
